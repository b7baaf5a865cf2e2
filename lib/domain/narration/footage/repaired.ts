import {
  inSentence,
  isTurn,
  type Of,
  type Said,
  type Talk,
  talkWith,
  wordsOf,
} from "../meaning/said.ts";

/** So many words, and thousandths of a second, a footage is put right after it was said. */
const WORDS = 12;
const TIME = 8_000;
/** As near as this, hundredths of a foot, the second is the first looked at again. */
const LOOKED = 300;

/** The talk with every footage that was put right as the speaker stands by it. */
export function withRepaired(talk: Talk): Talk {
  const repaired = repairedFootages(talk);
  const gone = new Set<number>();
  for (const [old, next] of repaired)
    for (let at = old + 1; at <= next.at || isAfterthought(talk, next, at); at += 1) gone.add(at);
  const said = talk.said.flatMap((mark): Said[] => {
    if (gone.has(mark.at)) return [];
    const next = repaired.get(mark.at);
    if (next === undefined || mark.what !== "distance") return [mark];
    return [{ ...mark, distance: next.distance, to: next.to, until: next.until }];
  });
  return talkWith(
    talk.speech,
    said.map((mark, at) => ({ ...mark, at })),
  );
}

/**
 * Footages that the speaker put right at once, each with the one that stands instead: two in a row
 * with nothing between them but talk of the mistake (`oops`, `that’s wrong, it’s`, `I read that
 * wrong`), or with that behind the second: `twenty-six four, I mean`.
 */
function repairedFootages(talk: Talk): ReadonlyMap<number, Of<"distance">> {
  const repaired = new Map<number, Of<"distance">>();
  for (const mark of [...talk.said].reverse()) {
    if (mark.what !== "distance" || mark.distance.kind !== "at") continue;
    if (isDenied(talk, mark)) continue;
    const old = talk.said
      .slice(0, mark.at)
      .findLast((one) => one.what !== "turn" && !isDenied(talk, one) && !isStutter(talk, one));
    if (old?.what !== "distance" || old.distance.kind !== "at" || old.distance.from === 0) continue;
    if (isRepair(talk, old, mark)) repaired.set(old.at, repaired.get(mark.at) ?? mark);
  }
  return repaired;
}

function isRepair(talk: Talk, old: Of<"distance">, mark: Of<"distance">): boolean {
  if (mark.from - old.to > WORDS || isLate(old, mark)) return false;
  const said = talk.said.slice(old.at + 1, mark.at);
  const denied = said.find((one) => isDenied(talk, one));
  if (denied?.what === "distance" && denied.distance.from !== old.distance.from) return false;
  const between = talk.speech.words
    .slice(old.to, mark.from)
    .filter(
      (_, at) =>
        !said.some((one) => one.what !== "turn" && one.from <= old.to + at && old.to + at < one.to),
    )
    .map(({ text }) => text)
    .join(" ");
  const near = Math.abs(mark.distance.from - old.distance.from) <= LOOKED;
  if (denied) return true;
  if (isAtOnce(talk, old, { mark, between }) || isTakenBack(talk, old, { mark, between }))
    return true;
  if (!ONLY.test(between) || mark.distance.from === old.distance.from) return false;
  if (MISTAKEN.test(between) || (near && LOOKING.test(between))) return true;
  return near && MEANT.test(wordsOf(talk, mark.to, mark.to + 3)) && isLast(talk, mark);
}

/** `Thirty-eight … eight … no, thirty-eight four`: its last digit once more. */
function isStutter(talk: Talk, mark: Said): boolean {
  const before = talk.said[mark.at - 1];
  if (before?.what !== "distance" || before.to !== mark.from) return false;
  const value = numberOf(mark);
  return value !== null && value < 10 && value === (before.distance.from / 100) % 10;
}

function numberOf(mark: Said): number | null {
  if (mark.what === "other") return mark.value;
  return mark.what === "distance" ? mark.distance.from / 100 : null;
}

/** The `I mean` behind a footage that was put right. */
function isAfterthought(talk: Talk, next: Said, at: number): boolean {
  const turn = talk.said[at];
  return isTurn(turn, "correction") && turn?.sentence === next.sentence && turn.from === next.to;
}

/** `not fifty`, `did I say twenty-six`: a number once more, to take it back. */
function isDenied(talk: Talk, mark: Said): boolean {
  const lead = wordsOf(talk, mark.from - 4, mark.from);
  return mark.what === "distance" && /\b(not|did i say|i said)( at| it was)?$/.test(lead);
}

