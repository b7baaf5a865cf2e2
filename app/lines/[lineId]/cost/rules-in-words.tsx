import Link from "next/link";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { costAddress } from "./address.ts";
import styles from "./cost.module.css";
import { ruleLetter } from "./letters.ts";
import type { BothOutcomes, Particulars } from "./particulars.ts";

/** Each rule in a sentence, its stand-alone test, and the way to all its calculations. */
export function RulesInWords({
  lineId,
  file,
  particulars,
  outcomes: { main },
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly particulars: Particulars;
  readonly outcomes: BothOutcomes;
}) {
  const chosen = latestSplit(file)?.rule ?? null;
  return (
    <div className={styles["rules"]}>
      {main.outcomes.map((outcome, at) => (
        <article key={outcome.choice.rule} className="stack-tight">
          <h3>
            <span className={styles["letter"]}>{ruleLetter(at)}</span>
            {outcome.title}
            {outcome.choice.rule === chosen ? " (chosen)" : ""}
          </h3>
          <p>{outcome.sentence}</p>
          {outcome.refusal === null ? (
            <>
              <StandAlone outcome={outcome} />
              <p>
                <Link
                  href={costAddress(lineId, `compare/${outcome.choice.rule}`, particulars, {
                    unknown: main.unknownShares,
                  })}
                >
                  All calculations under this rule
                </Link>
              </p>
            </>
          ) : (
            <p className="muted">{outcome.refusal}</p>
          )}
        </article>
      ))}
    </div>
  );
}

function StandAlone({ outcome: { standAlone } }: { readonly outcome: SplitOutcome }) {
  if (standAlone === null) return null;
  return (
    <p>
      <span className={standAlone.passes ? "tag tag-done" : "tag"}>
        {standAlone.passes ? "stand-alone test passed" : "stand-alone test not passed"}
      </span>{" "}
      {standAlone.sentence}
    </p>
  );
}
