import type { Cft } from "../length/station.ts";

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
const TURN = 4;
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

/**
 * Which candidates lie on the way of one camera: the heaviest row of them that goes one way and no
 * faster than a camera goes, where turning back and jumping cost more than one reading weighs. The
 * others are outliers: numbers that were no distance, or were misheard.
 */
export function fitted(candidates: readonly Candidate[]): {
  readonly kept: readonly Candidate[];
  readonly motion: 1 | -1;
} {
  const up = bestRow(candidates, 1);
  const down = bestRow(candidates, -1);
  return down.score > up.score ? { kept: down.kept, motion: -1 } : { kept: up.kept, motion: 1 };
}

interface Row {
  readonly score: number;
  readonly kept: readonly Candidate[];
}

/** Looks back so many candidates for the one before; enough for any run of outliers. */
const REACH = 60;

function bestRow(candidates: readonly Candidate[], motion: 1 | -1): Row {
  const links: { score: number; from: number }[] = [];
  for (const at of candidates.keys()) links.push(bestLink(candidates, links, { at, motion }));
  const scores = links.map(({ score }) => score);
  const best = scores.indexOf(Math.max(...scores));
  const kept: Candidate[] = [];
  for (let at = best; at >= 0; at = links[at]?.from ?? -1) {
    const one = candidates[at];
    if (one) kept.unshift(one);
  }
  return { score: scores[best] ?? 0, kept };
}

/** The best row that ends in one candidate, by the one before it. */
function bestLink(
  candidates: readonly Candidate[],
  links: readonly { readonly score: number }[],
  { at, motion }: { readonly at: number; readonly motion: 1 | -1 },
): { score: number; from: number } {
  const next = candidates[at];
  const best = { score: next?.weight ?? 0, from: -1 };
  let back = false;
  for (let old = at - 1; old >= Math.max(0, at - REACH); old -= 1) {
    const last = candidates[old];
    back = back || candidates[old + 1]?.back === true;
    if (!next || !last) continue;
    const score = (links[old]?.score ?? 0) + next.weight - cost(last, next, { motion, back });
    if (score > best.score || (score === best.score && best.from === -1))
      Object.assign(best, { score, from: old });
  }
  return best;
}

function cost(
  last: Candidate,
  next: Candidate,
  { motion, back }: { readonly motion: 1 | -1; readonly back: boolean },
): number {
  const step = stepBetween(last, next) * motion;
  const jump = isJump(last, next, Math.abs(step)) ? JUMP : 0;
  return jump + (step < 0 ? costOfTurn(-step, back) : 0);
}

function costOfTurn(step: Cft, back: boolean): number {
  if (step <= SAME) return REPEATED;
  if (back) return TURN_SAID;
  return step <= SMALL ? SMALL_STEP_BACK : TURN;
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
