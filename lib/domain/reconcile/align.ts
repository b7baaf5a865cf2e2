import type { Cft } from "../length/station.ts";
import { type Bound, boundOf, type Field, fieldsOf, type MayPair, match } from "./field.ts";
import {
  AS_WRITTEN,
  type Fit,
  fitted,
  type Move,
  PLAIN,
  type Reading,
  readingOf,
  stretchOf,
} from "./fit.ts";
import { fitsThrough, fitsToTry, isInReach, MAX_SHIFT } from "./fits-to-try.ts";
import type { RecordMark, SeenMark } from "./likeness.ts";

export interface FitScore extends Fit {
  /** Entries that find a tie-in within the tolerance. */
  readonly explained: number;
  /** Those of them that do not lie on opposite sides. */
  readonly agreeing: number;
  /** Explained pairs, less for distance and unlikeness, less the price of shift, scale and reading. */
  readonly score: number;
}

export interface AlignResult {
  readonly best: FitScore;
  /** Taking the record as it stands. */
  readonly plain: FitScore;
  /** Clearly different fits that are nearly as good or explain as much, the best first. */
  readonly rivals: readonly FitScore[];
}

/** What is laid on what, and what people said of it. */
export interface AlignGiven {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  readonly mayPair: MayPair;
  /** Fits that are not to be proposed again. */
  readonly refused: readonly Move[];
  /** True where a run looked at that station, so that what is there would have been seen. */
  readonly looked: (station: Cft) => boolean;
}

/**
 * A shift, or a change of scale, must pay for itself: it has to explain clearly more than none does,
 * and at least three entries (four for a scale); both at once clearly more again. So a few entries
 * never call for one by chance. Each odd reading has its price too.
 */
const PRICE = { one: 1.5, both: 1, perFoot: 0.025, perPercent: 0.05, odd: 1 };

const SUPPORT = { shift: 3, scale: 4, part: 0.5 };

/** So many of the best fits tried are fitted exactly. */
const POLISHED = 20;

const POLISHED_ODD = 4;

/** A fit by fewer entries is no fit. */
const FEWEST = 2;

/** A fit whose score is no farther behind the best is nearly as good. */
const NEARLY = 1.75;

/** A fit that explains as many and gains no less than this less explains as much. */
const AS_MUCH = 1;

/** So many rivals are looked at; beyond them nothing new is learned. */
const MAX_RIVALS = 40;

/** A rival must differ by more than this at either end to be worth telling. */
const DIFFERENT: Cft = 250;

/**
 * Finds the shift and the small stretch that best lay the entries on the tie-ins, with their sides
 * as drawn or all the other way round: every fit by one or two pairs is tried, judged by how many
 * entries it explains within the tolerance and then by how far they lie off, and the best is fitted
 * to all its pairs. What comes close to a refused fit is left out; the record as it stands never is.
 * Hundredths of a foot.
 */
export function align(given: AlignGiven): AlignResult {
  const plain = judgeFit(given, PLAIN);
  const drawn = searched(given, AS_WRITTEN, plain);
  const mirrored = tellsSides(given)
    ? searched(given, { ...AS_WRITTEN, mirrored: true }, drawn.best ?? plain)
    : NOTHING;
  const best = [plain, drawn.best, mirrored.best].reduce<FitScore>(
    (top, fit) => (fit && fit.score > top.score ? fit : top),
    plain,
  );
  const ends = endsOf(given.entries);
  const others = [plain, ...drawn.tried, ...mirrored.tried]
    .filter((fit) => fit !== best && isRival(fit, { best, given }))
    .filter((fit) => fit.mirrored !== best.mirrored || differ(ends, fit, best))
    .toSorted((a, b) => b.score - a.score);
  return { best, plain, rivals: others.slice(0, MAX_RIVALS) };
}

/**
 * The best fit that takes the record by another reading than it says of itself, in meters or from
 * the other end, with its sides as drawn or not; null where none explains at least three entries,
 * half of those in view, and as many as asked for.
 */
