import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { payerKey } from "#lib/domain/split/compare.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import styles from "./cost.module.css";
import { ruleLetter } from "./letters.ts";
import { SumSteps } from "./sum-steps.tsx";

/** Each rule in a sentence, its stand-alone test, and all its sums for checking by hand. */
export function RulesInWords({
  file,
  outcomes,
}: {
  readonly file: LineFile;
  readonly outcomes: readonly SplitOutcome[];
}) {
  const chosen = latestSplit(file)?.rule ?? null;
  return (
    <div className="stack-wide">
      {outcomes.map((outcome, at) => (
        <article key={outcome.choice.rule} className="stack-tight">
          <h3>
            <span className={styles["letter"]}>{ruleLetter(at)}</span>
            {outcome.title}
            {outcome.choice.rule === chosen ? " (chosen)" : ""}
          </h3>
          <p>{outcome.sentence}</p>
          {outcome.refusal === null ? (
            <Worked outcome={outcome} chosen={outcome.choice.rule === chosen} />
          ) : (
            <p>{outcome.refusal}</p>
          )}
        </article>
      ))}
    </div>
  );
}

function Worked({ outcome, chosen }: { readonly outcome: SplitOutcome; readonly chosen: boolean }) {
  return (
    <>
      {outcome.standAlone === null ? null : (
        <p>
          <span className={outcome.standAlone.passes ? "tag tag-done" : "tag"}>
            {outcome.standAlone.passes ? "stand-alone test passed" : "stand-alone test not passed"}
          </span>{" "}
          {outcome.standAlone.sentence}
        </p>
      )}
      <details className={chosen ? styles["chosenSums"] : undefined}>
        <summary>All sums under this rule</summary>
        <div className="stack">
          {outcome.shares.map((share) => (
            <div key={payerKey(share)} className="stack-tight">
              <h4>
                {share.label}: {formatCents(share.amount)}
              </h4>
              <SumSteps share={share} oddCents="" />
            </div>
          ))}
          <p className="muted">{outcome.oddCents}</p>
        </div>
      </details>
    </>
  );
}
