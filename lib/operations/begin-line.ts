import { countSave } from "#db/queries/revision.ts";
import { insertRow } from "#db/queries/row.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import { TIE_IN, type TieIn } from "#lib/domain/facts/line.ts";
import { beginsLineAt, beginsWords } from "#lib/domain/reconcile/begins-line.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { lastLabel } from "#lib/domain/run/sighting.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { decidePair, writePairing } from "./pairing-row.ts";

/**
 * A person's word that the line begins at the house of a record entry: it gets a tie-in at the upper
 * end, matched with the entry, so that its flow, its share and its letters are reckoned like those of
 * the others. Refuses an entry that lies elsewhere or has a match already.
 */
export function beginLine(
  act: Act,
  { lineId, entryId }: { readonly lineId: string; readonly entryId: string },
): Result<{ readonly label: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "begin-line" } as const;
  return changeLine(act, deal, (file) => {
    const entry = find(file.entries, entryId, { path: "entryId", what: "the record entry" });
    if (!entry.ok) return entry;
    const finding = reportOn(file, act.today).entries.find((each) => each.entryId === entryId);
    const station = finding === undefined ? null : beginsLineAt(file, finding);
    if (station === null)
      return refuse("not-in-this-state", "entryId", "It does not lie where the line ends");
    const reason = beginsWords(entry.value);
    const tieIn: TieIn = {
      ...usualRow(TIE_IN),
      id: act.newId(),
      label: `T${lastLabel(file) + 1}`,
      station,
      note: reason,
    };
    const grown = { ...file, tieIns: [...file.tieIns, tieIn] };
    const decided = decidePair(act, grown, {
      ...{ entryId, tieInId: tieIn.id, state: "accepted", reason },
      report: reportOn(grown, act.today),
    });
    if (!decided.ok) return decided;
    const { pairing, words } = decided.value;
    return ok({
      value: { label: tieIn.label },
      sentence: `Added ${tieIn.label} where the line begins, and decided that ${words}.`,
      detail: { added: tieIn, pairing },
      write: (db) => {
        insertRow(db, "tieIns", { lineId, row: tieIn });
        countSave(db, { lineId, table: "tieIns", by: act.actor.name, at: act.now });
        writePairing({ ...act, db }, lineId, pairing);
      },
    });
  });
}
