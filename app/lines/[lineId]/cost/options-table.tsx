import { Scroll } from "#app/_components/scroll.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitChoice } from "#lib/domain/facts/split.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { optionInForce } from "#lib/domain/sharing/scope-in-force.ts";
import {
  compareOptions,
  type OptionCell,
  type OptionOutcome,
  optionOutcomes,
} from "#lib/domain/split/option-outcomes.ts";
import { RULE_TITLES } from "#lib/domain/split/rule-words.ts";
import { listed, lowered } from "../names.ts";
import styles from "./cost.module.css";
import { OPTION_WORDS } from "./option-terms.ts";
import { signedCents } from "./signed-cents.ts";

/** Options down, payers across, all under one rule; below each amount the difference to the chosen option. */
export function OptionsTable({
  file,
  report,
  choice,
}: {
  readonly file: LineFile;
  readonly report: Report;
  readonly choice: SplitChoice;
}) {
  const outcomes = optionOutcomes(file, report, choice);
  const payers = compareOptions(outcomes);
  const base = outcomes.find(({ inForce }) => inForce) ?? null;
  return (
    <div className="stack">
      <Scroll>
        <table className={`plain ${styles["compare"]}`}>
          <caption>
            Each way of doing the work, split {lowered(RULE_TITLES[choice.rule])}.{" "}
            {optionInForce(file) === null
              ? "None is chosen yet."
              : "Below each amount: the difference to the chosen one."}
          </caption>
          <thead>
            <tr>
              <th scope="col">Way</th>
              <th scope="col" className="num">
                In all
              </th>
              {payers.map(({ key, label, unknown }) => (
                <th key={key} scope="col" className="num">
                  {unknown ? (
                    <span className={`tag tag-loud ${styles["unknown"]}`}>{label}</span>
                  ) : (
                    label
                  )}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {outcomes.map((each, at) => (
              <tr key={each.option.id} data-chosen={each.inForce}>
                <WayHead outcome={each} />
                <td className="num">
                  {formatCents(each.total)}
                  {base === null || base === each ? null : (
                    <span className={styles["difference"]}>
                      {signedCents(each.total - base.total)}
                    </span>
                  )}
                </td>
                {each.outcome.refusal === null ? (
                  payers.map(({ key, cells }) => <Amount key={key} cell={cells[at] ?? null} />)
                ) : (
                  <td colSpan={Math.max(payers.length, 1)} className={styles["refusal"]}>
                    {each.outcome.refusal}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <Leavers outcomes={outcomes} />
    </div>
  );
}

function WayHead({ outcome: { option, inForce } }: { readonly outcome: OptionOutcome }) {
  return (
    <th scope="row">
      {option.title}
      {inForce ? <span className="tag">chosen</span> : null}
      {option.kind === "other" || lowered(option.title) === OPTION_WORDS[option.kind] ? null : (
        <span className={styles["difference"]}>{OPTION_WORDS[option.kind]}</span>
      )}
    </th>
  );
}

function Amount({ cell }: { readonly cell: OptionCell | null }) {
  if (cell === null) return <td />;
  return (
    <td className="num">
      {formatCents(cell.amount)}
      {cell.difference === null ? null : (
        <span className={styles["difference"]}>{signedCents(cell.difference)}</span>
      )}
      {cell.leaves ? <span className={styles["leaves"]}>leaves the shared pipe</span> : null}
    </td>
  );
}

function Leavers({ outcomes }: { readonly outcomes: readonly OptionOutcome[] }) {
  return outcomes
    .filter(({ leavers }) => leavers.length > 0)
    .map(({ option, leavers }) => (
      <p key={option.id}>
        Under “{option.title}”{" "}
        {listed(leavers.map(({ label, because }) => `${label} (${because})`))}{" "}
        {leavers.length === 1 ? "leaves" : "leave"} the shared pipe and{" "}
        {leavers.length === 1 ? "shares" : "share"} none of the other work.
      </p>
    ));
}
