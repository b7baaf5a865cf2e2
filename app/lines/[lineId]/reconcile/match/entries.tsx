import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { onPage, Pages, pageFrom } from "#app/_components/pages.tsx";
import { SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { EntryFinding } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { beginsLineAt } from "#lib/domain/reconcile/begins-line.ts";
import { explainedSeen } from "#lib/operations/explain-entry.ts";
import { decidedOf } from "#lib/operations/pairing-row.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { STANDING_WORDS } from "../../field-terms.ts";
import type { LinePart } from "../../part.ts";
import { beginLineAction, explainAction } from "../actions.ts";
import { entryWords } from "../place-words.ts";
import { ReasonField } from "../reason-field.tsx";
import { EXPLAIN_REASONS } from "../reasons.ts";
import styles from "../reconcile.module.css";
import { MatchWithOther } from "./match-with-other.tsx";

/** Entries without a tie-in and without a proposal: those still open, and those explained. */
export function unmatchedEntries({ file, report }: Pick<LinePart, "file" | "report">): {
  readonly open: readonly EntryFinding[];
  readonly explained: readonly EntryFinding[];
} {
  const proposed = new Set(report.proposals.map((proposal) => proposal.entryId));
  const unmatched = report.entries.filter(
    (each) => each.tieInId === null && !proposed.has(each.entryId),
  );
  const isExplained = ({ entryId }: EntryFinding) =>
    file.entries.some(({ id, explanation }) => id === entryId && explanation !== "");
  return {
    open: unmatched.filter((each) => !isExplained(each)),
    explained: unmatched.filter(isExplained),
  };
}

/** So many entries, each with its forms, stand on a page. */
const AT_ONCE = 15;

/** Entries that no tie-in matches: what the camera could say of them, and what to do. */
export function Unmatched({
  asked,
  ...part
}: LinePart & { readonly asked: string | string[] | undefined }) {
  const { open } = unmatchedEntries(part);
  const from = pageFrom(asked, AT_ONCE);
  if (open.length === 0) return null;
  return (
    <Section
      title="On record, no matching tie-in found"
      id="left"
      note="“Not seen” is used only where a camera run covered that spot. Elsewhere it may still exist: re-inspect before capping or lining."
    >
      <List findings={onPage(open, from, AT_ONCE)} {...part} />
      <Pages
        from={from}
        most={AT_ONCE}
        of={open.length}
        what="entries"
        href={(page) => `/lines/${part.lineId}/reconcile/match?left=${page}#left`}
      />
    </Section>
  );
}

/** Entries of which a person said what happened to them. */
export function Explained(part: LinePart) {
  const { explained } = unmatchedEntries(part);
  if (explained.length === 0) return null;
  return (
    <Section title="Explained entries" folded={`${explained.length}`}>
      <List findings={explained} {...part} />
    </Section>
  );
}

function List({ findings, ...part }: LinePart & { readonly findings: readonly EntryFinding[] }) {
  return (
    <ul className={styles["proposals"]}>
      {findings.map((finding) => (
        <li key={finding.entryId} className={styles["proposal"]}>
          <Entry finding={finding} {...part} />
        </li>
      ))}
    </ul>
  );
}

function Entry({ finding, ...part }: LinePart & { readonly finding: EntryFinding }) {
  const { file, report, lineId, mayFile } = part;
  const words = entryWords(file, finding.entryId, finding.compass);
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
          <BeginsHere finding={finding} label={words.label} {...part} />
          <details
            open={
              entry.explanation === "" &&
              finding.standing === "on-record-not-seen" &&
              beginsLineAt(file, finding) === null
            }
          >
            <summary>
              {entry.explanation === "" ? "Explain" : "Change explanation"}
              <span className="hidden"> {words.label}</span>
            </summary>
            <ActionForm
              action={explainAction.bind(null, lineId)}
              className={styles["decide"] ?? ""}
              label={`What happened to ${words.label}`}
            >
              <input type="hidden" name="entryId" value={finding.entryId} />
              <SeenField value={seenOf(explainedSeen(entry))} />
              <ReasonField presets={EXPLAIN_REASONS} label="What happened to it" />
              <div>
                <SubmitButton pendingWord="Saving …">Save</SubmitButton>
              </div>
            </ActionForm>
          </details>
          {report.tieIns.length === 0 ? null : (
            <MatchWithOther
              entryId={finding.entryId}
              label={words.label}
              others={report.tieIns}
              lineId={lineId}
              seen={seenOf(decidedOf(file, finding.entryId))}
            />
          )}
        </div>
      ) : null}
    </>
  );
}

/** One press where the entry is the house at the upper end, which no camera can see as a branch. */
function BeginsHere({
  finding,
  label,
  file,
  lineId,
}: Pick<LinePart, "file" | "lineId"> & {
  readonly finding: EntryFinding;
  readonly label: string;
}) {
  const at = beginsLineAt(file, finding);
  if (at === null) return null;
  return (
    <ActionForm
      action={beginLineAction.bind(null, lineId)}
      className={styles["decide"] ?? ""}
      label={`The line begins at ${label}`}
    >
      <input type="hidden" name="entryId" value={finding.entryId} />
      <p>
        The line ends at {formatFeet(at)}. If it begins at this house, no branch shows: the shared
        pipe itself comes from it.
      </p>
      <div>
        <SubmitButton pendingWord="Adding …">The line begins at {label}</SubmitButton>
      </div>
    </ActionForm>
  );
}
