import { type Cft, toTenth } from "../length/station.ts";
import { type Field, type Matched, mayMeet } from "./field.ts";
import { type Fit, factorOf, type Move, PLAIN, type Reading, scaleOf } from "./fit.ts";

/** How far the search goes: zero points seldom differ by more than a cleanout riser or a wall. */
export const MAX_SHIFT: Cft = 1_200;

/** Two entries that are closer together say nothing of a scale. */
const APART: Cft = 2_000;

const MAX_STRETCH = 60_000;

/** Fits tried are this fine, with fewer than so many steps of scale; the winner is then fitted exactly. */
const GRID = { shift: 20, scale: 2_000, steps: 1_000 };

/** From this many entries, so many pairs are enough to find a fit by. */
const PIVOTS = 24;

/**
 * Fits by one pair (a shift, or a scale) and by two pairs far enough apart (both), each once. Under a
 * reading in meters or from the other end by a shift alone: a stretch is only found in polishing.
 */
export function fitsToTry(fields: readonly Field[], reading: Reading): Fit[] {
  const { mirrored } = reading;
  const factor = factorOf(reading);
  const fits = new Map<number, Fit>();
  const add = (shift: number, stretch: number) => {
    if (!isInReach({ shift, stretch }, reading)) return;
    const step = Math.round((stretch * 1_000_000) / GRID.scale);
    const key = Math.round(shift / GRID.shift) * GRID.steps + step;
    if (fits.has(key)) return;
    fits.set(key, { shift: toTenth(shift), scale: scaleOf(factor, stretch), mirrored });
  };
  if (!reading.reversed && factor !== 1) add(0, 0);
  for (const field of fields) addByPairs(pivotPairs(field, reading), factor, add);
  return [...fits.values()];
}

function addByPairs(
  pairs: readonly Pivot[],
  factor: number,
  add: (shift: number, stretch: number) => void,
): void {
  for (const { entry, tieIn } of pairs) {
    const station = entry.station * factor;
    add(tieIn.station - station, 0);
    if (factor === 1 && station >= APART) add(0, tieIn.station / station - 1);
  }
  if (factor !== 1) return;
  for (const low of pairs)
    for (const high of pairs) {
      const apart = high.entry.station - low.entry.station;
      if (apart < APART) continue;
      const stretch = (high.tieIn.station - low.tieIn.station) / apart - 1;
      add(low.tieIn.station - low.entry.station * (1 + stretch), stretch);
    }
}

/** From the other end the zero may be anywhere; else it is near the main. */
export function isInReach(
  { shift, stretch }: { readonly shift: number; readonly stretch: number },
  { reversed }: Reading,
): boolean {
  const near = reversed ? shift > 0 : Math.abs(shift) <= MAX_SHIFT;
  return near && Math.abs(stretch) * 1_000_000 <= MAX_STRETCH;
}

type Pivot = Pick<Matched, "entry" | "tieIn">;

function pivotPairs(field: Field, reading: Reading): Pivot[] {
  const { entries, tieIns } = field;
  const every = Math.max(1, entries.length / PIVOTS);
  const rows = new Set(entries.map((_, row) => Math.floor(Math.floor(row / every) * every)));
  const factor = factorOf(reading);
  return entries.flatMap((entry, row) => {
    if (!rows.has(row)) return [];
    const station = entry.station * factor;
    const reach = MAX_SHIFT + (Math.abs(station) * MAX_STRETCH) / 1_000_000;
    return tieIns.flatMap((tieIn, column) => {
      const may = mayMeet(field, row, column);
      const near = reading.reversed || Math.abs(tieIn.station - station) <= reach;
      return may && near ? [{ entry, tieIn }] : [];
    });
  });
}

export function fitsThrough(pairs: readonly Matched[], fit: Fit, reading: Reading): Fit[] {
  const { mirrored } = fit;
  const isOdd = factorOf(reading) !== 1;
  return movesThrough(pairs, fit, isOdd).map((move) => ({ ...move, mirrored }));
}

function movesThrough(pairs: readonly Matched[], fit: Fit, isOdd: boolean): Move[] {
  if (isOdd) return [meanShift(pairs, fit.scale), leastSquares(pairs)];
  if (fit.scale === 0) return [meanShift(pairs, 0)];
  return fit.shift === 0 ? [throughMain(pairs)] : [leastSquares(pairs), throughMain(pairs)];
}

/** The scale alone: least squares with the main connection held fast. */
function throughMain(pairs: readonly Matched[]): Move {
  let over = 0;
  let under = 0;
  for (const { entry, tieIn } of pairs) {
    over += entry.station * tieIn.station;
    under += entry.station ** 2;
  }
  return under === 0 ? PLAIN : { shift: 0, scale: Math.round((over / under - 1) * 10_000) * 100 };
}

function meanShift(pairs: readonly Matched[], scale: number): Move {
  const factor = 1 + scale / 1_000_000;
  const sum = pairs.reduce(
    (total, { entry, tieIn }) => total + tieIn.station - entry.station * factor,
    0,
  );
  return { shift: toTenth(sum / Math.max(pairs.length, 1)), scale };
}

function leastSquares(pairs: readonly Matched[]): Move {
  const count = Math.max(pairs.length, 1);
  const x = pairs.reduce((sum, { entry }) => sum + entry.station, 0) / count;
  const y = pairs.reduce((sum, { tieIn }) => sum + tieIn.station, 0) / count;
  let over = 0;
  let under = 0;
  for (const { entry, tieIn } of pairs) {
    over += (entry.station - x) * (tieIn.station - y);
    under += (entry.station - x) ** 2;
  }
  if (under === 0) return meanShift(pairs, 0);
  const scale = Math.round((over / under - 1) * 10_000) * 100;
  return { shift: toTenth(y - x * (1 + scale / 1_000_000)), scale };
}
