import { type AlignGiven, alignAs, type FitScore, judgeFit } from "./align.ts";
import { type Fit, factorOf, type Reading, readingOf } from "./fit.ts";

/** A record that explains as much, or more, where it is read otherwise than it says of itself. */
export interface OtherReading {
  readonly recordId: string;
  readonly fit: FitScore;
  /** Entries that agree as the record is read now, and all that were compared. */
  readonly now: number;
  readonly of: number;
}

const READINGS: readonly Pick<Reading, "meters" | "reversed">[] = [
  { meters: true, reversed: false },
  { meters: false, reversed: true },
  { meters: true, reversed: true },
];

/**
 * Each record read in meters, and from the other end than it says: what explains at least three
 * entries and as many as the reading now in use. A record of which every entry agrees as it is
 * written gives no cause to look. The reading that explains most comes first.
 */
export function otherReadings(given: AlignGiven, fitOf: (recordId: string) => Fit): OtherReading[] {
  const recordIds = [...new Set(given.entries.map(({ recordId }) => recordId))];
  const found = recordIds.flatMap((recordId) => {
    const entries = given.entries.filter((entry) => entry.recordId === recordId);
    const own = { ...given, entries };
    const used = fitOf(recordId);
    const now = judgeFit(own, used).agreeing;
    if (now === entries.length && used.shift === 0 && used.scale === 0) return [];
    return READINGS.filter((reading) => factorOf(reading) !== factorOf(readingOf(used))).flatMap(
      (reading): OtherReading[] => {
        const fit = alignAs(own, reading, now);
        return fit ? [{ recordId, fit, now, of: entries.length }] : [];
      },
    );
  });
  return found.sort((a, b) => b.fit.agreeing - b.now - (a.fit.agreeing - a.now));
}
