import type { SplitRule } from "#lib/domain/facts/split.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { type PlacedMark, placeMarks, roundScale } from "#lib/domain/split/bars.ts";
import type { ComparedPayer } from "#lib/domain/split/compare.ts";
import styles from "./cost.module.css";
import { ruleLetter } from "./letters.ts";

/** How each property's amount varies by rule: a letter for each rule on one scale of dollars. */
export function SplitBars({
  payers,
  outcomes,
  chosen,
}: {
  readonly payers: readonly ComparedPayer[];
  readonly outcomes: readonly SplitOutcome[];
  readonly chosen: SplitRule | null;
}) {
  const shown = payers.map((payer) => ({ payer, amounts: drawnAmounts(payer) }));
  const most = Math.max(0, ...shown.flatMap(({ amounts }) => amounts.map((each) => each ?? 0)));
  if (most === 0) return null;
  const top = roundScale(most);
  return (
    <figure className="stack-tight">
      <figcaption className="muted">
        How each amount varies by rule. Letters match the table rows
        {chosen === null ? "." : "; the filled square is the chosen rule."} A single payer is not
        drawn.
      </figcaption>
      <div className={styles["bars"]} aria-hidden="true">
        {shown.map(({ payer, amounts }) => (
          <Bar
            key={payer.key}
            label={payer.label}
            amounts={amounts}
            top={top}
            chosen={chosen}
            outcomes={outcomes}
          />
        ))}
        <span />
        <div className={styles["scale"]}>
          {[0, 1, 2, 3, 4].map((quarter) => (
            <span key={quarter} style={{ insetInlineStart: `${quarter * 25}%` }}>
              {formatCents((top * quarter) / 4).replace(/\.00$/, "")}
            </span>
          ))}
        </div>
      </div>
    </figure>
  );
}

/** A single payer would stretch the scale and say nothing that needs a drawing. */
function drawnAmounts(payer: ComparedPayer): (number | null)[] {
  return payer.cells.map((cell) =>
    cell === null || cell.rule === "single-payer" ? null : cell.amount,
  );
}

function Bar({
  label,
  amounts,
  top,
  chosen,
  outcomes,
}: {
  readonly label: string;
  /** One per outcome; null where the rule is not drawn. */
  readonly amounts: readonly (number | null)[];
  readonly top: number;
  readonly chosen: SplitRule | null;
  readonly outcomes: readonly SplitOutcome[];
}) {
  const marks = placeMarks(amounts, top);
  const percents = marks.map((mark) => mark.percent);
  const [least, most] = [Math.min(...percents), Math.max(...percents)];
  const lanes = Math.max(1, ...marks.map((mark) => mark.lane + 1));
  return (
    <>
      <span className={styles["name"]}>{label}</span>
      <div className={styles["track"]} style={{ height: `${0.7 + lanes * 1.25}rem` }}>
        <span
          className={styles["range"]}
          style={{
            insetInlineStart: `${least}%`,
            width: `${most - least}%`,
          }}
        />
        {marks.map((mark) => (
          <span
            key={mark.at}
            className={styles["stem"]}
            style={{ insetInlineStart: `${mark.percent}%`, height: `${mark.lane * 1.25}rem` }}
          />
        ))}
        {marks.map((mark) => (
          <Mark key={mark.at} mark={mark} chosen={outcomes[mark.at]?.choice.rule === chosen} />
        ))}
      </div>
    </>
  );
}

function Mark({ mark, chosen }: { readonly mark: PlacedMark; readonly chosen: boolean }) {
  return (
    <span
      className={styles["mark"]}
      data-chosen={chosen}
      style={{ insetInlineStart: `${mark.percent}%`, top: `${0.4 + mark.lane * 1.25}rem` }}
    >
      {ruleLetter(mark.at)}
    </span>
  );
}
