import type { HistoryEntry } from "../facts/history-entry.ts";
import type { TieIn } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";

/** Operations by which a person says what is one tie-in and what is not. */
const SIGHTING_ACTIONS = ["move-sighting", "merge-tie-ins", "undo-sightings"] as const;

/** What such an operation did, as the history keeps it. */
interface SightingMoves {
  readonly moves: readonly {
    readonly observationId: string;
    readonly before: string | null;
    readonly after: string | null;
  }[];
  /** Tie-ins that went with their last sighting, with their place in the list. */
  readonly removed: readonly { readonly at: number; readonly tieIn: TieIn }[];
}

/** The difference between two states of a file, in what shows which tie-in. */
export function sightingMoves(
  before: Pick<LineFile, "observations" | "tieIns">,
  after: Pick<LineFile, "observations" | "tieIns">,
): SightingMoves {
  const now = new Map(after.observations.map(({ id, tieInId }) => [id, tieInId]));
  const kept = new Set(after.tieIns.map(({ id }) => id));
  return {
    moves: before.observations.flatMap(({ id, tieInId }) => {
      const to = now.get(id) ?? null;
      return to === tieInId ? [] : [{ observationId: id, before: tieInId, after: to }];
    }),
    removed: before.tieIns.flatMap((tieIn, at) => (kept.has(tieIn.id) ? [] : [{ at, tieIn }])),
  };
}

/** What a history entry moved; null where it is no such entry or cannot be read. */
export function movesIn({ action, detail }: HistoryEntry): SightingMoves | null {
  if (!SIGHTING_ACTIONS.some((each) => each === action)) return null;
  const read = parsed(detail);
  if (read === null || !Array.isArray(read.moves) || !Array.isArray(read.removed)) return null;
  return { moves: read.moves.filter(isMove), removed: read.removed };
}

/**
 * Tie-ins that a person told apart from others or joined with them. What is worked out later, from a
 * corrected reading or a new known point, leaves their sightings as the person put them.
 */
export function chosenTieIns({ history }: Pick<LineFile, "history">): Set<string> {
  return new Set(
    history.flatMap((entry) =>
      (movesIn(entry)?.moves ?? []).flatMap(({ before, after }) =>
        [before ?? [], after ?? []].flat(),
      ),
    ),
  );
}

/** The last thing that happened on the line, where it moved sightings and can be undone at a press. */
export function undoableMove({ history }: Pick<LineFile, "history">): HistoryEntry | null {
  const last = history.at(-1);
  if (!last || last.action === "undo-sightings") return null;
  const found = movesIn(last);
  return found !== null && found.moves.length > 0 ? last : null;
}

/** The file as it was before the moves; null where somebody has moved the same sightings since. */
export function withoutMoves<F extends Pick<LineFile, "observations" | "tieIns">>(
  file: F,
  { moves, removed }: SightingMoves,
): F | null {
  const byId = new Map(moves.map((move) => [move.observationId, move]));
  const stands = moves.every(({ observationId, after }) =>
    file.observations.some(({ id, tieInId }) => id === observationId && tieInId === after),
  );
  if (!stands) return null;
  const tieIns = [...file.tieIns];
  for (const { at, tieIn } of removed)
    if (!tieIns.some(({ id }) => id === tieIn.id)) tieIns.splice(at, 0, tieIn);
  const known = new Set(tieIns.map(({ id }) => id));
  if (moves.some(({ before }) => before !== null && !known.has(before))) return null;
  const observations = file.observations.map((seen) => {
    const move = byId.get(seen.id);
    return move ? { ...seen, tieInId: move.before } : seen;
  });
  return { ...file, observations, tieIns };
}

function isMove(move: SightingMoves["moves"][number]): boolean {
  return typeof move?.observationId === "string";
}

function parsed(detail: string): Partial<SightingMoves> | null {
  try {
    const read: unknown = JSON.parse(detail);
    return typeof read === "object" && read !== null ? (read as Partial<SightingMoves>) : null;
  } catch {
    return null;
  }
}
