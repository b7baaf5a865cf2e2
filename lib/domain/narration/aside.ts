import { groupedBy, inClause, type Talk } from "./said.ts";
import type { Word } from "./word.ts";

/** What is so in general, was once, or ought to be: nobody sees it now. */
const GENERAL =
  /\b(times out of|scale of|always|usually|sometimes|whenever|typically|generally|most (of )?(the |these )?(laterals|houses|people|lines|pipes|roots)|remember|every (second|third|other|house|single)|look for|looks for|looking for|(is|are) good for|what they do|what happens|that's why|you never|never want|you want to|would've been|would have been|would expect|you'd expect|(a|an) \w+( \w+)? is (where|when|how|a)|you'll find|if (a|an|you|it|they|there|the|your|that|this)|(was|were) used|paid|that's where (they|he|she|we|you|somebody|someone) (cut|had|did|fixed|dug|jetted|got|put|used)|that's where (the|all the) \w+ (is|are|runs?|goes?|get)|will kill|the way the|the right way|as a rule|in general|can cause|causes|means that|tends? to)\b/;
/** What was paid for, and what is to be done. */
const DEALS = /\b(recommend|recommends|recommending|quote|quoted|bid|bids|estimate|est\.)\b/;
/** `Roots come in at the joints`, `when you've got a hole`: what is so whenever it happens. */
const HABIT =
  /^(so |and |but )?when (you|you've|a|it|they|there's|the) |^(so |well |and |but )?(roots|cracks|bellies|people|trees|joints|taps|grease) (come|go|get|grow|like|love|want|happen|form|do|build)\b/;
/** Words by which somebody points at what is there. */
const POINTING =
  /\b(there's|there is|here's|here is|right here|right there|you got|you've got|i've got|we've got|we got|i got|see that|see this|see it|look at|i see|you can see)\b/;
/** `he laid it in nineteen and forty-eight, in joints of clay`: how it came to be. */
const MADE = /\b(laid|built|dug|developer|contractor|installed)\b/;
/** From here on what was told is told once more. */
const RECAP =
  /\b(to sum (it )?up|sum it up|in summary|summary|summing up|recap|to recap|all told|that makes|altogether|so overall|in closing|to wrap (it )?up|wrapping up)\b/;

/** Clauses of sentences that make no rows: what is so in general, and what sums up. */
export function asideClauses(talk: Talk): Set<number> {
  const aside = new Set<number>();
  let recap = false;
  for (const part of partsOf(talk.speech.words)) {
    const text = part.map((word) => word.text).join(" ");
    recap = recap || (RECAP.test(text) && isLate(talk, part[0]?.sentence ?? 0));
    if (recap || isAside(talk, part, text)) for (const { clause } of part) aside.add(clause);
  }
  return aside;
}

/** `that’s two taps so far`: counted, not seen once more. */
const COUNTED =
  /\b(that's|makes|that makes|got|have|is) (one|two|three|four|five|six|seven|eight|\d) [\w']+( [\w']+)? (so far|total|in all|in total|now|altogether)\b/;

function isAside(talk: Talk, part: readonly Word[], text: string): boolean {
  if (COUNTED.test(text)) return true;
  if (DEALS.test(text)) return true;
  const clauses = new Set(part.map(({ clause }) => clause));
  const marks = [...clauses].flatMap((clause) => inClause(talk, clause));
  if (MADE.test(text) && marks.some((mark) => mark.what === "other" && mark.why === "a year"))
    return true;
  if (marks.some((mark) => mark.what === "distance" && mark.distance.kind === "at")) return false;
  return HABIT.test(text) || (GENERAL.test(text) && !POINTING.test(text));
}

/** Nobody says so many words in a sentence; it is talk without points. */
const LONG = 30;

/** The sentences; those that are too long clause by clause. */
function partsOf(words: readonly Word[]): Word[][] {
  return [...groupedBy(words, ({ sentence }) => sentence).values()].flatMap((sentence) =>
    sentence.length > LONG ? [...groupedBy(sentence, ({ clause }) => clause).values()] : [sentence],
  );
}

/** Only what comes after most of the talk can sum it up. */
function isLate(talk: Talk, sentence: number): boolean {
  const things = talk.said.filter((mark) => mark.what === "thing");
  return things.filter((mark) => mark.sentence < sentence).length * 2 >= things.length;
}
