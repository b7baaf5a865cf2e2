import { deniedByAnswer } from "../meaning/answered.ts";
import { inSentence, isTurn, type Said, type Talk, talkWith, wordsOf } from "../meaning/said.ts";

/** Corrected measures stand this many words at most from the word of correction. */
const REACH = 14;

/** What is taken out of the talk, and what is put in the place of what. */
interface Changes {
  readonly struck: Set<number>;
  readonly instead: Map<number, Said>;
}

/**
 * Puts right what the speaker put right: in `thirty-four, no, thirty-five` or `left, I mean right`
 * the new stands in the place of the old; after `scratch that` or `thirty-six, not thirty-four`
 * the old is gone. What is left is what the speaker stands by.
 */
export function withoutCorrected(talk: Talk): Talk {
  const changes: Changes = { struck: deniedByAnswer(talk), instead: new Map() };
  for (const mark of talk.said) if (!changes.struck.has(mark.at)) putRight(talk, mark, changes);
  for (const mark of talk.said) if (isSettled(talk, mark)) changes.struck.add(mark.at);
  const left = talk.said.filter((mark) => !changes.struck.has(mark.at));
  const said = left.map((mark, at) => ({ ...corrected(mark, changes), at }));
  return talkWith(talk.speech, said);
}

function putRight(talk: Talk, mark: Said, changes: Changes): void {
  if (isQuotedBack(talk, mark)) replaceQuoted(talk, mark, changes);
  else if (isAlone(talk, mark)) strikeRead(talk, mark, changes.struck);
  else if (isTurn(mark, "scratch")) strikeLast(talk, mark, changes.struck);
  else if (isTurn(mark, "correction") || isNoAsCorrection(talk, mark))
    replaceLast(talk, mark, changes);
  else if (isTurn(mark, "negation")) strikeDenied(talk, mark, changes.struck);
}

/** `Did I say twenty-six?`, `scratch the thirty-five`, `I know I said left`: one’s own word once more, to put it right. */
function isQuotedBack(talk: Talk, mark: Said): boolean {
  if (!/^(distance|clock|other)$/.test(mark.what)) return false;
  return QUOTED.test(wordsOf(talk, mark.from - 6, mark.from));
}

const QUOTED =
  /\b(did i say|have i said|i know i said|i think i said|i might have said|(scratch|strike|forget|drop) (the|that)|not)( at| on| the| it was)*$/;

/** What was told as that is what is said next instead; nothing where nothing else is said. */
function replaceQuoted(talk: Talk, mark: Said, { struck, instead }: Changes): void {
  const old = talk.said
    .slice(0, mark.at)
    .findLast(
      (one) => isEqual(one, mark) && !struck.has(one.at) && mark.sentence - one.sentence <= 2,
    );
  const next = talk.said
    .slice(mark.at + 1, mark.at + 6)
    .find((one) => one.what === old?.what && one.sentence - mark.sentence <= 1);
  struck.add(mark.at);
  if (!old) return;
  const same = next !== undefined && next.from - mark.to <= 8;
  if (!same) struck.add(old.at);
  else {
    struck.add(next.at);
    instead.set(old.at, next);
  }
}

function isEqual(one: Said, other: Said): boolean {
  if (one.what === "distance" && other.what === "distance")
    return one.distance.from === other.distance.from;
  if (one.what === "distance" && other.what === "other")
    return one.distance.from === other.value * 100;
  return one.what === "clock" && other.what === "clock" && one.clock === other.clock;
}

/** `twenty-four, twenty-five, call it twenty-five`: the choice is made. */
function isSettled(talk: Talk, mark: Said): boolean {
  if (mark.what !== "distance" || !mark.distance.choice) return false;
  const { from, to } = mark.distance;
  const next = talk.said.slice(mark.at + 1).find((other) => other.what === "distance");
  return (
    next?.what === "distance" &&
    next.from - mark.to <= 4 &&
    next.distance.to === null &&
    (next.distance.from === from || next.distance.from === to)
  );
}

/** The new meaning at the old place. */
function corrected(mark: Said, { instead }: Changes): Said {
  const next = instead.get(mark.at);
  if (!next) return mark;
  const { from, to, clause, sentence, time } = mark;
  return { ...next, from, to, clause, sentence, time, until: next.until };
}

