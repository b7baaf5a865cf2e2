import { Heads } from "#app/_components/heads.tsx";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { sayAny } from "#lib/domain/say/say-list.ts";
import { CLUE_WEIGHTS } from "#lib/domain/tiein/candidate-weights.ts";
import { type Candidate, candidatesFor, nobodyWords } from "#lib/domain/tiein/candidates.ts";
import { propertyName } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import styles from "../reconcile.module.css";

/** More than these are folded. */
const SHOWN = 3;

/** Who may own a tie-in, the likeliest first, with what speaks for and against each. */
export function Candidates({
  finding,
  file,
  report,
}: LinePart & { readonly finding: TieInFinding }) {
  const candidates = candidatesFor(file, report, finding);
  const more = candidates.length - SHOWN;
  return (
    <div className="stack-tight">
      <h4>Likely owners</h4>
      {candidates.length === 0 ? (
        <p className="muted">
          Nothing points to a property yet. Add neighboring addresses as “possibly connected” under
          “Who is on it?”, then test there.
        </p>
      ) : (
        <>
          <ol className={styles["candidates"]}>
            {candidates.slice(0, SHOWN).map((candidate) => (
              <OneCandidate key={candidate.propertyId} candidate={candidate} file={file} />
            ))}
          </ol>
          {more > 0 ? (
            <details>
              <summary className="small">{more} more, less likely</summary>
              <ol className={styles["candidates"]} start={SHOWN + 1}>
                {candidates.slice(SHOWN).map((candidate) => (
                  <OneCandidate key={candidate.propertyId} candidate={candidate} file={file} />
                ))}
              </ol>
            </details>
          ) : null}
          <p className="small">{nobodyWords(candidates)}</p>
          <Weights />
        </>
      )}
    </div>
  );
}

function OneCandidate({
  candidate,
  file,
}: {
  readonly candidate: Candidate;
  readonly file: LinePart["file"];
}) {
  const tied = candidate.tiedWith.map((id) => propertyName(file, id));
  return (
    <li>
      <p className="strong">{propertyName(file, candidate.propertyId)}</p>
      {candidate.speaksFor.map((sentence) => (
        <p key={sentence} className="small">
          {sentence}
        </p>
      ))}
      {candidate.speaksAgainst.map((sentence) => (
        <p key={sentence} className="small muted">
          Against: {sentence}
        </p>
      ))}
      {tied.length === 0 ? null : <p className="small">Can’t be told apart from {sayAny(tied)}.</p>}
    </li>
  );
}

function Weights() {
  return (
    <details className="screen-only">
      <summary className="small">How this list is ranked</summary>
      <p className="small">
        What is known about each address is added up by these weights. Scores, not probabilities.
      </p>
      <table className="plain small">
        <Heads of={["What is known", { num: "Weight" }]} />
        <tbody>
          {Object.entries(CLUE_WEIGHTS).map(([kind, { words, weight }]) => (
            <tr key={kind}>
              <td>{words}</td>
              <td className="num">{weight < 0 ? `−${-weight}` : weight}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
