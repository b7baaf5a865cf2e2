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

/** Options down, payers across, all under one rule; below each amount the difference from the selected option. */
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
            Options, split {lowered(RULE_TITLES[choice.rule])}.{" "}
            {optionInForce(file) === null
              ? "None selected yet."
              : "The difference from the selected option is shown below each amount."}
          </caption>
          <thead>
            <tr>
              <th scope="col">Option</th>
              <th scope="col" className="num">
                Total
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
                <OptionHead outcome={each} />
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

function OptionHead({ outcome: { option, inForce } }: { readonly outcome: OptionOutcome }) {
  return (
    <th scope="row">
      {option.title}
      {inForce ? <span className="tag">selected</span> : null}
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
      {cell.leaves ? <span className={styles["leaves"]}>leaves the shared line</span> : null}
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
        {leavers.length === 1 ? "leaves" : "leave"} the shared line and{" "}
        {leavers.length === 1 ? "shares" : "share"} none of the remaining work.
      </p>
    ));
}
