import type { Side } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RecordEntry } from "#lib/domain/facts/record.ts";
import {
  aFile,
  anAnchor,
  anEntry,
  anObservation,
  aRecord,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";

/** A line whose truth is known, because it was made up: which tie-ins have no record entry. */
export interface KnownLine {
  readonly file: LineFile;
  /** Ids of the tie-ins that no entry of the card stands for. */
  readonly undocumented: ReadonlySet<string>;
  /** Ids of the entries whose tie-in was built and seen. */
  readonly built: ReadonlySet<string>;
  /** Distance on the card and from the main, for the baseline. */
  readonly card: readonly number[];
}

/** A repeatable stream of numbers in [0, 1). Source: the mulberry32 generator, from memory. */
export function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** What else may be odd about a card: nothing says so on it. */
export type Oddity = "none" | "mirrored" | "meters" | "reversed" | "doubled";

export interface Hardness {
  /** Farthest that the card's zero may lie off, in hundredths of a foot. */
  readonly shift: number;
  /** Largest stretch of the card, as a fraction. */
  readonly scale: number;
  /** Noise of each reading, in hundredths of a foot. */
  readonly noise: number;
  /** How many of 100 entries have the wrong side; none unless given. */
  readonly wrongSides?: number;
  readonly oddity?: Oddity;
}

/** A random line of 6 to 16 tie-ins, 0 to 5 of them not on the card, 0 to 5 entries never built. */
export function knownLine(next: () => number, hardness: Hardness): KnownLine {
  const count = 6 + Math.floor(next() * 11);
  const extra = Math.floor(next() * Math.min(6, count - 3));
  const missing = Math.floor(next() * 6);
  const stations = spacedStations(next, count + missing);
  const shift = (next() * 2 - 1) * hardness.shift;
  const scale = 1 + (next() * 2 - 1) * hardness.scale;
  const order = shuffled(next, [...stations.keys()]);
  const undocumentedAt = new Set(order.slice(0, extra));
  const neverBuiltAt = new Set(order.slice(extra, extra + missing));
  const noise = () => (next() * 2 - 1) * hardness.noise;
  const sides = stations.map((): Side => (next() < 0.5 ? "left" : "right"));
  const built = stations.flatMap((station, at) =>
    neverBuiltAt.has(at) ? [] : [{ at, station: Math.round(station + noise()) }],
  );
  const onCard = stations.flatMap((station, at) =>
    undocumentedAt.has(at)
      ? []
      : [{ at, distance: Math.round((station - shift) / scale + noise()) }],
  );
  const end = Math.max(...stations) + 500;
  const { wrongSides = 0 } = hardness;
  const wrong = onCard.map(() => wrongSides > 0 && next() * 100 < wrongSides);
  const entries = onCard.flatMap(({ at, distance }, index): RecordEntry[] => {
    const side = sides[at] ?? "unknown";
    const drawn = { distance, side: wrong[index] ? OTHER_SIDE[side] : side };
    return oddEntries(`e${at}`, drawn, { end, oddity: hardness.oddity ?? "none" });
  });
  const file = aFile({
    line: { upperEnd: end },
    records: [aRecord("card")],
    entries,
    runs: [aRun("run", { looks: "upstream", fromCounter: 0, toCounter: end })],
    anchors: [anAnchor("run", { counter: 0, station: 0 })],
    tieIns: built.map(({ at }) => aTieIn(`t${at}`, { side: sides[at] ?? "unknown" })),
    observations: built.map(({ at, station }) =>
      anObservation(`o${at}`, {
        counter: station,
        clock: sides[at] === "left" ? 9 : 3,
        tieInId: `t${at}`,
      }),
    ),
  });
  return {
    file,
    undocumented: new Set([...undocumentedAt].map((at) => `t${at}`)),
    built: new Set(
      entries
        .map(({ id }) => id)
        .filter((id) => built.some(({ at }) => `e${at}` === id || `e${at} again` === id)),
    ),
    card: entries.map(({ distance }) => distance ?? 0),
  };
}

const OTHER_SIDE: Record<Side, Side> = {
  left: "right",
  right: "left",
  crown: "crown",
  unknown: "unknown",
};

/** Feet in a meter. */
const FEET = 3.28084;

/** One entry as an odd card shows it. */
function oddEntries(
  id: string,
  { distance, side }: { distance: number; side: Side },
  { end, oddity }: { end: number; oddity: Oddity },
): RecordEntry[] {
  const entry = anEntry(id, { label: id, distance, side });
  switch (oddity) {
    case "none":
      return [entry];
    case "mirrored":
      return [{ ...entry, side: OTHER_SIDE[side] }];
    case "meters":
      return [{ ...entry, distance: Math.round(distance / FEET) }];
    case "reversed":
      return [{ ...entry, distance: end - distance }];
    case "doubled":
      return [entry, { ...entry, id: `${id} again` }];
  }
}

function spacedStations(next: () => number, count: number): number[] {
  let at = 500;
  return Array.from({ length: count }, () => {
    at += 700 + Math.floor(next() * 1_800);
    return at;
  });
}

function shuffled(next: () => number, values: number[]): number[] {
  return values
    .map((value) => ({ value, key: next() }))
    .sort((a, b) => a.key - b.key)
    .map(({ value }) => value);
}
