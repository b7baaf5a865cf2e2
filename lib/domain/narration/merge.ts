import { DEGREES, type Degree } from "../facts/run.ts";
import type { Cft } from "../length/station.ts";
import type { Heard } from "./heard.ts";
import { inOrder } from "./place.ts";
import { isLong } from "./stretch.ts";

/** So near to each other two mentions of a kind are one thing. */
const SAME_PLACE = 100;
/** A thing without a reading, named again with one so soon, is the same; thousandths of a second. */
const SOON = 30_000;
const AT_ONCE = 6_000;

/** Puts repeated mentions of one thing into one row; what the later one adds is added. */
export function merged(heard: readonly Heard[]): Heard[] {
  const rows: Heard[] = [];
  for (const next of heard) {
    const at = rows.findLastIndex((row) => isSame(row, next));
    const row = rows[at];
    if (row) rows[at] = together(row, next);
    else rows.push(next);
  }
  return rows;
}

function isSame(row: Heard, next: Heard): boolean {
  const alike = row.kind === next.kind && row.fault === next.fault && row.mark.at !== next.mark.at;
  if (!alike || row.kind === "material" || row.kind === "remark") return false;
  if (next.goesOn && isLong(row) && isSpokenBehind(row, next)) return true;
  if (next.antecedent !== null) return row.ats.includes(next.antecedent);
  if ((clash(row.clock, next.clock) || next.another) && !next.again) return false;
  return isWithin(row, next) || isNamedAgain(row, next);
}

/** So much farther on, hundredths of a foot, a stretch is not what still goes on. */
const GOES_ON = 1_000;

/** Read off at a place that the stretch has not reached yet. */
function isSpokenBehind(row: Heard, next: Heard): boolean {
  const end = row.place.toCounter ?? row.place.counter;
  const at = next.place.counter;
  if (end === null || at === null || next.place.reading !== "read") return false;
  return Math.abs(at - end) <= GOES_ON;
}

/** The same thing named once more, where at most one of the two mentions has a reading. */
function isNamedAgain(row: Heard, next: Heard): boolean {
  const loose = next.place.reading !== "read";
  const close = next.mark.sentence - row.mark.sentence <= 1 || isSoon(row, next);
  if (next.again) return loose || (close && row.place.reading !== "read");
  if (!loose) return close && (row.place.counter === null || isNamedFirst(row, next));
  if (next.mark.sentence === row.mark.sentence) return true;
  return close && isLong(row) && isSoon(row, next, AT_ONCE);
}

/** `Roots. There were roots at eighteen`: named, and then read off at once; in text without times nothing else places it. */
function isNamedFirst(row: Heard, next: Heard): boolean {
  return row.place.reading !== "read" && row.mark.time === null && next.mark.at - row.mark.at <= 3;
}

function clash(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return false;
  const apart = Math.abs(a - b) % 12;
  return Math.min(apart, 12 - apart) > 2;
}

function isSoon(row: Heard, next: Heard, limit = SOON): boolean {
  const from = row.mark.time;
  const to = next.mark.time;
  return from !== null && to !== null && to - from <= limit;
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
function placeOf(row: Heard, next: Heard): Heard["place"] {
  if (next.goesOn) return stretched(row, next);
  const better = row.place.reading !== "read" && next.place.reading === "read";
  const ended =
    row.place.toCounter === null && next.place.toCounter !== null && next.place.counter !== null;
  return better || (ended && row.place.counter !== null) ? next.place : row.place;
}

/** The place of the one, on to that of the other. */
function stretched(row: Heard, next: Heard): Heard["place"] {
  const ends = [row, next]
    .flatMap(({ place }) => [place.counter, place.toCounter])
    .filter((end) => end !== null);
  const read = next.place.reading === "read";
  return read ? { ...row.place, ...inOrder(Math.min(...ends), Math.max(...ends)) } : row.place;
}

function together(row: Heard, next: Heard): Heard {
  const better = row.place.reading !== "read" && next.place.reading === "read";
  const near = next.clauses[0] - row.clauses[1] <= 3;
  return {
    ...row,
    ats: [...row.ats, ...next.ats],
    place: placeOf(row, next),
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