/** `At thirty-four. No. Let me think.`: a no by itself, where nobody asked. */
function isAlone(talk: Talk, mark: Said): boolean {
  if (!isTurn(mark, "negation") || wordsOf(talk, mark.from, mark.to) !== "no") return false;
  const { words } = talk.speech;
  const own = words.filter(({ sentence }) => sentence === mark.sentence);
  const before = words.findLast(({ sentence }) => sentence === mark.sentence - 1);
  return (
    own.length === 1 &&
    before !== undefined &&
    !before.asks &&
    before.breath === own[0]?.breath &&
    before.who === own[0].who
  );
}

/** The footage of the sentence before is taken back; what was seen there was seen. */
function strikeRead(talk: Talk, mark: Said, struck: Set<number>): void {
  const old = inSentence(talk, mark.sentence - 1).findLast(({ what }) => what === "distance");
  if (old) struck.add(old.at);
}

/** `no` before a measure of a kind just given: `left, no, right`; not `no roots`. */
function isNoAsCorrection(talk: Talk, mark: Said): boolean {
  if (!isTurn(mark, "negation") || wordsOf(talk, mark.from, mark.to) !== "no") return false;
  const next = talk.said.slice(mark.at + 1).find(({ what }) => what !== "turn");
  const apart = next !== undefined && next.clause !== mark.clause && next.from - mark.to <= 4;
  if (!next || next.what === "other") return false;
  if (isLookedAgain(talk, mark, next)) return true;
  if (talk.said[mark.at + 1] !== next || (next.what === "thing" && !apart)) return false;
  const close = next.from === mark.to || apart;
  return close && lastLike(talk, mark, { next, struck: new Set() }) !== null;
}

/** So many words go by while somebody looks again: `fifteen feet, no, let me look at my glove, fourteen and a half`. */
const LOOKS = 12;
/** As near as this, hundredths of a foot, the second is the first put right. */
const PUT_RIGHT = 200;

function isLookedAgain(talk: Talk, mark: Said, next: Said): boolean {
  const old = talk.said[mark.at - 1];
  if (!old || old.what !== next.what || mark.from - old.to > 1 || next.from - mark.to > LOOKS)
    return false;
  if (old.what === "distance" && next.what === "distance")
    return Math.abs(old.distance.from - next.distance.from) <= PUT_RIGHT;
  return old.what === "clock" && next.what === "clock" && old.clock !== next.clock;
}

function replaceLast(talk: Talk, mark: Said, { struck, instead }: Changes): void {
  const weak = /^(wait|hang on|hold on|actually)$/.test(wordsOf(talk, mark.from, mark.to));
  // `it’s over at, hold on, forty-two`: nothing was said yet that could be put right.
  if (weak && DANGLING.test(wordsOf(talk, mark.from - 1, mark.from))) return;
  const after = talk.said
    .slice(mark.at + 1, mark.at + 6)
    .filter((next) => next.from - mark.to <= LOOKS && next.sentence - mark.sentence <= 1)
    .filter((next) => isPrompt(mark, next) && !isLaterOn(mark, next));
  const measures = after.slice(0, replacementEnd(after)).filter(({ what }) => what !== "turn");
  for (const [index, next] of measures.entries()) {
    const old = lastLike(talk, mark, { next, struck });
    if (index > 0 && (old?.sentence !== mark.sentence || next.clause !== measures[0]?.clause))
      continue;
    if (!old || (weak && thingBetween(talk, old, next)) || areApart(talk, old, next)) continue;
    struck.add(next.at);
    instead.set(old.at, next);
  }
}

/** So many words on, in the next sentence, it is no longer what was put right: `I mean like a horse tail. Then at thirty` */
const SOON = 5;

function isLaterOn(mark: Said, next: Said): boolean {
  return (
    next.what === "distance" && next.sentence !== mark.sentence && next.from - mark.to > SOON - 2
  );
}

/** Each in a sentence that has a find of its own, `forty point two, roots. Sorry. Forty-six feet, clay`: two readings. */
function areApart(talk: Talk, old: Said, next: Said): boolean {
  if (old.what !== "distance" || next.what !== "distance" || old.sentence === next.sentence)
    return false;
  const far = Math.abs(old.distance.from - next.distance.from) > PUT_RIGHT;
  const finds = (mark: Said) =>
    inSentence(talk, mark.sentence).some(({ what }) => /^(thing|material)$/.test(what));
  return far && finds(old) && finds(next);
}

