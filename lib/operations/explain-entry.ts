import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import type { RecordEntry } from "#lib/domain/facts/record.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find } from "./change.ts";
import { changedSince, fieldsSeen } from "./seen.ts";

interface Explanation {
  readonly lineId: string;
  readonly entryId: string;
  /** What became of it; empty takes the explanation back. */
  readonly explanation: string;
  /** `seenOf(explainedSeen(entry))` as the form was filled in; not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

/** What somebody said of an entry when the form was filled in. */
export function explainedSeen(entry: RecordEntry) {
  return fieldsSeen(entry, ["explanation", "explainedBy", "explainedOn"]);
}

/** A person's word on a record entry that no tie-in answers to. */
export function explainEntry(
  act: Act,
  { lineId, entryId, explanation, seen }: Explanation,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "explain-entry" } as const;
  return changeLine(act, deal, (file) => {
    const entry = find(file.entries, entryId, { path: "entryId", what: "the record entry" });
    if (!entry.ok) return entry;
    const now = explainedSeen(entry.value);
    const changed = changedSince(seen, { now, last: { by: entry.value.explainedBy } });
    if (changed !== null) return changed;
    const text = explanation.trim();
    const after: RecordEntry = {
      ...entry.value,
      explanation: text,
      explainedBy: text === "" ? "" : act.actor.name,
      explainedOn: text === "" ? null : act.today,
    };
    const name = nameRow(file, "entries", entryId);
    return ok({
      value: null,
      sentence: text === "" ? `Removed the explanation of ${name}.` : `Explained ${name}: ${text}`,
      detail: { before: entry.value.explanation, after: text },
      write: (db) => {
        updateRow(db, "entries", { lineId, row: after });
        countSave(db, { lineId, table: "entries", by: act.actor.name, at: act.now });
      },
    });
  });
}
