import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { Section } from "#app/_components/section.tsx";
import type { EntryFinding } from "#lib/domain/findings/report.ts";
import { STANDING_WORDS } from "../field-terms.ts";
import type { LinePart } from "../part.ts";
import { explainAction } from "./actions.ts";
import { PairWithOther } from "./pairings.tsx";
import { entryWords } from "./pairings-view.ts";
import { ReasonField } from "./reason-field.tsx";
import { EXPLAIN_REASONS } from "./reasons.ts";
import styles from "./reconcile.module.css";

/** Entries that no tie-in answers to: what the camera could say of them, and what became of them. */
export function Entries(part: LinePart) {
  const proposed = new Set(part.report.proposals.map((proposal) => proposal.entryId));
  const unanswered = part.report.entries.filter(
    (each) => each.tieInId === null && !proposed.has(each.entryId),
  );
  if (unanswered.length === 0) return null;
  return (
    <Section
      title="On record, and nothing answers to it"
      note="“Not seen” is said only where a run looked. Where none did, the entry may still be there: look again before the line is closed or lined."
    >
      <ul className={styles["proposals"]}>
        {unanswered.map((finding) => (
          <li key={finding.entryId} className={styles["proposal"]}>
            <Unanswered finding={finding} {...part} />
          </li>
        ))}
      </ul>
    </Section>
  );
}

function Unanswered({ finding, ...part }: LinePart & { readonly finding: EntryFinding }) {
  const { file, report, lineId, mayFile } = part;
  const words = entryWords(file, finding.entryId);
  const entry = file.entries.find((each) => each.id === finding.entryId);
  if (entry === undefined) return null;
  return (
    <>
      <div>
        <p>
          <SelectOnStrip id={finding.entryId}>{words.label}</SelectOnStrip>{" "}
          <span className="nowrap">{words.place}</span>
        </p>
        <p className="muted small">{words.record}</p>
      </div>
      <div>
        <p>
          <span className="tag">{STANDING_WORDS[finding.standing]}</span>
        </p>
        <p>{finding.sentence}</p>
      </div>
      {mayFile ? (
        <div className="stack-tight screen-only">
          <details open={entry.explanation === "" && finding.standing === "on-record-not-seen"}>
            <summary>
              {entry.explanation === "" ? "Explain" : "Explain otherwise"}
              <span className="hidden"> {words.label}</span>
            </summary>
            <ActionForm
              action={explainAction.bind(null, lineId)}
              className={styles["decide"] ?? ""}
              label={`What became of ${words.label}`}
            >
              <input type="hidden" name="entryId" value={finding.entryId} />
              <ReasonField presets={EXPLAIN_REASONS} label="What became of it" />
              <div>
                <SubmitButton quiet pendingWord="Saving …">
                  Save
                </SubmitButton>
              </div>
            </ActionForm>
          </details>
          {report.tieIns.length === 0 ? null : (
            <PairWithOther
              entryId={finding.entryId}
              label={words.label}
              others={report.tieIns}
              lineId={lineId}
            />
          )}
        </div>
      ) : null}
    </>
  );
}
