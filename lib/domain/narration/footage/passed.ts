import type { Cft } from "../../length/station.ts";
import { clauseWords, type Said, type Talk } from "../meaning/said.ts";
import { type Candidate, fitted } from "./fit.ts";

/** `oh, I skipped it, there was some grease back around eighty`, `forgot to say, we had a crack at thirty-one`. */
const LOOKS_BACK =
  /\b(skipped|forgot|missed|should've|should have|didn't (say|call|mention|tell)|did not (say|call|mention)|meant to|never (said|called|mentioned)|back (there|around|at|by|near|a ways)|earlier|before that|going back|by the way|went (right )?(by|past))\b/;
/** What is told as past, which people also do of what they see. */
const PAST = /\b(was|were|had|passed)\b/;

/** So far behind, hundredths of a foot, no unsteady speed tells. */
const PLAINLY = 150;

/** What is told as past of another time: a place further on than the camera comes to next. */
const THAT_WAS = /\b(that|it|this|one) (was|were|had been)\b/;

export interface Passed {
  /** Told in looking back, and lying behind the camera as it goes on. */
  readonly passed: ReadonlySet<number>;
  /** Told as past, and lying where the camera has not come yet: of another time and pipe. */
  readonly elsewhere: ReadonlySet<number>;
}

/** Which distances are told in looking back. */
export function passedIn(talk: Talk, candidates: readonly Candidate[]): Passed {
  const passed = new Set(candidates.filter(isSummary).map(({ at }) => at));
  const elsewhere = new Set<number>();
  const told = ({ at }: Candidate) => toldWith(talk, talk.said[at]);
  const { kept } = fitted(candidates.filter((one) => !LOOKS_BACK.test(told(one))));
  const plain = fitted(candidates.filter((one) => !THAT_WAS.test(told(one))));
  for (const one of candidates) {
    const then = plain.kept.find(({ at }) => at > one.at);
    if (then && THAT_WAS.test(told(one)) && (one.counter - then.counter) * plain.motion > PLAINLY)
      elsewhere.add(one.at);
    const clause = talk.said[one.at]?.clause ?? -1;
    const before = kept.findLast(({ at }) => at < one.at && !passed.has(at));
    const next = kept.find(({ at }) => at > one.at && talk.said[at]?.clause !== clause);
    if (!before || !next) continue;
    const words = told(one);
    const way = Math.sign(next.counter - before.counter);
    const part = partBetween(before.time, one.time, next.time) ?? 0;
    const here = before.counter + part * (next.counter - before.counter);
    const behind = (place: Cft) => (one.counter - place) * way < -PLAINLY;
    if (LOOKS_BACK.test(words) ? behind(here) : PAST.test(words) && behind(before.counter))
      passed.add(one.at);
  }
  return { passed, elsewhere };
}

/** As near as this, hundredths of a foot, a range ends where the camera is. */
const HERE = 100;

/** `out of it at eighteen three, so belly fourteen to eighteen three`: a range told where it ends. */
function isSummary({ counter, to }: Candidate, index: number, all: readonly Candidate[]): boolean {
  const last = all[index - 1];
  const before = all.slice(0, index).findLast((old) => old.counter !== last?.counter);
  if (!last || !before || to === null || last.to !== null) return false;
  const way = Math.sign(last.counter - before.counter);
  const [near, far] = [counter, to].sort(
    (a, b) => Math.abs(a - last.counter) - Math.abs(b - last.counter),
  );
  if (near === undefined || far === undefined) return false;
  return Math.abs(near - last.counter) <= HERE && (far - last.counter) * way < 0;
}

/** A sentence longer than this is talk without points. */
const SENTENCE = 18;

/** What is told with a distance in its sentence, or in its clause where nobody says where one ends. */
function toldWith(talk: Talk, mark: Said | undefined): string {
  if (mark === undefined) return "";
  const own = talk.speech.words.filter(({ sentence }) => sentence === mark.sentence);
  return own.length > SENTENCE
    ? clauseWords(talk, mark.clause)
    : own.map(({ text }) => text).join(" ");
}

/** How much of the time between the two has gone by; null where there are no times. */
export function partBetween(
  before: number | null,
  time: number | null,
  after: number | null,
): number | null {
  if (before === null || time === null || after === null || after <= before) return null;
  return Math.min(1, Math.max(0, (time - before) / (after - before)));
}
