import { type Said, type Talk, wordsOf } from "../meaning/said.ts";

/** `… bad enough to feel it then thirteen and a half`: people who do not pause begin anew with such a word. */
const BEGINS_ANEW =
  /\b(then|okay|ok|alright|now|so|here|anyway|anyhow)( (and|then|about|around|at|maybe|like|right|now|here|we're|we|i'm|got|it's))*$/;

/** Where what is said with a number begins, in talk without points. */
export function beginOf(talk: Talk, mark: Said, from: number): number {
  const before = talk.said[mark.at - 1];
  // `that’s 88, twelve five`
  const tenths = mark.what === "distance" && mark.distance.from % 100 !== 0;
  if (tenths && before?.to === mark.from && /^(other|distance)$/.test(before.what))
    return mark.from;
  const lead = wordsOf(talk, Math.max(from, mark.from - 5), mark.from);
  const found = BEGINS_ANEW.exec(lead);
  return found ? mark.from - found[0].split(" ").length : from;
}

/** So many words behind a number somebody may begin anew. */
const NEXT_WORDS = 4;

/** `thirty-one and we stay in the water`: what is said next begins with such words. */
const SAYS_NEXT =
  /^(and (we|we're|i|i'm|you|it|it's|there's|then|she|that's)|so|but|then|that's|there's|okay|we're|i'm|this)$/;

/** Where what is said with a number ends, in talk without points. */
export function endOf(talk: Talk, mark: Said, to: number): number {
  const { words } = talk.speech;
  for (let at = mark.to; at < Math.min(to, mark.to + NEXT_WORDS); at += 1) {
    const [one, two] = [words[at]?.text ?? "", words[at + 1]?.text ?? ""];
    if (SAYS_NEXT.test(one) || SAYS_NEXT.test(`${one} ${two}`)) return at;
  }
  return to;
}