export function alignAs(
  given: AlignGiven,
  reading: Pick<Reading, "meters" | "reversed">,
  asked: number,
): FitScore | null {
  const least = Math.max(asked, SUPPORT.shift);
  const sides = tellsSides(given) ? [false, true] : [false];
  const found = sides.flatMap((mirrored) => {
    const read = { ...reading, mirrored };
    const fields = fieldsOf(given, read);
    const tried = fitsToTry(fields, read)
      .filter((fit) => boundOf(fields, fit, { least: least - 1 }) !== null)
      .map((fit) => judge(fields, fit))
      .filter(({ agreeing }) => agreeing >= least - 1)
      .sort((a, b) => b.score - a.score);
    const best = bestOf(fields, { tried: tried.slice(0, POLISHED_ODD), reading: read, given });
    return best && best.agreeing >= least ? [best] : [];
  });
  return found.reduce<FitScore | null>(
    (top, fit) => (top === null || fit.score > top.score ? fit : top),
    null,
  );
}

/** Judges one fit alone, for comparing it with another. */
export function judgeFit(given: Pick<AlignGiven, "entries" | "tieIns" | "mayPair">, fit: Fit) {
  return judge(fieldsOf(given, { ...readingOf(fit), mirrored: fit.mirrored }), fit);
}

/** True where mirroring changes anything: both record and camera tell sides. */
function tellsSides({ entries, tieIns }: AlignGiven): boolean {
  const tells = ({ side }: RecordMark | SeenMark) => side === "left" || side === "right";
  return entries.some(tells) && tieIns.some(tells);
}

interface Searched {
  readonly best: FitScore | null;
  readonly tried: readonly FitScore[];
}

const NOTHING: Searched = { best: null, tried: [] };

/** The fits under one reading that may be best or as good as `floor`, and the best that has support. */
function searched(given: AlignGiven, reading: Reading, floor: FitScore): Searched {
  const fields = fieldsOf(given, reading);
  const tried = judgeAll(fields, { reading, floor, given }).filter((fit) => isAllowed(fit, given));
  return { best: bestOf(fields, { tried: tried.slice(0, POLISHED), reading, given }), tried };
}

/** The best of the fits tried, or of what they come to when they are fitted exactly. */
function bestOf(
  fields: readonly Field[],
  {
    tried,
    reading,
    given,
  }: { readonly tried: readonly FitScore[]; readonly reading: Reading; readonly given: AlignGiven },
): FitScore | null {
  return [...tried, ...tried.map((fit) => polish(fields, fit, reading))]
    .filter((fit) => isSupported(fit, given) && isAllowed(fit, given))
    .reduce<FitScore | null>((top, fit) => (top && top.score >= fit.score ? top : fit), null);
}

function isAllowed(fit: Fit, { entries, refused }: AlignGiven): boolean {
  const ends = endsOf(entries);
  return refused.every((other) => differ(ends, fit, other));
}

/** True where two fits put either end of the record clearly apart: more than 2.5 ft. */
function differ(ends: readonly Cft[], a: Move, b: Move): boolean {
  return ends.some((end) => Math.abs(fitted(end, a) - fitted(end, b)) > DIFFERENT);
}

/** The lowest and the highest station on record. */
function endsOf(entries: readonly RecordMark[]): Cft[] {
  const stations = entries.map((entry) => entry.station);
  return [Math.min(...stations), Math.max(...stations)];
}

function judge(fields: readonly Field[], fit: Fit): FitScore {
  const matches = fields.map((field) => match(field, fit));
  const gain = matches.reduce((sum, each) => sum + each.gain, 0);
  const pairs = matches.flatMap((each) => each.pairs);
  const agreeing = pairs.filter(({ onOneSide }) => onOneSide).length;
  const { shift, scale, mirrored } = fit;
  return {
    shift,
    scale,
    mirrored,
    explained: pairs.length,
    agreeing,
    score: gain - priceOf(fit),
  };
}

/**
 * Judges the fits that can be best, nearly as good, or explain as much, the best first. What a fit
 * can gain at most is quickly told, so that most are never laid out pair by pair.
 */
function judgeAll(
  fields: readonly Field[],
  { reading, floor, given }: { reading: Reading; floor: FitScore; given: AlignGiven },
): FitScore[] {
  const ranked = boundsOf(fields, { reading, floor, given }).sort((a, b) => b.most - a.most);
  const tried: FitScore[] = [];
  let top = floor;
  for (const { fit, explained, gain, most } of ranked) {
    const asMuch = explained >= top.explained && gain >= gainOf(top) - AS_MUCH;
    if (most <= top.score - NEARLY && !asMuch) continue;
    const found = judge(fields, fit);
    if (found.score > top.score && isSupported(found, given)) top = found;
    if (found.explained >= FEWEST) tried.push(found);
  }
  return tried.sort((a, b) => b.score - a.score);
}

