import type { TieIn } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { sightingMoves } from "#lib/domain/run/sighting-moves.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { writeTables } from "./row-writes.ts";
import { isOnlySightings } from "./sightings.ts";

interface Merge {
  readonly lineId: string;
  /** The tie-in that is no other than `intoId`; it goes. */
  readonly tieInId: string;
  readonly intoId: string;
}

/**
 * Says that two tie-ins are one: every sighting of the first becomes one of the second, and the first
 * goes. Refused where something rests on the first (a pairing, a test, a letter) or somebody has
 * described it: then the other has to be merged into it, or that taken back.
 */
export function mergeTieIns(
  act: Act,
  { lineId, tieInId, intoId }: Merge,
): Result<{ tieInId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "merge-tie-ins" } as const;
  return changeLine(act, deal, (file) => {
    const from = find(file.tieIns, tieInId, { path: "tieInId", what: "the tie-in" });
    if (!from.ok) return from;
    const into = find(file.tieIns, intoId, { path: "intoId", what: "the other tie-in" });
    if (!into.ok) return into;
    const wrong = wrongMerge(file, from.value, into.value);
    if (wrong !== null) return wrong;
    const after = merged(file, { tieInId, intoId });
    const detail = sightingMoves(file, after);
    const count = detail.moves.length;
    return ok({
      value: { tieInId: intoId },
      sentence: `Merged ${nameRow(file, "tieIns", tieInId)} into ${nameRow(file, "tieIns", intoId)}; ${count === 1 ? "1 sighting" : `${count} sightings`} moved.`,
      detail,
      write: (db) =>
        void writeTables(
          { ...act, db },
          { before: file, after, tables: ["observations", "tieIns"] },
        ),
    });
  });
}

function wrongMerge(file: LineFile, from: TieIn, into: TieIn) {
  if (from.id === into.id) return refuse("bad-value", "intoId", "Select another tie-in");
  if (from.parentId !== into.parentId)
    return refuse("bad-value", "intoId", "The two join different pipes, so they can’t be one");
  if (isOnlySightings(file, from)) return null;
  const names = `${from.label || "This tie-in"} has been edited by hand, or other rows depend on it`;
  const way = isOnlySightings(file, into)
    ? `merge ${into.label || "the other"} into ${from.label || "this one"} instead`
    : "undo that first";
  return refuse("in-use", "intoId", `${names}; ${way}`);
}

function merged(file: LineFile, { tieInId, intoId }: Omit<Merge, "lineId">): LineFile {
  return {
    ...file,
    observations: file.observations.map((seen) =>
      seen.tieInId === tieInId ? { ...seen, tieInId: intoId } : seen,
    ),
    tieIns: file.tieIns.filter(({ id }) => id !== tieInId),
  };
}
