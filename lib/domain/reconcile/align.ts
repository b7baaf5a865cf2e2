import { type Cft, toTenth } from "../line/station.ts";
import { mismatch, pairTolerance, type RecordMark, type SeenMark } from "./likeness.ts";

/** Record station → line station: first stretched, then moved. */
export interface Fit {
  readonly shift: Cft;
  /** Parts per million on top of 1. */
  readonly scale: number;
}

export interface FitScore extends Fit {
  /** Entries that find a tie-in within the tolerance. */
  readonly explained: number;
  /** Explained pairs, less for distance and unlikeness, less the price of shift and scale. */
  readonly score: number;
}

export interface AlignResult {
  readonly best: FitScore;
  /** Taking the record as it stands. */
  readonly plain: FitScore;
  /** Clearly different fits that are nearly as good, the best first. */
  readonly rivals: readonly FitScore[];
}

/** True where the two may be one: not refused, and neither is accepted to be something else. */
export type MayPair = (entryId: string, tieInId: string) => boolean;

export const PLAIN: Fit = { shift: 0, scale: 0 };

/** How far the search goes: zero points seldom differ by more than a cleanout riser or a wall. */
const MAX_SHIFT: Cft = 1_200;
const MAX_SCALE = 60_000;

/**
 * A shift, or a change of scale, must pay for itself: it has to explain clearly more than none does,
 * and at least three entries (four for a scale); both at once clearly more again. So a few entries
 * never call for one by chance.
 */
const PRICE = { one: 1.5, both: 1, perFoot: 0.025, perPercent: 0.05 };
const SUPPORT = { shift: 3, scale: 4, part: 0.5, apart: 2_000 };

/** Fits tried are this fine; the winner is then fitted exactly. */
const GRID = { shift: 20, scale: 2_000 };

/** So many of the best fits tried are fitted exactly. */
const POLISHED = 20;

/** From this many entries, so many pairs are enough to find a fit by. */
const PIVOTS = 24;

/** A fit whose score is no farther behind the best is nearly as good. */
const NEARLY = 1.75;

/** So many rivals are looked at; beyond them nothing new is learnt. */
const MAX_RIVALS = 40;

/** A rival must differ by more than this at either end to be worth telling. */
const DIFFERENT: Cft = 250;

/** One record's entries against the tie-ins: a tie-in may stand on several records. */
interface Field {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  /** What pairs lose for being unlike, entry by entry; null where they may not pair. */
  readonly unlike: readonly (readonly (number | null)[])[];
  readonly tolerances: readonly Cft[];
  readonly widest: Cft;
}

interface Matched {
  readonly entry: RecordMark;
  readonly tieIn: SeenMark;
}

/** Where the record's station lies on the line under a fit. */
export function fitted(station: Cft, { shift, scale }: Fit): Cft {
  return scale === 0 ? station + shift : toTenth(station * (1 + scale / 1_000_000) + shift);
}

/**
 * Finds the shift and the small stretch that best lay the entries on the tie-ins: every fit by one
 * or two pairs is tried, judged by how many entries it explains within the tolerance and then by
 * how far they lie off, and the best is fitted to all its pairs. What comes close to a refused fit is
 * left out; the record as it stands never is. Hundredths of a foot.
 */
export function align(
  entries: readonly RecordMark[],
  tieIns: readonly SeenMark[],
  { mayPair, refused = [] }: { readonly mayPair: MayPair; readonly refused?: readonly Fit[] },
): AlignResult {
  const fields = fieldsOf(entries, tieIns, mayPair);
  const plain = judge(fields, PLAIN);
  const ends = endsOf(entries);
  const allowed = (fit: Fit) => refused.every((other) => differ(ends, fit, other));
  const tried = judgeAll(fields, { plain, entries: entries.length }).filter(allowed);
  const leading = tried.slice(0, POLISHED);
  const best = [...leading, ...leading.map((fit) => polish(fields, fit))]
    .filter((fit) => isSupported(entries.length, fit) && allowed(fit))
    .reduce((top, fit) => (fit.score > top.score ? fit : top), plain);
  const rivals = [...(best === plain ? [] : [plain]), ...tried]
    .filter((fit) => isRival(fit, best) && differ(ends, fit, best))
    .slice(0, MAX_RIVALS);
  return { best, plain, rivals };
}

/** True where two fits put either end of the record clearly apart: more than 2.5 ft. */
function differ(ends: readonly Cft[], a: Fit, b: Fit): boolean {
  return ends.some((end) => Math.abs(fitted(end, a) - fitted(end, b)) > DIFFERENT);
}

/** The lowest and the highest station on record. */
function endsOf(entries: readonly RecordMark[]): Cft[] {
  const stations = entries.map((entry) => entry.station);
  return [Math.min(...stations), Math.max(...stations)];
}

