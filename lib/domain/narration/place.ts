import type { Cft } from "../line/station.ts";
import { formatFeet } from "../line/station.ts";
import type { Reading } from "../run/run.ts";
import type { NarrationRun } from "./draft.ts";
import {
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
import {
  betweenReadings,
  counterOf,
  middleOf,
  motionAt,
  type TrackPoint,
  trackOf,
} from "./track.ts";

/** Where something is, by what was said. */
export interface Place {
  readonly counter: Cft | null;
  readonly toCounter: Cft | null;
  readonly reading: Reading;
  readonly slack: Cft;
  readonly note: string;
  /** Clause in which the distance was spoken; null where it was worked out. */
  readonly clause: number | null;
}

/** What is needed to place things: the talk, what it means, and where the camera was. */
export interface Ground {
  readonly talk: Talk;
  readonly sense: Sense;
  readonly run: NarrationRun;
  readonly track: readonly TrackPoint[];
}

export function groundOf(talk: Talk, sense: Sense, run: NarrationRun): Ground {
  return { talk, sense, run, track: trackOf(talk, sense, run) };
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
  const own = distanceFor(ground, mark);
  const place = own ? placeAt(ground, own) : workedOut(ground, mark);
  return [withExtent(ground, mark, place)];
}

/** The reading that belongs to a mark, if one was spoken for it. */
export function distanceFor(ground: Ground, mark: Said): Of<"distance"> | null {
  const { talk } = ground;
  const own = pick(ground, placings(ground, inClause(talk, mark.clause)), mark);
  if (own) return own;
  const known = knownPlace(ground, mark);
  if (known) return distanceFor(ground, known);
  if (isOnward(ground, mark)) return nextBare(ground, mark);
  const sentence = pick(ground, placings(ground, inSentence(talk, mark.sentence)), mark);
  return sentence ?? acrossSentences(ground, mark);
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
    mark.what === "distance" && mark.distance.kind === "at" && !ground.sense.unreal.has(mark.at)
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
  const again = inClause(talk, mark.clause).find((other) => sense.again.get(other.at) != null);
  const before = again && sense.again.get(again.at);
  return before == null || before >= mark.at ? null : (talk.said[before] ?? null);
}

/** Where the talk begins with a reading, each holds for what follows it; else for what precedes it. */
function pick(ground: Ground, marks: readonly Said[], mark: Said): Of<"distance"> | null {
  const distances = marks.filter((other): other is Of<"distance"> => other.what === "distance");
  const before = distances.findLast((other) => other.at < mark.at) ?? null;
  const after = distances.find((other) => other.at > mark.at) ?? null;
  if (after && isBound(ground.talk, mark, after)) return after;
  return marks[0]?.what === "distance" ? (before ?? after) : (after ?? before);
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
  return next ?? (previous && isHere(ground, mark) ? previous.mark : null);
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
  const before = inSentence(ground.talk, reading.sentence - 1);
  const thing = placings(ground, before).findLast((other) => other.what === "thing");
  const placed = before.some((other) => isPlacing(ground, other));
  return thing !== undefined && !placed && !tooFar(thing.time, reading.time, NEXT);
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
    return isBare(ground, first, marks) && !tooFar(mark.time, first.time, NEXT) ? first : null;
  }
  return null;
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
  const whole = { reading: "read" as const, note: "", clause: mark.clause };
  if (counterOf(distance.from, distance.base, ground.run) === null)
    return fromMainOnly(mark, ground.run);
  if (distance.choice && distance.to !== null) {
    const counter = counterOf(middleOf(distance), distance.base, ground.run);
    const slack = Math.max(distance.slack, Math.abs(distance.to - distance.from) / 2);
    return { ...whole, counter, toCounter: null, slack };
  }
  const from = counterOf(distance.from, distance.base, ground.run);
  const to = distance.to === null ? null : counterOf(distance.to, distance.base, ground.run);
  return { ...whole, ...inOrder(from, to), slack: distance.slack };
}

