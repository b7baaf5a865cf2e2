import { movesIn, sightingMoves, withoutMoves } from "#lib/domain/run/sighting-moves.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { writeTables } from "./row-writes.ts";
import { letGo } from "./sightings.ts";

/**
 * Puts sightings back as they were before one move or merge, with the tie-ins that went with it.
 * Refused once the same sightings were moved again, or what they belonged to is gone.
 */
export function undoSightings(
  act: Act,
  { lineId, historyId }: { lineId: string; historyId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "undo-sightings" } as const;
  return changeLine(act, deal, (file) => {
    const entry = find(file.history, historyId, { path: "historyId", what: "what was done" });
    if (!entry.ok) return entry;
    const found = movesIn(entry.value);
    if (found === null || found.moves.length === 0)
      return refuse("bad-value", "historyId", "This did not move a sighting");
    const before = withoutMoves(file, found);
    if (before === null)
      return refuse("changed-meanwhile", "historyId", "These sightings have changed since");
    const after = letGo(before, file);
    return ok({
      value: null,
      sentence: `Undid: ${entry.value.sentence}`,
      detail: sightingMoves(file, after),
      write: (db) =>
        void writeTables(
          { ...act, db },
          { before: file, after, tables: ["observations", "tieIns"] },
        ),
    });
  });
}
