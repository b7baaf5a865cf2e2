import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import type { RecordEntry } from "#lib/domain/facts/record.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { logOf } from "#lib/domain/narration/log/narration-log.ts";
import { saidOfRecord } from "#lib/domain/narration/log/record-said.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

interface NoteEntry {
  readonly lineId: string;
  readonly narrationId: string;
  /** Of the words about the record. */
  readonly key: string;
  readonly entryId: string;
}

/** Keeps what the technician said about the record in the note of the entry that it speaks of. */
export function noteEntry(
  act: Act,
  { lineId, narrationId, key, entryId }: NoteEntry,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "note-entry" } as const;
  return changeLine(act, deal, (file) => {
    const narration = find(file.narrations, narrationId, {
      path: "narrationId",
      what: "the transcript",
    });
    if (!narration.ok) return narration;
    const entry = find(file.entries, entryId, { path: "entryId", what: "the record entry" });
    if (!entry.ok) return entry;
    const said = logOf(file, narration.value).recordSaid.find((each) => each.key === key);
    if (said === undefined) return refuse("not-found", "key", "what was said about the record");
    const words = saidOfRecord(said);
    const name = nameRow(file, "entries", entryId);
    if (entry.value.note.includes(words))
      return refuse("already-there", "entryId", `The note of ${name} says so already`);
    const row: RecordEntry = {
      ...entry.value,
      note: [entry.value.note, words].filter((part) => part !== "").join("; "),
    };
    return ok({
      value: null,
      sentence: `Kept in the note of ${name}: ${words}.`,
      detail: { before: entry.value.note, after: row.note },
      write: (db) => {
        updateRow(db, "entries", { lineId, row });
        countSave(db, { lineId, table: "entries", by: act.actor.name, at: act.now });
      },
    });
  });
}
