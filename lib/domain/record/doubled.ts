import type { RecordEntry } from "../facts/record.ts";

/**
 * Entries that a record has twice, each with the one that it repeats: the same distance, side, label
 * and property on one record. An entry that a person paired with a tie-in stands for itself.
 */
export function doubledEntries(
  entries: readonly RecordEntry[],
  isPaired: (entryId: string) => boolean,
): Map<string, string> {
  const firsts = new Map<string, string>();
  const doubled = new Map<string, string>();
  const inOrder = entries.toSorted(
    (a, b) => Number(isPaired(b.id)) - Number(isPaired(a.id)) || (a.id < b.id ? -1 : 1),
  );
  for (const entry of inOrder) {
    const key = keyOf(entry);
    const first = key === null ? undefined : firsts.get(key);
    if (key !== null && first === undefined) firsts.set(key, entry.id);
    if (first !== undefined && !isPaired(entry.id)) doubled.set(entry.id, first);
  }
  return doubled;
}

/** Null where too little is told for two entries to be known as one. */
function keyOf({ recordId, distance, side, label, propertyId }: RecordEntry): string | null {
  const name = label.trim().toLowerCase();
  if (distance === null || (side === "unknown" && name === "")) return null;
  return JSON.stringify([recordId, distance, side, name, propertyId]);
}
