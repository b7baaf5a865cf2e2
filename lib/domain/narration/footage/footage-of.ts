import {
  clauseWords,
  inClause,
  inSentence,
  isTurn,
  type Of,
  type Said,
  spanAt,
  type Talk,
  wordsOf,
} from "../meaning/said.ts";
import { isLong } from "../vocabulary/endings.ts";
import { type Ground, isPlacing, placings } from "./ground.ts";

/** A reading counts for something said this long before or after it, in thousandths of a second. */
const PREVIOUS = 6_000;
const NEXT = 10_000;
/** So long the camera has hardly moved. */
const STILL = 3_000;

/** The reading that belongs to a mark, if one was spoken for it. */
export function distanceFor(ground: Ground, mark: Said): Of<"distance"> | null {
  const { talk } = ground;
  const told = toldBy(ground, mark);
  if (told) return told;
  const own = pick(ground, placings(ground, inClause(talk, mark.clause)), mark);
  if (own && !isOfNext(ground, mark, own)) return own;
  const known = knownPlace(ground, mark);
  if (known) return distanceFor(ground, known);
  const marks = placings(ground, inSentence(talk, mark.sentence));
  const next = marks[marks.indexOf(mark) + 1];
  // `roots again at, what was it, twenty-five`
  if (next !== undefined && isPlacing(ground, next) && isOnward(ground, mark)) return next;
  if (isOnward(ground, mark)) return nextBare(ground, mark);
  const sentence = pick(ground, marks, mark);
  return sentence ?? acrossSentences(ground, mark);
}

/** By its words the place is one told before, or the one that comes right behind. */
function toldBy(ground: Ground, mark: Said): Of<"distance"> | null {
  const { talk } = ground;
  if (SAME_PLACE.test(clauseWords(talk, mark.clause))) {
    const last = talk.said.findLast((old) => old.at < mark.at && isPlacing(ground, old));
    if (last && isPlacing(ground, last)) return last;
  }
  const end = talk.said[mark.at + 1];
  const ends = isTurn(mark, "closes") && TO.test(wordsOf(talk, mark.from, mark.to));
  if (ends && end && end.from - mark.to <= 2 && isPlacing(ground, end)) return end;
  return mark.what === "thing" ? ofLast(ground, mark) : null;
}