/** Judges one fit alone, for comparing it with another record's. */
export function judgeFit(
  entries: readonly RecordMark[],
  tieIns: readonly SeenMark[],
  { fit, mayPair }: { readonly fit: Fit; readonly mayPair: MayPair },
): FitScore {
  return judge(fieldsOf(entries, tieIns, mayPair), fit);
}

function fieldsOf(
  entries: readonly RecordMark[],
  tieIns: readonly SeenMark[],
  mayPair: MayPair,
): Field[] {
  return [...new Set(entries.map((entry) => entry.recordId))].map((recordId) =>
    fieldOf(
      entries.filter((entry) => entry.recordId === recordId),
      tieIns,
      mayPair,
    ),
  );
}

function fieldOf(given: readonly RecordMark[], seen: readonly SeenMark[], mayPair: MayPair): Field {
  const entries = given.toSorted((a, b) => a.station - b.station);
  const tieIns = seen.toSorted((a, b) => a.station - b.station);
  const unlike = entries.map((entry) =>
    tieIns.map((tieIn) => {
      const lost = mayPair(entry.entryId, tieIn.tieInId) ? mismatch(entry, tieIn) : null;
      return lost === null ? null : Math.max(0, lost) * 0.35;
    }),
  );
  const tolerances = tieIns.map((tieIn) => pairTolerance(tieIn.station, tieIn.uncertainty));
  return { entries, tieIns, unlike, tolerances, widest: Math.max(0, ...tolerances) };
}

function judge(fields: readonly Field[], fit: Fit): FitScore {
  const matches = fields.map((field) => match(field, fit));
  const gain = matches.reduce((sum, each) => sum + each.gain, 0);
  const explained = matches.reduce((sum, each) => sum + each.pairs.length, 0);
  return { ...fit, explained, score: gain - priceOf(fit) };
}

/**
 * Judges the fits that can be best or nearly as good, the best first. What a fit can gain at most
 * is quickly told, so that most are never laid out pair by pair.
 */
function judgeAll(
  fields: readonly Field[],
  { plain, entries }: { plain: FitScore; entries: number },
): FitScore[] {
  const ranked = fitsToTry(fields)
    .map((fit) => ({ fit, most: mostGain(fields, fit) - priceOf(fit) }))
    .sort((a, b) => b.most - a.most);
  const tried: FitScore[] = [];
  let top = plain.score;
  for (const { fit, most } of ranked) {
    if (most <= top - NEARLY) break;
    const found = judge(fields, fit);
    if (isSupported(entries, found)) top = Math.max(top, found.score);
    if (found.explained >= 2) tried.push(found);
  }
  return tried.sort((a, b) => b.score - a.score);
}

/** One for each entry that has any tie-in within the widest tolerance. */
function mostGain(fields: readonly Field[], fit: Fit): number {
  let most = 0;
  for (const { entries, tieIns, widest } of fields) {
    let next = 0;
    for (const entry of entries) {
      const station = fitted(entry.station, fit);
      while (next < tieIns.length && (tieIns[next]?.station ?? 0) < station - widest) next += 1;
      if ((tieIns[next]?.station ?? Number.POSITIVE_INFINITY) <= station + widest) most += 1;
    }
  }
  return most;
}

function priceOf({ shift, scale }: Fit): number {
  const moved = shift === 0 ? 0 : (Math.abs(shift) / 100) * PRICE.perFoot;
  const stretched = scale === 0 ? 0 : (Math.abs(scale) / 10_000) * PRICE.perPercent;
  const both = shift !== 0 && scale !== 0 ? PRICE.both : 0;
  return (shift === 0 && scale === 0 ? 0 : PRICE.one) + both + moved + stretched;
}

function isSupported(entries: number, fit: FitScore): boolean {
  if (fit.shift === 0 && fit.scale === 0) return true;
  const least = fit.scale === 0 ? SUPPORT.shift : SUPPORT.scale;
  return fit.explained >= least && fit.explained >= entries * SUPPORT.part;
}

/** Nearly as good, or better but on too little support. A stretch must explain as many at least. */
function isRival(fit: FitScore, best: FitScore): boolean {
  const stretched = fit.scale !== 0 && best.scale === 0;
  const least = stretched ? best.explained : best.explained - 1;
  return fit.explained >= Math.max(least, 2) && fit.score > best.score - NEARLY;
}

function isInReach({ shift, scale }: Fit): boolean {
  return Math.abs(shift) <= MAX_SHIFT && Math.abs(scale) <= MAX_SCALE;
}

/**
 * The most gained by pairing in order along the pipe: what lies further up on the record lies
 * further up in the pipe. (Dynamic programming over both lists.)
 */
function match(field: Field, fit: Fit): { gain: number; pairs: Matched[] } {
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
      if (entry && tieIn && gain > 0) pairs.push({ entry, tieIn });
      row -= 1;
      column -= 1;
    }
  }
  return pairs;
}

