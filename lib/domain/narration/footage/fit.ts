import type { Cft } from "../../length/station.ts";

/** A spoken number that may be where the camera is. */
export interface Candidate {
  readonly at: number;
  readonly counter: Cft;
  /** Where a spoken range ends; the camera may be anywhere within. */
  readonly to: Cft | null;
  /** Thousandths of a second. */
  readonly time: number | null;
  /** How much speaks for its being a distance. */
  readonly weight: number;
  /** Since the one before it, the speaker said that the camera went back. */
  readonly back: boolean;
}

/** Costs in the measure of the candidates' weights. A turn costs more than any one reading is worth. */
const TURN = 5;
const AGAINST = 4;
const TURN_SAID = 1;
const SMALL_STEP_BACK = 0.6;
const REPEATED = 0.1;
const JUMP = 2.5;
/** As near as this, hundredths of a foot, a reading repeats another. */
const SAME = 100;
const SMALL = 400;
/** A camera goes at most this fast: hundredths of a foot a second, with some to begin with. */
const FASTEST = 250;
const HEAD_START = 700;
/** Where nothing tells the time, a step longer than this is a jump. */
const LONGEST_STEP = 12_000;

/** Which way footage goes: 1 grows, −1 falls. */
type Sense = 1 | -1;

/**
 * Which candidates lie on the way of one camera: the heaviest row of them that goes no faster than a
 * camera goes, where turning round and jumping cost more than one reading weighs; once it has turned,
 * it goes on that way for nothing. The others are outliers: numbers that were no distance, or were
 * misheard.
 */
export function fitted(candidates: readonly Candidate[]): {
  readonly kept: readonly Candidate[];
  readonly motion: Sense;
} {
  const up = bestRow(candidates, 1);
  const down = bestRow(candidates, -1);
  return down.score > up.score ? { kept: down.kept, motion: -1 } : { kept: up.kept, motion: 1 };
}

interface Row {
  readonly score: number;
  readonly kept: readonly Candidate[];
}

/** A candidate reached with the camera going one way, and from where it was reached. */
interface Link {
  readonly score: number;
  readonly from: number;
  readonly fromSense: Sense;
}
type Links = Readonly<Record<Sense, Link>>;

/** Looks back so many candidates for the one before; enough for any run of outliers. */
const REACH = 60;

function bestRow(candidates: readonly Candidate[], motion: Sense): Row {
  const links: Links[] = [];
  for (const at of candidates.keys()) {
    const reached = (sense: Sense) => bestLink(candidates, links, { at, sense, motion });
    links.push({ 1: reached(1), [-1]: reached(-1) } as Links);
  }
  let best: { at: number; sense: Sense; score: number } = { at: -1, sense: motion, score: 0 };
  for (const [at, link] of links.entries())
    for (const sense of [motion, motion === 1 ? -1 : 1] as const)
      if (link[sense].score > best.score) best = { at, sense, score: link[sense].score };
  const kept: Candidate[] = [];
  let { at, sense } = best;
  while (at >= 0) {
    const one = candidates[at];
    const link = links[at]?.[sense];
    if (one) kept.unshift(one);
    at = link?.from ?? -1;
    sense = link?.fromSense ?? sense;
  }
  return { score: best.score, kept };
}

/** The best row that ends in one candidate with the camera going one way. */
function bestLink(
  candidates: readonly Candidate[],
  links: readonly Links[],
  { at, sense, motion }: { readonly at: number; readonly sense: Sense; readonly motion: Sense },
): Link {
  const next = candidates[at];
  const begins = sense === motion ? (next?.weight ?? 0) : Number.NEGATIVE_INFINITY;
  let best: Link = { score: begins, from: -1, fromSense: sense };
  let back = false;
  for (let old = at - 1; old >= Math.max(0, at - REACH); old -= 1) {
    const last = candidates[old];
    back = back || candidates[old + 1]?.back === true;
    if (!next || !last) continue;
    for (const fromSense of [1, -1] as const) {
      const link = links[old]?.[fromSense];
      const way = cost(last, next, { fromSense, sense, back });
      const score = (link?.score ?? Number.NEGATIVE_INFINITY) + next.weight - way;
      if (score > best.score || (score === best.score && best.from === -1))
        best = { score, from: old, fromSense };
    }
  }
  return best;
}

function cost(
  last: Candidate,
  next: Candidate,
  {
    fromSense,
    sense,
    back,
  }: { readonly fromSense: Sense; readonly sense: Sense; readonly back: boolean },
): number {
  const step = stepBetween(last, next) * sense;
  const jump = isJump(last, next, Math.abs(step)) ? JUMP : 0;
  const turn = back ? TURN_SAID : TURN;
  return jump + (fromSense === sense ? 0 : turn) + costOfStepBack(step, back);
}

/** Against the way the camera goes only a little; more than that is a turn, or no reading. */
function costOfStepBack(step: Cft, back: boolean): number {
  if (step >= 0) return 0;
  if (-step <= SAME) return REPEATED;
  if (back) return TURN_SAID;
  return -step <= SMALL ? SMALL_STEP_BACK : AGAINST;
}

/** From the nearest end of the one to the nearest of the other; none within a range. */
function stepBetween(last: Candidate, next: Candidate): Cft {
  const from = [last.counter, last.to ?? last.counter];
  const low = Math.min(...from);
  const high = Math.max(...from);
  if (next.counter < low) return next.counter - low;
  return next.counter > high ? next.counter - high : 0;
}

function isJump(last: Candidate, next: Candidate, step: Cft): boolean {
  if (last.time === null || next.time === null) return step > LONGEST_STEP;
  const seconds = Math.max(1, (next.time - last.time) / 1000);
  return step > HEAD_START + FASTEST * seconds;
}
