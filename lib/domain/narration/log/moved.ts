import { type Cft, toTenth } from "../../length/station.ts";
import type { DraftReading, SpokenReading } from "../footage/run-told.ts";

/** Where a drafted row is, and when it was told. */
export interface PlacedRow {
  readonly key: string;
  readonly counter: Cft | null;
  /** Null in text without times. */
  readonly second: number | null;
  readonly reading: DraftReading;
}

interface Fix {
  readonly counter: Cft;
  readonly second: number;
  /** How far a person moved it; 0 where it stands as spoken. */
  readonly by: Cft;
}

/** A spoken reading this many seconds or less from a row of the same footage is that row’s own. */
const OWN = 15;

/**
 * What moves with mended distances: rows worked out by time next to a mended one are worked out
 * anew, those beyond the last move along with it. What was spoken, and what a person typed, stays.
 * Only rows that change are told.
 */
export function movedAround(
  rows: readonly PlacedRow[],
  readings: readonly SpokenReading[],
  mended: ReadonlyMap<string, Cft>,
): ReadonlyMap<string, Cft> {
  if (mended.size === 0) return new Map();
  const fixes = fixesOf(rows, readings, mended);
  return new Map(
    rows.flatMap((row): [string, Cft][] => {
      if (row.reading === "read" || row.second === null || mended.has(row.key)) return [];
      const counter = placeBetween(fixes, row.second, row.counter);
      return counter === null || counter === row.counter ? [] : [[row.key, counter]];
    }),
  );
}

/** Spoken readings and mended rows in the order of time; a mended row stands for its own reading. */
function fixesOf(
  rows: readonly PlacedRow[],
  readings: readonly SpokenReading[],
  mended: ReadonlyMap<string, Cft>,
): Fix[] {
  const typed = rows.flatMap(({ key, counter, second, reading }) => {
    const to = mended.get(key);
    if (to === undefined || second === null) return [];
    return [
      { counter: to, second, by: to - (counter ?? to), was: reading === "read" ? counter : null },
    ];
  });
  const spoken = readings.flatMap(({ counter, videoSecond }): Fix[] => {
    if (videoSecond === null) return [];
    const replaced = typed.some(
      ({ was, second }) => was === counter && Math.abs(second - videoSecond) <= OWN,
    );
    return replaced ? [] : [{ counter, second: videoSecond, by: 0 }];
  });
  return [...typed, ...spoken].sort((a, b) => a.second - b.second);
}

function placeBetween(fixes: readonly Fix[], second: number, now: Cft | null): Cft | null {
  const before = fixes.findLast((fix) => fix.second <= second);
  const after = fixes.find((fix) => fix.second > second);
  const moved = (before?.by ?? 0) !== 0 || (after?.by ?? 0) !== 0 || now === null;
  if (!moved) return null;
  if (before && after) {
    const part = (second - before.second) / (after.second - before.second);
    return Math.max(0, toTenth(before.counter + part * (after.counter - before.counter)));
  }
  const [near] = [before, after].filter((fix) => fix !== undefined);
  return near === undefined || now === null ? null : Math.max(0, now + near.by);
}