/** What one entry gains by each tie-in under a fit: up to 1; 0 beyond the tolerance. */
function gainsOf(field: Field, fit: Fit, row: number): number[] {
  const station = fitted(field.entries[row]?.station ?? 0, fit);
  return field.tieIns.map((tieIn, column) => {
    const off = Math.abs(tieIn.station - station);
    const tolerance = field.tolerances[column] ?? 0;
    const unlike = field.unlike[row]?.[column] ?? null;
    if (unlike === null || off > tolerance) return 0;
    return Math.max(0.05, 1 - 0.3 * (off / tolerance) ** 2 - unlike);
  });
}

/** Fits by one pair (a shift, or a scale) and by two pairs far enough apart (both), each once. */
function fitsToTry(fields: readonly Field[]): Fit[] {
  const fits = new Map<string, Fit>();
  const add = (shift: number, scale: number) => {
    if (!isInReach({ shift, scale })) return;
    const key = `${Math.round(shift / GRID.shift)}/${Math.round(scale / GRID.scale)}`;
    if (!fits.has(key)) fits.set(key, { shift: toTenth(shift), scale: Math.round(scale) });
  };
  for (const field of fields) {
    const pairs = pivotPairs(field);
    for (const { entry, tieIn } of pairs) {
      add(tieIn.station - entry.station, 0);
      if (entry.station >= SUPPORT.apart) add(0, (tieIn.station / entry.station - 1) * 1_000_000);
    }
    for (const low of pairs) for (const high of pairs) addByTwo(low, high, add);
  }
  return [...fits.values()];
}

function addByTwo(low: Matched, high: Matched, add: (shift: number, scale: number) => void): void {
  const apart = high.entry.station - low.entry.station;
  if (apart < SUPPORT.apart) return;
  const scale = (high.tieIn.station - low.tieIn.station) / apart - 1;
  add(low.tieIn.station - low.entry.station * (1 + scale), scale * 1_000_000);
}

function pivotPairs({ entries, tieIns, unlike }: Field): Matched[] {
  const every = Math.max(1, entries.length / PIVOTS);
  const rows = new Set(entries.map((_, row) => Math.floor(Math.floor(row / every) * every)));
  return entries.flatMap((entry, row) => {
    if (!rows.has(row)) return [];
    const reach = MAX_SHIFT + (entry.station * MAX_SCALE) / 1_000_000;
    return tieIns.flatMap((tieIn, column) => {
      const may = (unlike[row]?.[column] ?? null) !== null;
      return may && Math.abs(tieIn.station - entry.station) <= reach ? [{ entry, tieIn }] : [];
    });
  });
}

/** Fits a fit to all the pairs that it explains, as long as that makes it better. */
function polish(fields: readonly Field[], first: FitScore): FitScore {
  let best = first;
  for (let round = 0; round < 4; round += 1) {
    const { shift, scale } = best;
    const pairs = fields.flatMap((field) => match(field, { shift, scale }).pairs);
    const next = fitsThrough(pairs, best)
      .filter(isInReach)
      .map((fit) => judge(fields, fit))
      .reduce((top, fit) => (fit.score > top.score ? fit : top), best);
    if (next === best) return best;
    best = next;
  }
  return best;
}

function fitsThrough(pairs: readonly Matched[], { shift, scale }: Fit): Fit[] {
  if (scale === 0) return [meanShift(pairs)];
  return shift === 0 ? [throughMain(pairs)] : [leastSquares(pairs), throughMain(pairs)];
}

/** The scale alone: least squares with the main connection held fast. */
function throughMain(pairs: readonly Matched[]): Fit {
  let over = 0;
  let under = 0;
  for (const { entry, tieIn } of pairs) {
    over += entry.station * tieIn.station;
    under += entry.station ** 2;
  }
  return under === 0 ? PLAIN : { shift: 0, scale: Math.round((over / under - 1) * 10_000) * 100 };
}

function meanShift(pairs: readonly Matched[]): Fit {
  const sum = pairs.reduce((total, { entry, tieIn }) => total + tieIn.station - entry.station, 0);
  return { shift: toTenth(sum / Math.max(pairs.length, 1)), scale: 0 };
}

function leastSquares(pairs: readonly Matched[]): Fit {
  const count = Math.max(pairs.length, 1);
  const x = pairs.reduce((sum, { entry }) => sum + entry.station, 0) / count;
  const y = pairs.reduce((sum, { tieIn }) => sum + tieIn.station, 0) / count;
  let over = 0;
  let under = 0;
  for (const { entry, tieIn } of pairs) {
    over += (entry.station - x) * (tieIn.station - y);
    under += (entry.station - x) ** 2;
  }
  if (under === 0) return meanShift(pairs);
  const scale = Math.round((over / under - 1) * 10_000) * 100;
  return { shift: toTenth(y - x * (1 + scale / 1_000_000)), scale };
}