/** `so you’ve got a lip there where the two meet`, `right there where it changes`: at the joint of two pipes. */
const AT_CHANGE =
  /\bwhere (it|they|the (two|pipes?|pipe|material|clay|iron|cast|plastic|pvc|concrete|tile|liner)|one|that|we|those)( [\w']+){0,4} (chang\w+|meets?|met|joins?|joined|come together|comes together|switch\w*|hooked|tied|tie|ties|quits?|starts?|stops?|ends?|begins?|transition\w*|went to|goes to|go to|goes into|connects?|transferred|takes over)\b|\bat (the|that|this|your) (transition|changeover|change over|change|coupling|fernco|boot|adapter|rubber boot|rubber band)\b/;
/** So many sentences on, the pipe that was told last is that of which somebody still speaks. */
const CHANGE_BACK = 5;
const BRANCH_BACK = 10;

/** What is told of the change itself, or of the branch itself, lies where that was read off. */
function ofLast(ground: Ground, mark: Of<"thing">): Of<"distance"> | null {
  const { talk } = ground;
  if (inSentence(talk, mark.sentence).some((other) => isPlacing(ground, other))) return null;
  const own = sentenceText(talk, mark.sentence);
  const around = [own, ...[1, 2].map((by) => sentenceText(talk, mark.sentence + by))].join(" ");
  if (mark.thing.kind === "fault" && AT_CHANGE.test(around))
    return readOffLast(ground, mark, {
      far: CHANGE_BACK,
      meant: ({ what }) => what === "material",
    });
  const branch = (old: Said) => old.what === "thing" && old.thing.kind === "tie-in";
  return mark.thing.fault === "protruding-tie-in" && ITSELF.test(own)
    ? readOffLast(ground, mark, { far: BRANCH_BACK, meant: branch })
    : null;
}

/** The reading of the last that is meant, where nothing else was read off since. */
function readOffLast(
  ground: Ground,
  mark: Said,
  { far, meant }: { readonly far: number; readonly meant: (old: Said) => boolean },
): Of<"distance"> | null {
  const before = ground.talk.said
    .slice(0, mark.at)
    .filter((old) => mark.sentence - old.sentence <= far);
  for (const old of before.reverse()) {
    const read = meant(old) && !ground.sense.unreal.has(old.at) ? distanceFor(ground, old) : null;
    if (read) return read;
    if (isPlacing(ground, old)) return null;
  }
  return null;
}

/** `and it sticks in too far`: of what was told last. */
const ITSELF =
  /^(and |so |but |yeah |now |also |look |see )*(it|it's|that|that's|that one|this one)\b/;

function sentenceText(talk: Talk, sentence: number): string {
  return talk.speech.words
    .filter((word) => word.sentence === sentence)
    .map(({ text }) => text)
    .join(" ");
}

/** `runs back to`: the footage behind it is where that ends. */
const TO = /\b(to|till|until|through|thru)( (about|around|maybe|like))?$/;

const SAME_PLACE = /\bsame (place|spot|footage|distance|location)\b/;

/** `a tap and a crack at forty-six`, behind another reading: the reading is that of the crack. */
function isOfNext(ground: Ground, mark: Said, own: Of<"distance">): boolean {
  if (own.at < mark.at) return false;
  const marks = placings(ground, inSentence(ground.talk, mark.sentence));
  const earlier = marks.some((other) => other.what === "distance" && other.at < mark.at);
  return (
    earlier &&
    marks.some((other) => other.what === "thing" && other.at > mark.at && other.at < own.at)
  );
}

/** What was named before, itself or in its clause: `the pipe is broken around that tap`. */
function knownPlace({ talk, sense }: Ground, mark: Said): Said | null {
  if (mark.what === "turn" || (mark.what === "thing" && mark.thing.kind === "main")) return null;
  const again = inClause(talk, mark.clause).find(
    (other) => sense.again.get(other.at) != null && !sense.pointers.has(other.at),
  );
  const before = again && sense.again.get(again.at);
  return before == null || before >= mark.at ? null : (talk.said[before] ?? null);
}

/** Where the talk begins with a reading, each holds for what follows it; else for what precedes it. */
function pick(ground: Ground, marks: readonly Said[], mark: Said): Of<"distance"> | null {
  const distances = marks.filter(
    (other): other is Of<"distance"> =>
      other.what === "distance" &&
      !(other.at > mark.at && isEnd(ground.talk, mark, other)) &&
      !(ground.track.passed.has(other.at) && other.clause !== mark.clause && !isRange(other)) &&
      !isGoneBy(ground, mark, other),
  );
  const before = distances.findLast((other) => other.at < mark.at) ?? null;
  const after = distances.find((other) => other.at > mark.at) ?? null;
  if (after && isBound(ground.talk, mark, after)) return after;
  const picked = marks[0]?.what === "distance" ? (before ?? after) : (after ?? before);
  // `sixty feet, it’s holding from right at sixty back to fifty-six`
  const whole =
    isLongThing(mark) && distances.find((other) => isRange(other) && endsAt(other, picked));
  return whole || picked;
}

function isLongThing(mark: Said): boolean {
  return mark.what === "thing" && isLong(mark.thing);
}

function endsAt({ distance }: Of<"distance">, other: Of<"distance"> | null): boolean {
  return other !== null && [distance.from, distance.to].includes(other.distance.from);
}

/** Read off where the camera was, not in looking back. */
function isRead(ground: Ground, mark: Said): mark is Of<"distance"> {
  return isPlacing(ground, mark) && !ground.track.passed.has(mark.at);
}

/** `low spot, she’s holding water … and there’s my cleanout, eighty-four`: read off when the camera was there. */
function isYetToCome(ground: Ground, mark: Said, reading: Said): boolean {
  // `another connection, it’s on the left … so that one’s thirty-nine and a half`
  if (
    /\b(that's|that one|that one's|that was|this one's|that is)$/.test(
      wordsOf(ground.talk, reading.from - 2, reading.from),
    )
  )
    return false;
  if (tooFar(mark.time, reading.time, NEXT)) return true;
  if (!tooFar(mark.time, reading.time, GONE_ON)) return false;
  return placings(ground, inSentence(ground.talk, reading.sentence)).some(
    (other) => other.what === "thing" && other.at > mark.at && other.at < reading.at,
  );
}

const TOLD_ON = /^(and |so |which |but )*(it|it's|she's|which is)( |$)/;

/** So long after a reading with its find, thousandths of a second, the camera has gone on. */
const GONE_ON = 7_000;

/** `a wye, twenty-five six, it’s dry, could be the old garage … roots at the joint`: of another place. */
function isGoneBy(ground: Ground, mark: Said, reading: Said): boolean {
  if (reading.at > mark.at) return isYetToCome(ground, mark, reading);
  if (!tooFar(reading.time, mark.time, GONE_ON)) return false;
  // `it’s a saddle, and it sticks in an inch`: told on of the same
  if (TOLD_ON.test(clauseWords(ground.talk, mark.clause))) return false;
  return placings(ground, inSentence(ground.talk, reading.sentence)).some(
    (other) =>
      other.what === "thing" &&
      other.at < mark.at &&
      !tooFar(other.time, reading.time, GONE_ON) &&
      !tooFar(reading.time, other.time, GONE_ON),
  );
}

/** So many words at most stand between where something stops and the footage of that. */
const BESIDE = 3;

/** `crack along the top, runs to twenty-eight`, `fifty-eight, it’s gone`, `still in it at forty`: no place where it begins. */
function isEnd(talk: Talk, mark: Said, distance: Said): boolean {
  if (mark.what !== "thing" || distance.at < mark.at) return false;
  const [before, next] = [talk.said[distance.at - 1], talk.said[distance.at + 1]];
  if (before === undefined || before.at <= mark.at) return false;
  if (isTurn(before, "closes") && distance.from - before.to <= 1)
    if (TO.test(wordsOf(talk, before.from, before.to))) return true;
  if (!isLong(mark.thing) || distance.what !== "distance" || isRange(distance)) return false;
  const told = (one: Said, other: Said | undefined) =>
    other !== undefined &&
    other.sentence === one.sentence &&
    other.from - one.to <= BESIDE &&
    !/\b(which|who)\b/.test(wordsOf(talk, one.to, other.from));
  const behind = talk.said[distance.at + 2];
  const ofNext = behind?.what === "distance" && behind.from - (next?.to ?? 0) <= BESIDE;
  return next !== undefined && told(distance, next) && goesOn(talk, next) && !ofNext;
}

function isRange({ distance }: Of<"distance">): boolean {
  return distance.to !== null && !distance.choice;
}

/** Says that something goes on, or that it stops. */
function goesOn(talk: Talk, turn: Said): boolean {
  const still = turn.what === "turn" && /\bstill\b/.test(wordsOf(talk, turn.from, turn.to));
  return isTurn(turn, "closes") || still;
}

/** `to clay at eighteen two`, nothing between: bound whatever stands before. */
function isBound(talk: Talk, mark: Said, after: Said): boolean {
  return (
    after.clause === mark.clause &&
    /^(pipe )?(at|around|about|right at)$/.test(wordsOf(talk, mark.to, after.from))
  );
}

/** `then`, `further on`: no longer where the last reading was. */
function isOnward(ground: Ground, mark: Said): boolean {
  const clause = inClause(ground.talk, mark.clause);
  const first = spanAt(ground.talk, mark.clause).from;
  const lead = wordsOf(ground.talk, first, mark.from);
  const has = clause.some((other) => isPlacing(ground, other));
  return (
    !has &&
    /\b(then|further|farther|later|moving on|keep going|keep pushing|up ahead|a ways|next|keep on|pushing on|continuing|carrying on|going on)\b/.test(
      lead,
    )
  );
}

function acrossSentences(ground: Ground, mark: Said): Of<"distance"> | null {
  const lead = ground.habit === "reads-first" ? readFirst(ground, mark) : null;
  const bare = nextBare(ground, mark);
  if (lead) return bare && isPlainlyNearer(bare, lead, mark) ? bare : lead;
  const next = bare && movesOn(ground, mark, bare) ? null : bare;
  if (next && ground.habit === "tells-first") return next;
  return nearBy(ground, mark, next);
}

/** Of the reading in the sentence before and the next one, that to which the find belongs. */
function nearBy(ground: Ground, mark: Said, next: Of<"distance"> | null): Of<"distance"> | null {
  const previous = previousReading(ground, mark);
  if (previous?.free && !(next && isPlainlyNearer(next, previous.mark, mark))) return previous.mark;
  if (next) return next;
  const here = previous && (isHere(ground, mark) || isStill(previous.mark, mark));
  return here ? previous.mark : toldAt(ground, mark);
}

/** `We’re at eight now. Right there, see? That’s where they went to clay. Ten four.` */
function isPlainlyNearer(next: Said, previous: Said, mark: Said): boolean {
  if (next.time === null || previous.time === null || mark.time === null) return false;
  return (next.time - mark.time) * PLAINLY < mark.time - previous.time;
}

const PLAINLY = 3;

/** So many sentences back, or thousandths of a second, somebody who reads off first did so. */
const READ_BACK = 4;
const READ_TIME = 10_000;

/** The reading before, where the speaker reads off first and has not gone on since. */
function readFirst(ground: Ground, mark: Said): Of<"distance"> | null {
  const { talk } = ground;
  const before = placings(ground, talk.said).filter(
    (old) => old.at < mark.at && old.sentence < mark.sentence,
  );
  const last = before.findLast(({ what }) => what === "distance");
  if (!last || !isRead(ground, last) || last.distance.from === 0) return null;
  const bare = placings(ground, inSentence(talk, last.sentence)).every(
    ({ what }) => what === "distance",
  );
  if (!bare || mark.sentence - last.sentence > READ_BACK) return null;
  if (tooFar(last.time, mark.time, READ_TIME)) return null;
  return MOVING.test(wordsOf(talk, last.to, mark.from)) ? null : last;
}

/** So many sentences, or thousandths of a second, the camera stands for what is told without a silence. */
const TOLD = 3;
const TOLD_TIME = 12_000;

/** `Six point two. Wye. Right.`: told in one breath behind its reading. */
function toldAt(ground: Ground, mark: Said): Of<"distance"> | null {
  const { words } = ground.talk.speech;
  const breath = words[mark.from]?.breath;
  const last = ground.talk.said
    .slice(0, mark.at)
    .findLast((old): old is Of<"distance"> => isRead(ground, old));
  if (!last || words[last.from]?.breath !== breath || mark.sentence - last.sentence > TOLD)
    return null;
  const moved = MOVING.test(wordsOf(ground.talk, last.to, mark.from));
  return moved || tooFar(last.time, mark.time, TOLD_TIME) || isGoneBy(ground, mark, last)
    ? null
    : last;
}

const MOVING =
  /\b(moving|pushing|carrying|heading|going|rolling) (on|along)\b|\bkeep (going|pushing)\b/;

/** `another wye. Moving on. Fifty-five now.`: the reading is of a place further on. */
function movesOn({ talk }: Ground, mark: Said, next: Said): boolean {
  return MOVING.test(wordsOf(talk, mark.to, next.from));
}

function isStill(before: Said, mark: Said): boolean {
  return before.time !== null && mark.time !== null && mark.time - before.time <= STILL;
}

function isHere(ground: Ground, mark: Said): boolean {
  return inClause(ground.talk, mark.clause).some((other) => isTurn(other, "here"));
}

function saysFollows(ground: Ground, next: Said): boolean {
  return inSentence(ground.talk, next.sentence).some((other) => isTurn(other, "follows"));
}

/** The last reading in the sentence before; free if nothing else was placed by it. */
function previousReading(
  ground: Ground,
  mark: Said,
): { mark: Of<"distance">; free: boolean } | null {
  const sentence = inSentence(ground.talk, mark.sentence - 1);
  const last = sentence.findLast((other) => isRead(ground, other));
  if (!last || !isRead(ground, last) || tooFar(last.time, mark.time, PREVIOUS)) return null;
  const things = placings(ground, sentence).filter((other) => other.what === "thing");
  if (last.distance.from === 0) return { mark: last, free: mark.what === "material" };
  return { mark: last, free: things.length === 0 && !takenByEarlier(ground, last) };
}

/** A bare reading that the thing in the sentence before it already took. */
function takenByEarlier(ground: Ground, reading: Of<"distance">): boolean {
  const { words } = ground.talk.speech;
  const before = inSentence(ground.talk, reading.sentence - 1);
  if (
    words[before[0]?.from ?? 0]?.breath !== words[reading.from]?.breath &&
    opensTold(ground, reading)
  )
    return false;
  const thing = placings(ground, before).findLast((other) => other.what === "thing");
  const placed = before.some((other) => isPlacing(ground, other));
  return thing !== undefined && !placed && !tooFar(thing.time, reading.time, NEXT);
}

/** Something is told behind the reading in its own breath. */
function opensTold(ground: Ground, reading: Of<"distance">): boolean {
  const { words } = ground.talk.speech;
  return ground.talk.said.some(
    (other) =>
      other.at > reading.at &&
      /^(thing|material)$/.test(other.what) &&
      words[other.from]?.breath === words[reading.from]?.breath,
  );
}

/** So many sentences on, a reading can still be that of a thing. */
const AHEAD = 3;

/** The first reading in the sentences after a thing, where it stands there alone. */
function nextBare(ground: Ground, mark: Said): Of<"distance"> | null {
  const ahead = mark.time === null && ground.habit !== "tells-first" ? 1 : AHEAD;
  for (let on = 1; on <= ahead; on += 1) {
    const marks = placings(ground, inSentence(ground.talk, mark.sentence + on));
    const first = marks.find((other) => isPlacing(ground, other));
    if (!first || !isPlacing(ground, first)) continue;
    if (opensBreath(ground, mark, first) || goesOnTo(ground, mark, first)) return null;
    return isBare(ground, first, marks) && !tooFar(mark.time, first.time, NEXT) ? first : null;
  }
  return null;
}

/** So long after, thousandths of a second, `and thirty-one, cast iron` is of what comes next. */
const GOES_ON = 2_500;

function goesOnTo(ground: Ground, mark: Said, reading: Said): boolean {
  if (!tooFar(mark.time, reading.time, GOES_ON)) return false;
  const own = inSentence(ground.talk, reading.sentence);
  const lead = wordsOf(ground.talk, reading.from - 2, reading.from);
  const told = own.some((other) => other.at > reading.at && /^(thing|material)$/.test(other.what));
  return /\b(and|then)( at)?$/.test(lead) && told;
}

/** A reading after a silence, with something else told behind it in that breath, belongs to that. */
function opensBreath(ground: Ground, mark: Said, reading: Of<"distance">): boolean {
  const { words } = ground.talk.speech;
  const breath = words[reading.from]?.breath;
  if (breath === words[mark.from]?.breath || saysFollows(ground, reading)) return false;
  const next = placings(ground, ground.talk.said).find((other) => other.at > reading.at);
  return (
    next?.what === "thing" && next.thing.kind !== "main" && words[next.from]?.breath === breath
  );
}

/** Nothing else is placed by it, or the speaker says that it goes with what came before. */
function isBare(ground: Ground, first: Of<"distance">, marks: readonly Said[]): boolean {
  if (marks[0]?.at !== first.at) return false;
  const things = marks.some((other) => other.what === "thing" && other.thing.kind !== "main");
  return !things || first.distance.from === 0 || saysFollows(ground, first);
}

function tooFar(from: number | null, to: number | null, limit: number): boolean {
  return from !== null && to !== null && to - from > limit;
}
