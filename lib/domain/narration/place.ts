import type { Cft } from "../length/station.ts";
import { formatFeet } from "../length/station.ts";
import { type Axis, counterOf } from "./axis.ts";
import type { DraftReading } from "./draft.ts";
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
} from "./said.ts";
import type { Sense } from "./sense.ts";
import { middleOf, motionAt, type Track, trackOf, workedOutAt } from "./track.ts";

/** Where something is, by what was said. */
export interface Place {
  readonly counter: Cft | null;
  readonly toCounter: Cft | null;
  /** Feet from the main where only these were said and the footage at the main is not known. */
  readonly fromMain: Cft | null;
  readonly reading: DraftReading;
  readonly slack: Cft;
  readonly note: string;
  /** Clause in which the distance was spoken; null where it was worked out. */
  readonly clause: number | null;
}

/** What is needed to place things: the talk, what it means, and where the camera was. */
export interface Ground {
  readonly talk: Talk;
  readonly sense: Sense;
  readonly axis: Axis;
  readonly track: Track;
}

export function groundOf(talk: Talk, sense: Sense, axis: Axis): Ground {
  return { talk, sense, axis, track: trackOf(talk, sense, axis) };
}

/** A reading counts for something said this long before or after it, in thousandths of a second. */
const PREVIOUS = 6_000;
const NEXT = 12_000;
/** So long the camera has hardly moved. */
const STILL = 3_000;

/** The places of one thing: as a rule one; several for `wyes at twenty, thirty and forty`. */
export function placesOf(ground: Ground, mark: Said): Place[] {
  const listed = listedPlaces(ground, mark);
  if (listed.length > 1) return listed;
  const own = isFirstFeet(ground.talk, mark) ? null : distanceFor(ground, mark);
  const place = own ? placeAt(ground, own) : workedOut(ground, mark);
  return [withExtent(ground, mark, place)];
}

/** The reading that belongs to a mark, if one was spoken for it. */
export function distanceFor(ground: Ground, mark: Said): Of<"distance"> | null {
  const { talk } = ground;
  const own = pick(ground, placings(ground, inClause(talk, mark.clause)), mark);
  if (own && !isOfNext(ground, mark, own)) return own;
  const known = knownPlace(ground, mark);
  if (known) return distanceFor(ground, known);
  if (isOnward(ground, mark)) return nextBare(ground, mark);
  const sentence = pick(ground, placings(ground, inSentence(talk, mark.sentence)), mark);
  return sentence ?? acrossSentences(ground, mark);
}

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

function listedPlaces(ground: Ground, mark: Said): Place[] {
  const clause = inSentence(ground.talk, mark.sentence);
  const things = clause.filter((other) => other.what === "thing");
  const many = mark.what === "thing" && mark.thing.many;
  if (!many || things.length > 1) return [];
  return clause.filter((other) => isPlacing(ground, other)).map((other) => placeAt(ground, other));
}

function isPlacing(ground: Ground, mark: Said): mark is Of<"distance"> {
  return (
    mark.what === "distance" &&
    mark.distance.kind === "at" &&
    !ground.sense.unreal.has(mark.at) &&
    !ground.track.outliers.has(mark.at)
  );
}

/** Things and readings of a stretch of talk, in order. */
function placings(ground: Ground, marks: readonly Said[]): Said[] {
  return marks.filter(
    (mark) =>
      isPlacing(ground, mark) ||
      (mark.what === "thing" &&
        !ground.sense.unreal.has(mark.at) &&
        !ground.sense.pointers.has(mark.at)),
  );
}

/** What was named before, itself or in its clause: `the pipe is broken around that tap`. */
function knownPlace({ talk, sense }: Ground, mark: Said): Said | null {
  if (mark.what === "turn") return null;
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
      other.what === "distance" && !(other.at > mark.at && isEnd(ground.talk, mark, other)),
  );
  const before = distances.findLast((other) => other.at < mark.at) ?? null;
  const after = distances.find((other) => other.at > mark.at) ?? null;
  if (after && isBound(ground.talk, mark, after)) return after;
  return marks[0]?.what === "distance" ? (before ?? after) : (after ?? before);
}

