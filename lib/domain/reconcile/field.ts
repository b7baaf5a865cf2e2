import type { Cft } from "../length/station.ts";
import { sidesAgree } from "../run/sighting.ts";
import { type Fit, factorOf, fitted, type Reading, sideAs } from "./fit.ts";
import { mismatch, pairTolerance, type RecordMark, type SeenMark } from "./likeness.ts";

/** True where the two may be one: not refused, and neither is accepted to be something else. */
export type MayPair = (entryId: string, tieInId: string) => boolean;

/** One record's entries against the tie-ins under a reading: a tie-in may stand on several records. */
export interface Field {
  /** Up the line, as the reading takes them. */
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  /** The tie-ins' stations, for the search that asks for them over and over. */
  readonly stations: Float64Array;
  /** What pairs lose for being unlike, entry after entry; less than 0 where they may not pair. */
  readonly unlike: Float64Array;
  /** How far apart each entry and tie-in may lie, entry after entry. */
  readonly tolerances: Float64Array;
  readonly widest: Cft;
}

/** True where an entry and a tie-in, by their places in the field, may be one. */
export function mayMeet({ unlike, tieIns }: Field, row: number, column: number): boolean {
  return (unlike[row * tieIns.length + column] ?? FORBIDDEN) >= 0;
}

/** What stands for a pair that may not be. */
const FORBIDDEN = -1;

export interface Matched {
  readonly entry: RecordMark;
  readonly tieIn: SeenMark;
  /** Neither side contradicts the other, as the reading takes them. */
  readonly onOneSide: boolean;
}

interface Given {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  readonly mayPair: MayPair;
}

/** The entries record by record, each against all tie-ins. */
export function fieldsOf({ entries, tieIns, mayPair }: Given, reading: Reading): Field[] {
  return [...new Set(entries.map((entry) => entry.recordId))].map((recordId) =>
    fieldOf(
      { entries: entries.filter((each) => each.recordId === recordId), tieIns, mayPair },
      reading,
    ),
  );
}

function fieldOf({ entries: given, tieIns: seen, mayPair }: Given, reading: Reading): Field {
  const way = Math.sign(factorOf(reading));
  const entries = given
    .map((entry) => ({ ...entry, side: sideAs(entry.side, reading) }))
    .sort((a, b) => (a.station - b.station) * way);
  const tieIns = seen.toSorted((a, b) => a.station - b.station);
  const stations = Float64Array.from(tieIns, ({ station }) => station);
  const unlike = new Float64Array(entries.length * tieIns.length);
  const tolerances = new Float64Array(entries.length * tieIns.length);
  const usual = tieIns.map((tieIn) => pairTolerance(tieIn, { uncertainty: 0 }));
  for (const [row, entry] of entries.entries()) {
    for (const [column, tieIn] of tieIns.entries()) {
      const cell = row * tieIns.length + column;
      const lost = mayPair(entry.entryId, tieIn.tieInId) ? mismatch(entry, tieIn) : null;
      unlike[cell] = lost === null ? FORBIDDEN : Math.max(0, lost) * 0.35;
      tolerances[cell] = entry.uncertainty > 0 ? pairTolerance(tieIn, entry) : (usual[column] ?? 0);
    }
  }
  const uncertainty = Math.max(0, ...entries.map((entry) => entry.uncertainty));
  const widest = Math.max(0, ...tieIns.map((tieIn) => pairTolerance(tieIn, { uncertainty })));
  return { entries, tieIns, stations, unlike, tolerances, widest };
}

/** The most that a fit can explain and gain. */
export interface Bound {
  readonly explained: number;
  readonly gain: number;
}

/** What a fit has to come to, or it isn't looked at further. */
interface Worth {
  /** It explains as many entries at least. */
  readonly least?: number;
  /** It gains more than this. */
  readonly over?: number;
}

/** An entry gains no more than this. */
const MOST_GAINED = 1;

/**
 * The most that a fit can explain and gain: each entry by the tie-in that suits it best. Null as
 * soon as it is sure that it comes to less than it has to.
 */