function fromMainOnly(mark: Of<"distance">, run: NarrationRun): Place {
  const { from, to, slack } = mark.distance;
  const said = to === null ? formatFeet(from) : `${formatFeet(from)} to ${formatFeet(to)}`;
  const why =
    run.mainCounter === null
      ? "the counter at the main is not known"
      : "that does not fit the counter at the main";
  const note = `${said} from the main; ${why}`;
  return { counter: null, toCounter: null, reading: "read", slack, note, clause: mark.clause };
}

export function inOrder(
  from: Cft | null,
  to: Cft | null,
): { counter: Cft | null; toCounter: Cft | null } {
  if (from === null || to === null || from === to) return { counter: from, toCounter: null };
  return { counter: Math.min(from, to), toCounter: Math.max(from, to) };
}

function workedOut(ground: Ground, mark: Said): Place {
  const nowhere = { toCounter: null, reading: "between" as const, clause: null };
  const relative = relativeTo(ground, mark);
  if (relative) return relative;
  const near = ground.track.findLast((point) => point.at < mark.at);
  if (isStart(ground, mark))
    return { ...nowhere, counter: 0, slack: 100, note: "Said at the start" };
  const between = betweenReadings(ground.track, mark);
  if (between) return { ...nowhere, ...between, note: "" };
  if (near && !tooFar(near.time, mark.time, PREVIOUS) && near.time !== null)
    return { ...nowhere, counter: near.counter, slack: 200, note: "" };
  return { ...nowhere, counter: null, slack: 0, note: "No distance was spoken for it" };
}

/** The pipe’s material, told while the camera goes in. */
function isStart({ talk, track }: Ground, mark: Said): boolean {
  const first = talk.speech.words[0]?.time ?? null;
  const soon = mark.time === null || first === null || mark.time - first <= START;
  const words = wordsOf(talk, 0, mark.to);
  const atZero = track.every(({ at, counter }) => at > mark.at || counter === 0);
  const changes = inClause(talk, mark.clause).some((other) => isTurn(other, "change"));
  return mark.what === "material" && soon && atZero && !changes && ENTRY.test(words);
}

const START = 30_000;
const ENTRY =
  /\b(go(ing)? in|start(ing|ed)?|in (at|through|from)|launch(ing|ed)?|zero(ed)?|begin(ning)?( with)?|counting from|from the|push(ing)? from|set up|stuck down)\b/;

/** `two feet past that`: from the last reading, along the way the camera goes. */
function relativeTo(ground: Ground, mark: Said): Place | null {
  const step = inSentence(ground.talk, mark.sentence).find(
    (other): other is Of<"distance"> =>
      other.what === "distance" && other.distance.kind === "relative",
  );
  const last = ground.track.findLast((point) => point.at < (step?.at ?? mark.at));
  if (!step || !last) return null;
  const on = motionAt(ground.track, step.at) * step.distance.from;
  const counter = Math.max(0, last.counter + on);
  const slack = Math.max(100, step.distance.slack);
  return { counter, toCounter: null, reading: "between", slack, note: "", clause: step.clause };
}

/** `roots for about six feet`: the stretch runs on along the way the camera goes. */
function withExtent(ground: Ground, mark: Said, place: Place): Place {
  if (place.counter === null || place.toCounter !== null) return place;
  const extent = inSentence(ground.talk, mark.sentence).find(
    (other): other is Of<"distance"> =>
      other.what === "distance" &&
      other.distance.kind === "extent" &&
      other.at > mark.at - 2 &&
      !ground.sense.unreal.has(other.at),
  );
  if (!extent) return place;
  const end = place.counter + motionAt(ground.track, mark.at) * extent.distance.from;
  const slack = Math.max(place.slack, extent.distance.slack);
  return { ...place, ...inOrder(place.counter, Math.max(0, end)), slack };
}
