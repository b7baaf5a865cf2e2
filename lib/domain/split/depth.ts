import type { LineFile } from "../facts/line-file.ts";
import type { Cft } from "../length/station.ts";

/** How deep the pipe lies at one station. */
export interface NotedDepth {
  readonly station: Cft;
  readonly depth: Cft;
}

/** How deep the pipe lies where it lies deepest on a stretch. */
export interface DeepestPlace extends NotedDepth {
  /** `noted` there, worked out `between` two notes, or from the `nearest` note, beyond which nothing is known. */
  readonly by: "noted" | "between" | "nearest";
}

type DepthFile = Pick<LineFile, "points" | "levels">;

/**
 * Every depth that was noted at a point or measured as a level, rising by station; where two differ
 * at one station, the deeper one.
 */
export function notedDepths({ points, levels }: DepthFile): NotedDepth[] {
  const deepest = new Map<Cft, Cft>();
  const measured = levels.map(({ station, depth, ground, invert }) => ({
    station,
    depth: depth ?? (ground === null || invert === null ? null : ground - invert),
  }));
  for (const { station, depth } of [...points, ...measured]) {
    if (depth === null || depth < 0) continue;
    deepest.set(station, Math.max(depth, deepest.get(station) ?? 0));
  }
  return [...deepest]
    .map(([station, depth]) => ({ station, depth }))
    .sort((a, b) => a.station - b.station);
}

/**
 * The deepest place between two stations (both the same for a point): straight between notes, and
 * the nearest note beyond the last one. Null where nothing is noted.
 */
export function deepestBetween(
  noted: readonly NotedDepth[],
  from: Cft,
  to: Cft,
): DeepestPlace | null {
  const inside = noted
    .filter(({ station }) => from <= station && station <= to)
    .map((each): DeepestPlace => ({ ...each, by: "noted" }));
  const places = [...inside, depthAt(noted, from), depthAt(noted, to)].flatMap(
    (place) => place ?? [],
  );
  const [first, ...rest] = places;
  if (first === undefined) return null;
  return rest.reduce((deepest, place) => (place.depth > deepest.depth ? place : deepest), first);
}

function depthAt(noted: readonly NotedDepth[], station: Cft): DeepestPlace | null {
  const below = noted.findLast((each) => each.station <= station);
  const above = noted.find((each) => each.station >= station);
  const one = below ?? above;
  if (one === undefined) return null;
  if (below === undefined || above === undefined)
    return { station, depth: one.depth, by: "nearest" };
  if (below.station === above.station) return { ...below, by: "noted" };
  const part = (station - below.station) / (above.station - below.station);
  const depth = Math.ceil(below.depth + (above.depth - below.depth) * part);
  return { station, depth, by: "between" };
}

/** Half a foot: no nearer is a depth known that was worked out. */
const HALF_FOOT: Cft = 50;

/** A depth that was not noted at its place, up to the next half foot. */
export function safeDepth({ depth, by }: DeepestPlace): Cft {
  return by === "noted" ? depth : Math.ceil(depth / HALF_FOOT) * HALF_FOOT;
}