/** `crack along the top, runs to twenty-eight`: where it stops, not where it is. */
function isEnd(talk: Talk, mark: Said, distance: Said): boolean {
  const before = talk.said[distance.at - 1];
  return (
    mark.what === "thing" &&
    before !== undefined &&
    before.at > mark.at &&
    isTurn(before, "closes") &&
    /\b(to|till|until|through)$/.test(wordsOf(talk, before.from, before.to)) &&
    distance.from - before.to <= 1
  );
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
  const previous = previousReading(ground, mark);
  const bare = nextBare(ground, mark);
  const next = bare && movesOn(ground, mark, bare) ? null : bare;
  if (next && saysFollows(ground, next) && !(previous?.free && nearer(previous.mark, mark, next)))
    return next;
  if (previous?.free) return next && nearer(next, mark, previous.mark) ? next : previous.mark;
  if (previous && (isHere(ground, mark) || isStill(previous.mark, mark)) && !next)
    return previous.mark;
  return next ?? (previous && isHere(ground, mark) ? previous.mark : toldAt(ground, mark));
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
    .findLast((old): old is Of<"distance"> => isPlacing(ground, old));
  if (!last || words[last.from]?.breath !== breath || mark.sentence - last.sentence > TOLD)
    return null;
  const moved = MOVING.test(wordsOf(ground.talk, last.to, mark.from));
  return moved || tooFar(last.time, mark.time, TOLD_TIME) ? null : last;
}

const MOVING =
  /\b(moving|pushing|carrying|heading|going|rolling) (on|along)\b|\bkeep (going|pushing)\b/;

/** `another wye. Moving on. Fifty-five now.`: the reading is of a place further on. */
function movesOn({ talk }: Ground, mark: Said, next: Said): boolean {
  return MOVING.test(wordsOf(talk, mark.to, next.from));
}

