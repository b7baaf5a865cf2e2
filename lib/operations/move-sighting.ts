import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { sightingMoves } from "#lib/domain/run/sighting-moves.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { writeTables } from "./row-writes.ts";
import { letGo, withSightings } from "./sightings.ts";

interface Move {
  readonly lineId: string;
  readonly observationId: string;
  /** Null: a tie-in of its own. */
  readonly tieInId: string | null;
}

/**
 * Says that an observation is a sighting of another tie-in than was thought. A tie-in that only this
 * sighting had made, and of which nothing else was said, goes with it. What is worked out later does
 * not move it back.
 */
export function moveSighting(
  act: Act,
  { lineId, observationId, tieInId }: Move,
): Result<{ tieInId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "move-sighting" } as const;
  return changeLine(act, deal, (file) => {
    const what = { path: "observationId", what: "the observation" };
    const seen = find(file.observations, observationId, what);
    if (!seen.ok) return seen;
    if (seen.value.kind !== "tie-in")
      return refuse("bad-value", "observationId", "Only a tie-in that was seen is a sighting");
    const after = moved(act, file, { observationId, tieInId });
    if (!after.ok) return after;
    const to = after.value.observations.find(({ id }) => id === observationId)?.tieInId ?? "";
    const same = seen.value.tieInId === to;
    const from = seen.value.tieInId;
    const left = from === null ? "" : ` (was ${nameRow(file, "tieIns", from)})`;
    return ok({
      value: { tieInId: to },
      sentence: same
        ? null
        : `Moved ${nameRow(file, "observations", observationId)} to ${nameRow(after.value, "tieIns", to)}${left}.`,
      detail: sightingMoves(file, after.value),
      write: (db) =>
        void writeTables(
          { ...act, db },
          { before: file, after: after.value, tables: ["observations", "tieIns"] },
        ),
    });
  });
}

function moved(
  act: Act,
  file: LineFile,
  { observationId, tieInId }: { observationId: string; tieInId: string | null },
): Result<LineFile, Refusal> {
  if (tieInId !== null) {
    const tieIn = find(file.tieIns, tieInId, { path: "tieInId", what: "the tie-in" });
    if (!tieIn.ok) return tieIn;
  }
  const observations = file.observations.map((seen) =>
    seen.id === observationId ? { ...seen, tieInId } : seen,
  );
  const after = { ...file, observations };
  const own = tieInId === null ? withSightings(act, after, { alone: observationId }) : after;
  return ok(letGo(own, file));
}
