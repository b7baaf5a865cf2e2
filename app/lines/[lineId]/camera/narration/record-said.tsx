import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { plainFeet } from "#lib/domain/length/station.ts";
import type { Draft, DraftLog } from "#lib/domain/narration/log/draft.ts";
import { saidOfRecord } from "#lib/domain/narration/log/record-said.ts";
import { entrySpokenOf } from "#lib/domain/reconcile/entry-spoken-of.ts";
import { counted } from "../../names.ts";
import { noteEntryAction } from "./actions.ts";

interface RecordSaidProps {
  readonly lineId: string;
  readonly narrationId: string;
  readonly file: Pick<LineFile, "entries">;
  readonly report: Pick<Report, "entries">;
  readonly log: DraftLog;
}

/** What was said about the record, offered as a note to the entry that it speaks of. */
export function RecordSaid({ lineId, narrationId, file, report, log }: RecordSaidProps) {
  const said = log.drafts.filter(({ aboutRecord }) => aboutRecord !== "");
  if (said.length === 0 || file.entries.length === 0) return null;
  return (
    <details>
      <summary>{counted(said.length, "remark")} about the record, to keep with its entries</summary>
      <ul>
        {said.map((draft) => (
          <li key={draft.key}>
            {draft.fromMain === null ? "" : `${plainFeet(draft.fromMain)} ft: `}“{draft.aboutRecord}
            ”{" "}
            <Keeping
              lineId={lineId}
              narrationId={narrationId}
              file={file}
              report={report}
              draft={draft}
            />
          </li>
        ))}
      </ul>
    </details>
  );
}

function Keeping({
  lineId,
  narrationId,
  file,
  report,
  draft,
}: Omit<RecordSaidProps, "log"> & { readonly draft: Draft }) {
  const kept = file.entries.find(({ note }) => note.includes(saidOfRecord(draft)));
  if (kept !== undefined) return <span className="tag tag-done">kept with {kept.label}</span>;
  const meant = entrySpokenOf(file.entries, report.entries, draft);
  return (
    <ActionForm
      action={noteEntryAction.bind(null, { lineId, narrationId, key: draft.key })}
      label={`Keep “${draft.aboutRecord}”`}
    >
      <div className="cluster">
        <label>
          <span className="hidden">Entry on record</span>
          <select className="input" name="entryId" defaultValue={meant?.id ?? ""} required>
            <option value="">Which entry?</option>
            {file.entries.map(({ id, label, distance }) => (
              <option key={id} value={id}>
                {label}
                {distance === null ? "" : `, ${plainFeet(distance)} ft`}
              </option>
            ))}
          </select>
        </label>
        <SubmitButton pendingWord="Keeping …" quiet>
          Add to its note
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
