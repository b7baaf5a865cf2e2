import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { plainFeet } from "#lib/domain/length/station.ts";
import type { DraftLog, RecordSaid as Said } from "#lib/domain/narration/log/draft.ts";
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
  const said = log.recordSaid;
  if (said.length === 0 || file.entries.length === 0) return null;
  return (
    <details>
      <summary>{counted(said.length, "remark")} about the record, to keep with its entries</summary>
      <ul>
        {said.map((each) => (
          <li key={each.key}>
            {each.fromMain === null ? "" : `${plainFeet(each.fromMain)} ft: `}“{each.aboutRecord}”{" "}
            <Keeping
              lineId={lineId}
              narrationId={narrationId}
              file={file}
              report={report}
              said={each}
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
  said,
}: Omit<RecordSaidProps, "log"> & { readonly said: Said }) {
  const kept = file.entries.find(({ note }) => note.includes(saidOfRecord(said)));
  if (kept !== undefined) return <span className="tag tag-done">kept with {kept.label}</span>;
  const meant = entrySpokenOf(file.entries, report.entries, said);
  return (
    <ActionForm
      action={noteEntryAction.bind(null, { lineId, narrationId, key: said.key })}
      label={`Keep “${said.aboutRecord}”`}
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
