import { DEGREES, type Degree } from "../../facts/run.ts";
import type { Cft } from "../../length/station.ts";
import type { Ground } from "../footage/ground.ts";
import { inOrder } from "../footage/place.ts";
import type { Track } from "../footage/track.ts";
import { type Talk, wordsOf } from "../meaning/said.ts";
import { isLong } from "../vocabulary/endings.ts";
import type { Heard } from "./heard.ts";

/** So near to each other two mentions of a kind are one thing. */
const SAME_PLACE = 100;

/** Puts repeated mentions of one thing into one row; what the later one adds is added. */
export function merged(ground: Ground, heard: readonly Heard[]): Heard[] {
  const rows: Heard[] = [];
  for (const next of heard) {
    const at = rows.findLastIndex((row) => isSame(ground, row, next));
    const row = rows[at];
    if (row) rows[at] = together(ground.track.motion, row, next);
    else if (!ground.sense.known.has(next.mark.at) || next.place.reading === "read")
      rows.push(next);
  }
  return rows;
}

function isSame({ talk, track }: Ground, row: Heard, next: Heard): boolean {
  const alike = row.kind === next.kind && row.fault === next.fault && row.mark.at !== next.mark.at;
  if (!alike || row.kind === "material" || row.kind === "remark") return false;
  if (next.antecedent !== null) return row.ats.includes(next.antecedent);
  if ((isAcross(row, next) || next.another) && !next.again) return false;
  return isWithin(row, next) || (isStill(track, row, next) && !isOtherStuff(talk, row, next));
}

/**
 * Told twice in one stay of the camera: at most one of the two has a footage, and no other was read
 * off between them.
 */
function isStill(track: Track, row: Heard, next: Heard): boolean {
  const [from, to] = [row.place, next.place];
  const placed = to.clause !== null && to.clause !== from.clause;
  if (placed && from.clause !== null) return false;
  return !isMoved(track, row, next) && isClose(row, next, to.clause === null ? STAY : NAMED_FIRST);
}

function isMoved({ points }: Track, row: Heard, next: Heard): boolean {
  return points.some(
    ({ at, counter, spoken }) =>
      spoken && at > row.mark.at && at < next.mark.at && counter !== row.place.counter,
  );
}

/** Told one soon after the other, with no other footage read off between. */
export function inOneStay(track: Track, row: Heard, next: Heard): boolean {
  return !isMoved(track, row, next) && isClose(row, next);
}

/** So soon is read off what was only named. */
const NAMED_FIRST = 30_000;
/** Grease on the walls is not the wipes farther on. */
function isOtherStuff(talk: Talk, row: Heard, next: Heard): boolean {
  const [a, b] = [row, next].map(({ mark }) => wordsOf(talk, mark.from, mark.to));
  return row.kind === "deposit" && next.place.clause !== null && a !== b;
}

/** For so long a camera is looked through at one thing, thousandths of a second; sentences where there are no times. */
const STAY = 60_000;
const SENTENCES = 3;

function isClose({ mark: row }: Heard, { mark: next }: Heard, stay = STAY): boolean {
  return row.time === null || next.time === null
    ? next.sentence - row.sentence <= SENTENCES
    : next.time - row.time <= stay;
}

/** On another side; `on the right, a saddle on top of the clay` is told of one. */
export function isAcross(row: Heard, next: Heard): boolean {
  const told = row.mark.sentence === next.mark.sentence && next.clock === 12;
  return (
    clash(row.clock, next.clock) &&
    !(told && row.fitting === "unknown" && next.fitting !== "unknown")
  );
}

function clash(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return false;
  const apart = Math.abs(a - b) % 12;
  return Math.min(apart, 12 - apart) > 2;
}

/** At the same place, or within a stretch already told of. */
function isWithin(row: Heard, next: Heard): boolean {
  const from = row.place.counter;
  const at = next.place.counter;
  if (from === null || at === null) return false;
  const to = row.place.toCounter ?? from;
  if (
    isLong(row) &&
    row.place.toCounter !== null &&
    at >= from - SAME_PLACE &&
    at <= to + SAME_PLACE
  )
    return true;
  const loose = row.place.reading === "read" && next.place.reading === "read";
  const slack: Cft = loose
    ? SAME_PLACE
    : Math.max(SAME_PLACE, Math.min(300, row.place.slack, next.place.slack));
  return Math.abs(from - at) <= slack;
}

/** Of two words for one thing, the worse. */
function worse(a: Degree | null, b: Degree | null): Degree | null {
  return DEGREES.findLast((degree) => degree === a || degree === b) ?? null;
}

function greater(a: number | null, b: number | null): number | null {
  return a === null || b === null ? (a ?? b) : Math.max(a, b);
}

/** The place that tells more. */
function placeOf(motion: Track["motion"], row: Heard, next: Heard): Heard["place"] {
  const [from, to] = [row.place, next.place];
  if (from.reading !== "read" && to.reading === "read") return to;
  if (from.counter === null || to.counter === null) return from;
  if (from.toCounter !== null || to.toCounter === null) return from;
  if (from.reading !== "read" || to.reading === "read") return to;
  // `Fifty-two, water. … So it’s holding maybe five feet of it.`
  const end = from.counter + motion * (to.toCounter - to.counter);
  return { ...from, ...inOrder(from.counter, Math.max(0, end)) };
}

/** The one row of two mentions of one thing: the place that tells more, the worse degree, and what either adds. */
export function together(motion: Track["motion"], row: Heard, next: Heard): Heard {
  const better = row.place.reading !== "read" && next.place.reading === "read";
  const near = next.clauses[0] - row.clauses[1] <= 3;
  return {
    ...row,
    ats: [...row.ats, ...next.ats],
    place: placeOf(motion, row, next),
    degree: worse(row.degree, next.degree),
    reduction: greater(row.reduction, next.reduction),
    waterDepth: greater(row.waterDepth, next.waterDepth),
    fitting: next.fitting === "unknown" ? row.fitting : next.fitting,
    clock: row.clock ?? next.clock,
    diameter: row.diameter ?? next.diameter,
    material: row.material === "unknown" ? next.material : row.material,
    upstreamMaterial:
      row.upstreamMaterial === "unknown" ? next.upstreamMaterial : row.upstreamMaterial,
    hedges: [...new Set([...row.hedges, ...next.hedges])],
    aboutRecord: [...new Set([row.aboutRecord, next.aboutRecord])]
      .filter((text) => text !== "")
      .join("; "),
    notes: better ? next.notes : row.notes,
    clauses: near ? [row.clauses[0], Math.max(row.clauses[1], next.clauses[1])] : row.clauses,
  };
}