const DANGLING = /^(at|about|around|is|to|from|like|maybe|say|says|reads)$/;

/** A correction follows at once; later words are about something else. */
function isPrompt(mark: Said, next: Said): boolean {
  return mark.time === null || next.time === null || next.time - mark.time <= 4_000;
}

/** The correction goes on until a sort of mark comes again, a thing was named, or another turn is taken. */
function replacementEnd(after: readonly Said[]): number {
  const stop = after.findIndex(
    (next, index) =>
      isTurn(next, "negation", "expected", "correction") ||
      (next.what !== "turn" && after.slice(0, index).some(({ what }) => what === next.what)) ||
      after[index - 1]?.what === "thing",
  );
  return stop === -1 ? after.length : stop;
}

function thingBetween(talk: Talk, old: Said, next: Said): boolean {
  return talk.said.slice(old.at + 1, next.at).some((mark) => mark.what === "thing");
}

/** The last mark before a correction that the mark after it can replace. */
function lastLike(
  talk: Talk,
  mark: Said,
  { next, struck }: { next: Said; struck: ReadonlySet<number> },
): Said | null {
  return (
    talk.said
      .slice(0, mark.at)
      .findLast(
        (old) =>
          old.what === next.what &&
          !struck.has(old.at) &&
          mark.from - old.to <= REACH &&
          mark.sentence - old.sentence <= (old.what === "distance" ? 2 : 1) &&
          isFresh(old, mark) &&
          sameSort(old, next),
      ) ?? null
  );
}

/** What was said so long before, in milliseconds, stands: `Fifty-five now.` and, later on, `Seventy, no, seventy point one`. */
const STANDS = 15_000;

function isFresh(old: Said, mark: Said): boolean {
  return old.time === null || mark.time === null || mark.time - old.time <= STANDS;
}

function sameSort(old: Said, next: Said): boolean {
  if (old.what === "distance" && next.what === "distance")
    return old.distance.kind === next.distance.kind;
  if (old.what === "thing" && next.what === "thing") return old.thing.kind !== "main";
  return true;
}

/** Strikes the last thing said and what belongs to it; the camera was there all the same. */
function strikeLast(talk: Talk, mark: Said, struck: Set<number>): void {
  const last = talk.said
    .slice(0, mark.at)
    .findLast(
      (old) =>
        /^(thing|distance)$/.test(old.what) &&
        !struck.has(old.at) &&
        mark.sentence - old.sentence <= 1,
    );
  if (!last) return;
  const named = inSentence(talk, last.sentence).some((old) => old.what === "thing");
  if (last.what === "distance" && !named) {
    struck.add(last.at);
    return;
  }
  for (const old of inSentence(talk, last.sentence))
    if (old.at < mark.at && old.what !== "distance") struck.add(old.at);
}

/** `thirty-six not thirty-four`; `that’s not a crack` takes back the crack just named. */
function strikeDenied(talk: Talk, mark: Said, struck: Set<number>): void {
  const next = talk.said[mark.at + 1];
  if (!next || next.from - mark.to > 1) return;
  if (next.what === "clock" || next.what === "distance" || next.what === "material") {
    if (next.clause === mark.clause) struck.add(next.at);
    return;
  }
  const about =
    /^(that's|it's|that|it|this|no that's)$/.test(wordsOf(talk, mark.from - 1, mark.from)) ||
    /^(isn't|ain't|wasn't|wouldn't call|thought)/.test(wordsOf(talk, mark.from, mark.to));
  if (next.what !== "thing" || !about) return;
  const old = lastLike(talk, mark, { next, struck }) ?? lastNamed(talk, mark);
  if (
    old?.what === "thing" &&
    old.thing.kind === next.thing.kind &&
    old.thing.fault === next.thing.fault
  )
    struck.add(old.at);
}

/** The last thing named, so long as nothing was read off since: `tap on the left. Hold up. Let me look. That’s not a tap` */
function lastNamed(talk: Talk, mark: Said): Said | null {
  const named = talk.said.slice(0, mark.at).findLast((old) => old.what === "thing");
  const read = talk.said
    .slice((named?.at ?? 0) + 1, mark.at)
    .some((old) => old.what === "distance");
  return named && !read && mark.sentence - named.sentence <= LOOKED ? named : null;
}

/** So many sentences somebody looks closer at one thing. */
const LOOKED = 5;