interface Bounded extends Bound {
  readonly fit: Fit;
  /** The most that it can score. */
  readonly most: number;
}

/**
 * What each fit can come to at most, without those that are surely no best and no rival. A fit that
 * promises more than all before it is judged at once: what it scores tells sooner which those are. Each
 * of them would be passed over later, since a fit that scores well ranks before it.
 */
function boundsOf(
  fields: readonly Field[],
  { reading, floor, given }: { reading: Reading; floor: FitScore; given: AlignGiven },
): Bounded[] {
  let known = floor.score;
  let promised = floor.score;
  return fitsToTry(fields, reading).flatMap((fit) => {
    const bound = boundOf(fields, fit, { least: FEWEST, over: known - NEARLY });
    if (bound === null) return [];
    const most = bound.gain - priceOf(fit);
    if (most > promised) {
      promised = most;
      const found = judge(fields, fit);
      if (isSupported(found, given)) known = Math.max(known, found.score);
    }
    return { ...bound, fit, most };
  });
}

/** What a fit gains before its price. */
function gainOf(fit: FitScore): number {
  return fit.score + priceOf(fit);
}

function priceOf(fit: Fit): number {
  const { shift, mirrored } = fit;
  const stretch = stretchOf(fit);
  const odd = (mirrored ? PRICE.odd : 0) + (stretch === fit.scale ? 0 : PRICE.odd);
  const turned = fit.scale < -1_000_000;
  const moved = turned ? 0 : (Math.abs(shift) / 100) * PRICE.perFoot;
  const stretched = (Math.abs(stretch) / 10_000) * PRICE.perPercent;
  const one = shift === 0 && stretch === 0 ? 0 : PRICE.one;
  return one + (shift !== 0 && stretch !== 0 ? PRICE.both : 0) + moved + stretched + odd;
}

/**
 * Enough entries, and at least half of those that a run should have seen: as they are fitted, or as
 * written give or take the farthest shift, so that none gains support by putting entries out of view.
 */
function isSupported(fit: FitScore, { entries, looked }: AlignGiven): boolean {
  if (fit.shift === 0 && fit.scale === 0 && !fit.mirrored) return true;
  const least = stretchOf(fit) === 0 ? SUPPORT.shift : SUPPORT.scale;
  if (fit.explained < least) return false;
  const near = (station: Cft) => [-MAX_SHIFT, 0, MAX_SHIFT].some((by) => looked(station + by));
  const wanted = entries.filter(
    ({ station, explained }) => !explained && (near(station) || looked(fitted(station, fit))),
  );
  return fit.explained >= wanted.length * SUPPORT.part;
}

/**
 * Nearly as good, or better but on too little support; or one that explains as much as the best
 * does, unless that is all of the record as it stands. A stretch must explain as many at least.
 */
function isRival(
  fit: FitScore,
  { best, given }: { readonly best: FitScore; readonly given: AlignGiven },
): boolean {
  const stretched = fit.scale !== 0 && best.scale === 0;
  const least = stretched ? best.explained : best.explained - 1;
  if (fit.explained < Math.max(least, 2)) return false;
  if (fit.score > best.score - NEARLY) return true;
  const all = best.explained === given.entries.length && priceOf(best) === 0;
  const asMuch = fit.explained >= best.explained && gainOf(fit) >= gainOf(best) - AS_MUCH;
  return !all && asMuch && isSupported(fit, given);
}

/** Fits a fit to all the pairs that it explains, as long as that makes it better. */
function polish(fields: readonly Field[], first: FitScore, reading: Reading): FitScore {
  let best = first;
  for (let round = 0; round < 4; round += 1) {
    const fit: Fit = best;
    const pairs = fields.flatMap((field) => match(field, fit).pairs);
    const next = fitsThrough(pairs, best, reading)
      .filter((each) => isInReach({ ...each, stretch: stretchOf(each) / 1_000_000 }, reading))
      .map((each) => judge(fields, each))
      .reduce((top, each) => (each.score > top.score ? each : top), best);
    if (next === best) return best;
    best = next;
  }
  return best;
}
