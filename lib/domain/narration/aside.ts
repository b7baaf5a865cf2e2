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
/** `this kind of pipe gets holes in it`, `roots will do that`, `in one of these`: of the kind, not of this one. */
const KIND =
  /^(that's|this is|it's) what (roots|trees|clay|cast|people|they) (do|does)|\b((this|that) (kind|type|sort|brand|stuff) of|these old|those old|this old|that old) [\w']+( [\w']+)? (gets?|pulls?|cracks?|breaks?|rots?|rusts?|does|do|goes|go|will|fails?)\b|\b(in|on|of|with) one of (these|those)\b|\b(they|roots|trees|it'll|they'll|people) (do|does) that\b/;
/** What others or the speaker did at another time, with the time told. */
const DONE_BEFORE =
  /\b(we|i|they|he|she|guys?|plumbers?|crew|company|city|owners?|somebody|landlord|seller)( \w+)? (cut|cleared|cleaned|snaked|rodded|jetted|pulled|punched|replaced|fixed|patched|lined|dug|repaired|broke|hit|had|did)\b/;
const BEFORE =
  /\b(last (week|month|year|spring|summer|fall|winter|time|job|guy)|(a|two|three|few|couple) (years?|months?|weeks?) (ago|back)|yesterday|years ago|in (january|february|march|april|may|june|july|august|september|october|november|december)|back in|the last (guy|crew|company|one)|another job|next door)\b/;
/** `lady in forty-two had hers lined`. */
const THEIRS = /\b(had|got|needs|needed|have|has|replaced|lined|did) (his|hers|theirs)\b/;
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
  if (DEALS.test(text) || THEIRS.test(text)) return true;
  if (DONE_BEFORE.test(text) && BEFORE.test(text) && !POINTING.test(text)) return true;
  const clauses = new Set(part.map(({ clause }) => clause));
  const marks = [...clauses].flatMap((clause) => inClause(talk, clause));
  if (MADE.test(text) && marks.some((mark) => mark.what === "other" && mark.why === "a year"))
    return true;
  if (marks.some((mark) => mark.what === "distance" && mark.distance.kind === "at")) return false;
  if (isQuestion(part, text)) return true;
  return HABIT.test(text) || KIND.test(text) || (GENERAL.test(text) && !POINTING.test(text));
}

/** `Did you see any roots?`: whoever points at something does not ask whether it is there. */
function isQuestion(part: readonly Word[], text: string): boolean {
  return (
    part[0]?.asks === true &&
    /^(and |so |but )?(did|do|does|have|has|is there|are there|any|was there|what|why|could|would) /.test(
      text,
    )
  );
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
