import type { Pairing } from "../facts/pairing.ts";
import type { MayPair } from "./field.ts";
import type { RecordMark } from "./likeness.ts";

/** What people said of entries and tie-ins. */
export interface Decisions {
  /** The tie-in accepted for an entry. */
  readonly accepted: ReadonlyMap<string, string>;
  /** `entry tie-in`. */
  readonly refused: ReadonlySet<string>;
}

/**
 * Refused pairs may not pair again; accepted ones pair with each other, and no other entry of the
 * same record with either.
 */
export function mayPairUnder(
  entries: readonly RecordMark[],
  { accepted, refused }: Decisions,
): MayPair {
  if (accepted.size === 0 && refused.size === 0) return () => true;
  const recordOf = new Map(entries.map((entry) => [entry.entryId, entry.recordId]));
  const taken = new Set(
    [...accepted].map(([entryId, tieInId]) => `${recordOf.get(entryId)} ${tieInId}`),
  );
  return (entryId, tieInId) => {
    const own = accepted.get(entryId);
    if (own !== undefined) return own === tieInId;
    const isTaken = taken.has(`${recordOf.get(entryId)} ${tieInId}`);
    return !isTaken && !refused.has(`${entryId} ${tieInId}`);
  };
}

export function decisionsOf(pairings: readonly Pairing[]): Decisions {
  const accepted = new Map<string, string>();
  const refused = new Set<string>();
  for (const { state, entryId, tieInId } of pairings) {
    if (state === "accepted") accepted.set(entryId, tieInId);
    else refused.add(`${entryId} ${tieInId}`);
  }
  return { accepted, refused };
}