/** As far, hundredths of a foot, somebody puts a footage right who does not say so. */
const AT_ONCE = 500;
/** So far a camera goes while one word is said, and to begin with. */
const A_WORD = 24;
const HEAD_START = 50;
const FEW = 8;

/**
 * `Tap at twenty-four, what am I saying, twenty-six four.`: with nothing found at the second, and sooner
 * than any camera would have gone there.
 */
function isAtOnce(
  talk: Talk,
  old: Of<"distance">,
  { mark, between }: { readonly mark: Of<"distance">; readonly between: string },
): boolean {
  const words = between.split(" ").length;
  const apart = Math.abs(mark.distance.from - old.distance.from);
  if (old.sentence !== mark.sentence || !isLast(talk, mark)) return false;
  if (words < 2 || words > FEW || apart > AT_ONCE || GOING.test(between)) return false;
  const told = inSentence(talk, old.sentence).some(
    (other) => other.at < old.at && other.what === "thing",
  );
  return told && apart > words * A_WORD + HEAD_START;
}

/** How somebody begins who takes back what was just said, whatever the reason told. */
const TAKES_BACK =
  /^(no,? )?(no|nope|sorry|i'm sorry|oops|whoops|wait|scratch that|strike that|correction|i mean|my (bad|mistake)|excuse me|pardon|hang on|hold on)\b/;
/** And how the right one is given. */
const GIVES_RIGHT = /\b(it's|it is|that's|make (it|that)|should be|call it|is|i mean|say)$/;
/** Words of what is found farther on. */
const FARTHER = /\b(then|now|next|keep|going|moving|further|farther|past|up to)\b/;

/** `thirty-nine, no sorry, I had my thumb on it, it’s 29`: nothing found between, and given as the right one. */
function isTakenBack(
  talk: Talk,
  old: Of<"distance">,
  { mark, between }: { readonly mark: Of<"distance">; readonly between: string },
): boolean {
  const found = talk.said
    .slice(old.at + 1, mark.at)
    .some(({ what }) => /^(thing|material|distance)$/.test(what));
  const both = [old, mark].every(({ sentence }) =>
    inSentence(talk, sentence).some(({ what }) => /^(thing|material)$/.test(what)),
  );
  const backward = mark.distance.from < old.distance.from;
  if (found || FARTHER.test(between) || !TAKES_BACK.test(between)) return false;
  if (both && old.sentence !== mark.sentence) return false;
  return GIVES_RIGHT.test(between) || (backward && isLast(talk, mark));
}

/** Words of somebody who goes on. */
const GOING =
  /\b(and|then|now|okay|going|go|keep|keeps|moving|on to|next|still|coming|pulling|pushing|up to|past|to|till|until|through|from|or|about|passing|and at|now at)\b/;

function isLate(old: Said, mark: Said): boolean {
  return old.time !== null && mark.time !== null && mark.time - old.time > TIME;
}

/** Nothing is told with it in its sentence. */
function isLast(talk: Talk, mark: Said): boolean {
  return inSentence(talk, mark.sentence).every(
    (other) => other.at <= mark.at || other.what === "turn",
  );
}

/** Words that say that what was said is wrong. */
const MISTAKE =
  "no|nope|nah|oops|whoops|ope|shoot|dang|darn|crap|sorry|pardon|excuse|scratch|strike|correction|correct|actually|rather|mean|meant|lied|misread|misspoke|wrong|backwards|back|bad|forget|fix|swap|should";
/** Words of somebody who looks again. */
const LOOKS = "wait|well|not|let|lemme|hold|hang|see|closer|or|what|check|read|said|take|glare";
const SMALL =
  "oh|uh|um|well|and|so|okay|it|it's|that|that's|this|is|was|i|i'm|me|my|the|a|to|on|again|here|guys|man|call|make|say|at|about|more|like|right|yeah|yep|now|one|look|looks|looking|just|be|should|would|got|get|have|number|reading|counter|screen|eyes|glasses|did|you|your|second|sec|moment|minute|beg|up|right";
const ONLY = new RegExp(`^(?:(?:${MISTAKE}|${LOOKS}|${SMALL})(?: |$))*$`);
const MISTAKEN = new RegExp(String.raw`\b(?:${MISTAKE})\b`);
const LOOKING = new RegExp(String.raw`\b(?:${LOOKS})\b`);
const MEANT = /^(?:i mean|i meant|rather|sorry|actually|that is|it is)\b/;