function nearer(one: Said, mark: Said, other: Said): boolean {
  if (one.time === null || mark.time === null || other.time === null) return false;
  return Math.abs(one.time - mark.time) * 2 < Math.abs(other.time - mark.time);
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
  const last = sentence.findLast((other) => isPlacing(ground, other));
  if (!last || !isPlacing(ground, last) || tooFar(last.time, mark.time, PREVIOUS)) return null;
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
  const ahead = mark.time === null ? 1 : AHEAD;
  for (let on = 1; on <= ahead; on += 1) {
    const marks = placings(ground, inSentence(ground.talk, mark.sentence + on));
    const first = marks.find((other) => isPlacing(ground, other));
    if (!first || !isPlacing(ground, first)) continue;
    if (opensBreath(ground, mark, first)) return null;
    return isBare(ground, first, marks) && !tooFar(mark.time, first.time, NEXT) ? first : null;
  }
  return null;
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

/** The place that a spoken distance tells. */
export function placeAt(ground: Ground, mark: Of<"distance">): Place {
  const { distance } = mark;
  const { axis } = ground;
  const whole = { reading: "read" as const, fromMain: null, note: "", clause: mark.clause };
  if (counterOf(distance.from, distance.base, axis) === null) return fromMainOnly(mark, axis);
  if (distance.choice && distance.to !== null) {
    const counter = counterOf(middleOf(distance), distance.base, axis);
    const slack = Math.max(distance.slack, Math.abs(distance.to - distance.from) / 2);
    return { ...whole, counter, toCounter: null, slack };
  }
  const from = counterOf(distance.from, distance.base, axis);
  const to = distance.to === null ? null : counterOf(distance.to, distance.base, axis);
  return { ...whole, ...inOrder(from, to), slack: distance.slack };
}

function fromMainOnly(mark: Of<"distance">, axis: Axis): Place {
  const { from, to, slack } = mark.distance;
  const said = to === null ? formatFeet(from) : `${formatFeet(from)} to ${formatFeet(to)}`;
  const unknown = axis.mainCounter === null;
  const why = unknown
    ? "the footage at the main is not known"
    : "that does not fit the footage at the main";
  const note = `${said} from the main; ${why}`;
  const fromMain = unknown ? from : null;
  const { clause } = mark;
  return { counter: null, toCounter: null, fromMain, reading: "read", slack, note, clause };
}

export function inOrder(
  from: Cft | null,
  to: Cft | null,
): { counter: Cft | null; toCounter: Cft | null } {
  if (from === null || to === null || from === to) return { counter: from, toCounter: null };
  return { counter: Math.min(from, to), toCounter: Math.max(from, to) };
}

function workedOut(ground: Ground, mark: Said): Place {
  const nowhere = { toCounter: null, fromMain: null, reading: "between" as const, clause: null };
  const relative = relativeTo(ground, mark);
  if (relative) return relative;
  if (isStart(ground, mark))
    return { ...nowhere, counter: 0, slack: 100, note: "Said at the start" };
  const found = workedOutAt(ground.track, mark);
  if (found) return { ...nowhere, ...found, note: "" };
  const last = ground.track.points.findLast((point) => point.at < mark.at);
  const note = last
    ? `Said after ${formatFeet(last.leaves)}; how far beyond is not known`
    : "No distance was spoken for it";
  return { ...nowhere, counter: null, slack: 0, note };
}

/** The pipe’s material, told while the camera goes in. */
function isStart({ talk, track }: Ground, mark: Said): boolean {
  const first = talk.speech.words[0]?.time ?? null;
  const soon = mark.time === null || first === null || mark.time - first <= START;
  if (mark.what === "material" && (isFirstFeet(talk, mark) || isThroughout(talk, mark)))
    return true;
  const words = wordsOf(talk, 0, mark.to);
  const atZero = track.points.every(({ at, counter }) => at > mark.at || counter === 0);
  const changes = inClause(talk, mark.clause).some((other) => isTurn(other, "change"));
  return mark.what === "material" && soon && atZero && !changes && ENTRY.test(words);
}

/** `First couple feet are ductile`. */
function isFirstFeet(talk: Talk, mark: Said): boolean {
  const first = inClause(talk, mark.clause).find((other) => other.what === "material");
  if (first?.at !== mark.at) return false;
  return inClause(talk, mark.clause).some(
    (other) =>
      other.at < mark.at &&
      other.what === "distance" &&
      other.distance.kind === "extent" &&
      /\bfirst$/.test(wordsOf(talk, other.from - 1, other.from)),
  );
}

/** `six inch clay all the way`: told of the whole run, where no other material was. */
function isThroughout(talk: Talk, mark: Said): boolean {
  const words = clauseWords(talk, mark.clause);
  if (!/\b(all the way|throughout|the whole way|the whole run|entire run)$/.test(words))
    return false;
  return talk.said.every((other) => other.what !== "material" || other.at >= mark.at);
}

const START = 30_000;
const ENTRY =
  /\b(go(ing)? in|start(ing|ed)?|in (at|through|from)|launch(ing|ed)?|zero(ed)?|reset|counter 0|begin(ning)?( with)?|counting from|from the|push(ing)? from|set up|stuck down)\b/;

/** `two feet past that`: counted on from the last place, along the way the camera goes. */
function relativeTo(ground: Ground, mark: Said): Place | null {
  const step = inSentence(ground.talk, mark.sentence).find(
    (other): other is Of<"distance"> =>
      other.what === "distance" && other.distance.kind === "relative",
  );
  const point = step && ground.track.points.find(({ at }) => at === step.at);
  if (!step || !point) return null;
  const slack = Math.max(100, step.distance.slack);
  const { counter } = point;
  return {
    counter,
    toCounter: null,
    fromMain: null,
    reading: "between",
    slack,
    note: "",
    clause: step.clause,
  };
}

/** `roots for about six feet`, `There’s a crack. Goes maybe four feet.`: along the way the camera goes. */
function withExtent(ground: Ground, mark: Said, place: Place): Place {
  if (place.counter === null || place.toCounter !== null) return place;
  const extent =
    inSentence(ground.talk, mark.sentence).find(
      (other): other is Of<"distance"> => isExtent(ground, other) && other.at > mark.at - 2,
    ) ?? extentBehind(ground, mark);
  if (!extent) return place;
  const end = place.counter + motionAt(ground.track, mark.at) * extent.distance.from;
  const slack = Math.max(place.slack, extent.distance.slack);
  return { ...place, ...inOrder(place.counter, Math.max(0, end)), slack };
}

function isExtent(ground: Ground, mark: Said): mark is Of<"distance"> {
  return (
    mark.what === "distance" && mark.distance.kind === "extent" && !ground.sense.unreal.has(mark.at)
  );
}

/** The next sentence tells nothing but how far it goes. */
function extentBehind(ground: Ground, mark: Said): Of<"distance"> | null {
  const marks = inSentence(ground.talk, mark.sentence + 1);
  const [first] = marks.filter((other) => other.what === "distance");
  const alone = marks.every((other) => other.what !== "thing");
  if (!first || !alone || !isExtent(ground, first)) return null;
  return /^(it |that |and )?(goes|runs|lasts|about|maybe|for)\b/.test(
    clauseWords(ground.talk, first.clause),
  )
    ? first
    : null;
}
