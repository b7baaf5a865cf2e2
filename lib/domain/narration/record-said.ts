import type { RecordEntry } from "../facts/record.ts";
import type { Cft } from "../length/station.ts";
import { distanceIn } from "./distance-in.ts";
import type { Draft } from "./draft.ts";

/** Farther from an entry, hundredths of a foot, what was said hardly speaks of it. */
const ABOUT = 500;

/**
 * The record entry that words about the record speak of: by the distance that they name, else by
 * where the row lies; the nearest within 5 ft. Null where there is none, or where the words say that
 * it is on no record.
 */
export function entrySpokenOf(
  entries: readonly RecordEntry[],
  { aboutRecord, fromMain }: Pick<Draft, "aboutRecord" | "fromMain">,
): RecordEntry | null {
  const at = distanceIn(aboutRecord) ?? (DENIED.test(aboutRecord) ? null : fromMain);
  if (at === null) return null;
  const near = entries
    .flatMap((entry) =>
      entry.distance === null ? [] : [{ entry, off: offBy(entry.distance, at) }],
    )
    .filter(({ off }) => off <= ABOUT)
    .sort((a, b) => a.off - b.off);
  return near[0]?.entry ?? null;
}

const DENIED =
  /\b(not|isn't|isn’t|ain't|ain’t|no|nothing|never|doesn't|doesn’t|don't|don’t|wasn't|wasn’t|negative)\b|\bno está\b/i;

function offBy(distance: Cft, at: Cft): Cft {
  return Math.abs(distance - at);
}

/** How words about the record stand in an entry's note. */
export function saidOfRecord({ aboutRecord }: Pick<Draft, "aboutRecord">): string {
  return `from the narration: “${aboutRecord}”`;
}
