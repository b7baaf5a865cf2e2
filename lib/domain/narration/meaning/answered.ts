import type { Word } from "../transcript/word.ts";
import { groupedBy, type Said, type Talk, wordsOf } from "./said.ts";

/** Something to be answered yes or no. */
const POLAR =
  /^(?:(?:so|and|hey|wait|okay|well|oh|whoa|now|but|or) )*(?:is|are|was|were|does|do|did|could|would|isn't|aren't|any|you|that|that's|this|it|it's|those|think|what's (?:that|this))\b/;
const YES_NO =
  "(?:no|nah|nope|naw|negative|not (?:a|really|that|it)|i don't think|don't think|it's not|that's not|that isn't|it isn't|just(?! (?:past|after|before|at|over|under|about))|only|it's just|that's just|it's only|that's only)";
const DENIED = new RegExp(
  String.raw`^(?:(?:well|oh|um|i think|ah|hm|okay) )*${YES_NO}\b(?! (?:idea|clue|problem|kidding|doubt))`,
);
/** In talk without points: `is that a crack no that’s just the joint`. */
const INVERTED =
  /\b(?:(?:is|are|was) (?:that|this|it|those|these|there)|what's (?:that|this)|(?:might|could|may) be)((?: [\w']+){1,6}?) (?:no|nah|nope|naw)\b(?! (?:idea|clue|problem|kidding|doubt))/g;
/** `is that a sag or just backed up`: the first of the two is only asked. */
const EITHER = /^or (?:is it |is that |was it )?(?:just|only)\b/;
const ASKED = /\b(?:is|was) (?:that|this|it|there|she)(?: [\w']+)?$/;
/** What explains it away: `no, that’s just mud on it`. */
const ONLY = /\b(?:just|only|nothing but|nomás)\b/;

/**
 * What was asked and denied: the things of the question, and those by which the answer explains it
 * away. Nobody saw the first, and nobody notes the second.
 */
export function deniedByAnswer(talk: Talk): Set<number> {
  const sentences = groupedBy(talk.speech.words, (word) => word.sentence);
  const denied = new Set<number>();
  for (const [sentence, words] of sentences) {
    for (const span of deniedWithin(talk, words)) strike(talk, denied, span);
    const answer = sentences.get(sentence + 1) ?? [];
    if (!DENIED.test(textOf(answer)) || !(isPolar(words) || isDoubted(words, answer))) continue;
    strike(talk, denied, (mark) => mark.sentence === sentence);
    const only = answer.findIndex(({ text }) => ONLY.test(text));
    const from =
      only === -1 ? Number.POSITIVE_INFINITY : talk.speech.words.indexOf(answer[only] as Word);
    strike(
      talk,
      denied,
      (mark) => mark.sentence === sentence + 1 && mark.from > from && !isFault(mark),
    );
  }
  strike(talk, denied, ({ from, to }) => {
    const asked = talk.speech.words[from]?.asks || ASKED.test(wordsOf(talk, from - 3, from));
    return asked && EITHER.test(wordsOf(talk, to, to + 4));
  });
  return denied;
}

/** What is asked in so few words is whether it is there: `Roots?` */
const FEW = 7;

function isPolar(words: readonly Word[]): boolean {
  return words[0]?.asks === true && (words.length <= FEW || POLAR.test(textOf(words)));
}

/** `Might be a crack. No, that’s a scrape.` */
function isDoubted(words: readonly Word[], answer: readonly Word[]): boolean {
  return (
    /\b(ask(?:s|ing|ed)|wants to know|wondering|might|could|maybe|may|looks? like|looked like|think|thought|guess)\b/.test(
      textOf(words),
    ) &&
    /^(?:no|nah|nope)\b.*\b(?:that's|it's) (?:a|an|just|only|the|some|nothing)\b/.test(
      textOf(answer),
    )
  );
}

/** `no, that’s just a hairline` is a finding all the same. */
function isFault(mark: Said): boolean {
  return mark.what === "thing" && mark.thing.kind === "fault";
}

function strike(talk: Talk, denied: Set<number>, is: (mark: Said) => boolean): void {
  for (const mark of talk.said)
    if (/^(thing|material)$/.test(mark.what) && is(mark)) denied.add(mark.at);
}

/** Question and denial in one sentence. */
function deniedWithin(talk: Talk, words: readonly Word[]): ((mark: Said) => boolean)[] {
  const text = textOf(words);
  return [...text.matchAll(INVERTED)].map((found) => {
    const first = talk.speech.words.indexOf(words[0] as Word);
    const from = first + text.slice(0, found.index).split(" ").length - 1;
    const to = from + found[0].split(" ").length;
    return (mark: Said) => mark.from >= from && mark.from < to;
  });
}

function textOf(words: readonly Word[]): string {
  return words.map(({ text }) => text).join(" ");
}
