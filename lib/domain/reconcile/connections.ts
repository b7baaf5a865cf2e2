import type { Side } from "../facts/line.ts";
import type { Cft } from "../length/station.ts";
import { counterTolerance } from "../run/convert.ts";
import { LIKELY_LIMIT, type RecordMark } from "./likeness.ts";

/** One connection, as one or several records show it; at most one entry of each record. */
export interface Connection {
  readonly entries: readonly FittedMark[];
  /** The tie-in that a person accepted for one of its entries. */
  readonly acceptedId: string | null;
}

/** An entry with its station, and its side, as its record is read. */
export interface FittedMark extends RecordMark {
  readonly fittedStation: Cft;
  /** As the record has it. */
  readonly drawnSide: Side;
}

/**
 * Gathers entries of several records that show the same connection: the same property within 5 ft,
 * or the same side within the tolerance where the properties do not contradict each other. Cards
 * are redrawn over the years, and a house must not count as unseen because two papers show it.
 */
export function connectionsOf(
  entries: readonly FittedMark[],
  accepted: ReadonlyMap<string, string>,
): Connection[] {
  const connections: Connection[] = [];
  for (const entry of entries.toSorted((a, b) => a.fittedStation - b.fittedStation)) {
    const acceptedId = accepted.get(entry.entryId) ?? null;
    const at = nearestSame(connections, { entry, acceptedId });
    const found = connections[at];
    if (found)
      connections[at] = {
        entries: [...found.entries, entry],
        acceptedId: found.acceptedId ?? acceptedId,
      };
    else connections.push({ entries: [entry], acceptedId });
  }
  return connections;
}

function nearestSame(
  connections: readonly Connection[],
  given: { entry: FittedMark; acceptedId: string | null },
): number {
  let best = -1;
  let nearest = Number.POSITIVE_INFINITY;
  connections.forEach((connection, index) => {
    if (!canJoin(connection, given)) return;
    const distance = Math.min(
      ...connection.entries.map((each) => Math.abs(each.fittedStation - given.entry.fittedStation)),
    );
    if (distance < nearest) {
      nearest = distance;
      best = index;
    }
  });
  return best;
}

function canJoin(
  connection: Connection,
  { entry, acceptedId }: { entry: FittedMark; acceptedId: string | null },
): boolean {
  const apart =
    acceptedId !== null && connection.acceptedId !== null && acceptedId !== connection.acceptedId;
  return (
    !apart &&
    connection.entries.every(
      (each) => each.recordId !== entry.recordId && isSameConnection(each, entry),
    )
  );
}

function isSameConnection(a: FittedMark, b: FittedMark): boolean {
  const distance = Math.abs(a.fittedStation - b.fittedStation);
  if (a.propertyId !== null && b.propertyId !== null)
    return a.propertyId === b.propertyId && distance <= LIKELY_LIMIT;
  return a.side === b.side && a.side !== "unknown" && distance <= counterTolerance(a.fittedStation);
}