export function boundOf(
  fields: readonly Field[],
  fit: Fit,
  { least = 0, over = Number.NEGATIVE_INFINITY }: Worth = {},
): Bound | null {
  const isWorth = (known: number, gained: number, open: number) =>
    known + open >= least && gained + open * MOST_GAINED > over;
  let left = fields.reduce((sum, { entries }) => sum + entries.length, 0);
  let explained = 0;
  let gain = 0;
  for (const field of fields) {
    const { entries, stations, widest } = field;
    let next = 0;
    for (let row = 0; row < entries.length; row += 1) {
      const station = fitted(entries[row]?.station ?? 0, fit);
      while ((stations[next] ?? station) < station - widest) next += 1;
      const most = mostGained(field, { row, station, from: next });
      explained += most > 0 ? 1 : 0;
      gain += most;
      left -= 1;
      if (!isWorth(explained, gain, left)) return null;
    }
  }
  return isWorth(explained, gain, left) ? { explained, gain } : null;
}

function mostGained(
  field: Field,
  { row, station, from }: { row: number; station: Cft; from: number },
): number {
  const { stations, widest } = field;
  let most = 0;
  for (let column = from; column < stations.length; column += 1) {
    if ((stations[column] ?? 0) > station + widest) break;
    const gain = gained(field, { row, column, station });
    if (gain > most) most = gain;
  }
  return most;
}

/**
 * The most gained by pairing in order along the pipe: what lies further up on the record lies
 * further up in the pipe. (Dynamic programming over both lists.)
 */
export function match(field: Field, fit: Fit): { gain: number; pairs: Matched[] } {
  const { entries, tieIns } = field;
  const width = tieIns.length + 1;
  const best = new Float64Array((entries.length + 1) * width);
  const at = (row: number, column: number) => best[row * width + column] ?? 0;
  const gains = entries.map((_, row) => gainsOf(field, fit, row));
  for (const [row, own] of gains.entries()) {
    for (let column = 0; column < tieIns.length; column += 1) {
      const paired = own[column] ? at(row, column) + (own[column] ?? 0) : 0;
      best[(row + 1) * width + column + 1] = Math.max(
        paired,
        at(row, column + 1),
        at(row + 1, column),
      );
    }
  }
  return { gain: at(entries.length, tieIns.length), pairs: trace(field, gains, at) };
}

function trace(
  { entries, tieIns }: Field,
  gains: readonly (readonly number[])[],
  at: (row: number, column: number) => number,
): Matched[] {
  const pairs: Matched[] = [];
  let row = entries.length;
  let column = tieIns.length;
  while (row > 0 && column > 0) {
    const here = at(row, column);
    const entry = entries[row - 1];
    const tieIn = tieIns[column - 1];
    const gain = gains[row - 1]?.[column - 1] ?? 0;
    if (here === at(row - 1, column)) row -= 1;
    else if (here === at(row, column - 1)) column -= 1;
    else {
      if (entry && tieIn && gain > 0)
        pairs.push({ entry, tieIn, onOneSide: sidesAgree(entry.side, tieIn.side) });
      row -= 1;
      column -= 1;
    }
  }
  return pairs;
}

/** What one entry gains by each tie-in under a fit: up to 1; 0 beyond the tolerance. */
function gainsOf(field: Field, fit: Fit, row: number): number[] {
  const station = fitted(field.entries[row]?.station ?? 0, fit);
  return field.tieIns.map((_, column) => gained(field, { row, column, station }));
}

function gained(
  { stations, unlike, tolerances }: Field,
  { row, column, station }: { row: number; column: number; station: Cft },
): number {
  const cell = row * stations.length + column;
  const off = Math.abs((stations[column] ?? 0) - station);
  const tolerance = tolerances[cell] ?? 0;
  if (off > tolerance) return 0;
  const lost = unlike[cell] ?? FORBIDDEN;
  return lost < 0 ? 0 : Math.max(0.05, MOST_GAINED - 0.3 * (off / tolerance) ** 2 - lost);
}
