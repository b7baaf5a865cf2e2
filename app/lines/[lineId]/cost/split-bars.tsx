import { formatCents } from "#lib/domain/money/format-cents.ts";
import { type PlacedMark, placeMarks, roundScale } from "#lib/domain/split/bars.ts";
import type { ComparedPayer } from "#lib/domain/split/compare.ts";
import type { SplitOutcome } from "#lib/domain/split/outcome.ts";
import type { SplitRule } from "#lib/domain/split/split.ts";
import styles from "./cost.module.css";
import { ruleLetter } from "./letters.ts";

/** How far each property's amount moves with the rule: a letter for each rule on one scale of dollars. */
export function SplitBars({
  payers,
  outcomes,
  chosen,
}: {
  readonly payers: readonly ComparedPayer[];
  readonly outcomes: readonly SplitOutcome[];
  readonly chosen: SplitRule | null;
}) {
  if (payers.length === 0) return null;
  const top = roundScale(Math.max(...payers.map((payer) => payer.most)));
  return (
    <figure className="stack-tight">
      <figcaption className="muted">
        How far each amount moves with the rule. The letters are those of the table’s rows
        {chosen === null ? "." : "; the filled square is the chosen rule."}
      </figcaption>
      <div className={styles["bars"]} aria-hidden="true">
        {payers.map((payer) => (
          <Bar key={payer.key} payer={payer} top={top} chosen={chosen} outcomes={outcomes} />
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

function Bar({
  payer,
  top,
  chosen,
  outcomes,
}: {
  readonly payer: ComparedPayer;
  readonly top: number;
  readonly chosen: SplitRule | null;
  readonly outcomes: readonly SplitOutcome[];
}) {
  const marks = placeMarks(
    payer.cells.map((cell) => cell?.amount ?? null),
    top,
  );
  const lanes = Math.max(1, ...marks.map((mark) => mark.lane + 1));
  return (
    <>
      <span className={styles["name"]}>{payer.label}</span>
      <div className={styles["track"]} style={{ height: `${0.7 + lanes * 1.25}rem` }}>
        <span
          className={styles["range"]}
          style={{
            insetInlineStart: `${(payer.least / top) * 100}%`,
            width: `${((payer.most - payer.least) / top) * 100}%`,
          }}
        />
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
