import { inSentence, type Of, type Said, type Talk, wordsOf } from "../meaning/said.ts";
import type { Sense } from "../meaning/sense.ts";
import type { Axis } from "./axis.ts";
import { type Track, trackOf } from "./track.ts";

/** What is needed to place things: the talk, what it means, and where the camera was. */
export interface Ground {
  readonly talk: Talk;
  readonly sense: Sense;
  readonly axis: Axis;
  readonly track: Track;
  /** Whether this speaker reads off before telling, or tells first; null where the talk shows neither. */
  readonly habit: Habit | null;
}

type Habit = "reads-first" | "tells-first";

/** All that places what was said: the talk, its sense, its axis and the way that the camera went. */
export function groundOf(talk: Talk, sense: Sense, axis: Axis): Ground {
  const ground = { talk, sense, axis, track: trackOf(talk, sense, axis), habit: null };
  return { ...ground, habit: habitOf(ground) };
}

/**
 * Most people keep to one order. It shows where a reading and a find stand in sentences of their own:
 * by which is nearer in time; without times by which of the two the talk begins with.
 */
function habitOf(ground: Ground): Habit | null {
  const bare = bareOf(ground);
  const votes = bare.reduce((sum, mark, at) => {
    if (mark.what !== "thing") return sum;
    return sum + voteOf(bare[at - 1], mark, bare[at + 1]);
  }, begins(bare));
  if (votes === 0) return null;
  return votes > 0 ? "reads-first" : "tells-first";
}

/** In text without times the first of the two tells. */
function begins([first, second]: readonly Said[]): number {
  if (first === undefined || second === undefined || first.time !== null) return 0;
  return first.what === "distance" && second.what === "thing" ? 1 : 0;
}

/** 1 where a find plainly belongs to the reading before it, −1 where to that behind. */
function voteOf(before: Said | undefined, mark: Said, after: Said | undefined): number {
  if (before?.what === "distance" && after?.what === "distance")
    return nearerOf(before, mark, after);
  return before === undefined && after?.what === "distance" ? -1 : 0;
}

/** Readings and finds that stand in sentences without the other, in the order of speaking. */
function bareOf(ground: Ground): Said[] {
  return placings(ground, ground.talk.said).filter((mark) => {
    if (mark.what === "distance" && mark.distance.from === 0) return false;
    if (mark.what === "thing" && /^(main|cleanout)$/.test(mark.thing.kind)) return false;
    const beside = placings(ground, inSentence(ground.talk, mark.sentence));
    return beside.every(({ what }) => what === mark.what);
  });
}

/** 1 where the reading before is plainly nearer in time, −1 where that behind is. */
function nearerOf(before: Said, mark: Said, after: Said): number {
  if (before.time === null || mark.time === null || after.time === null) return 0;
  const since = mark.time - before.time;
  const until = after.time - mark.time;
  if (since * PLAINLY < until) return 1;
  return until * PLAINLY < since ? -1 : 0;
}

const PLAINLY = 1.5;

/** A spoken distance that tells where something is. */
export function isPlacing(ground: Ground, mark: Said): mark is Of<"distance"> {
  return (
    mark.what === "distance" &&
    mark.distance.kind === "at" &&
    !ground.sense.unreal.has(mark.at) &&
    (!ground.track.outliers.has(mark.at) || isToldApart(ground, mark))
  );
}

/** What weighs less may be no distance at all. */
const PLAINLY_READ = 2;

/**
 * Whoever writes from memory goes back and forth: without times a footage read off with its find,
 * `we hit the main at eighty-two`, is that of the find, though it lies on no camera’s way.
 */
function isToldApart({ talk, sense }: Ground, mark: Of<"distance">): boolean {
  if (mark.time !== null || mark.distance.weight < PLAINLY_READ) return false;
  const found = talk.said.findLast(
    (other) => other.at < mark.at && /^(thing|distance)$/.test(other.what),
  );
  if (isToldOf(talk, mark, sense)) return true;
  return (
    found?.what === "thing" &&
    found.sentence === mark.sentence &&
    mark.clause - found.clause <= 1 &&
    !sense.unreal.has(found.at) &&
    !sense.pointers.has(found.at)
  );
}

/** `between those two, at nineteen, the pipe is cracked`: set off, with its find right behind. */
function isToldOf(talk: Talk, mark: Said, sense: Sense): boolean {
  const next = talk.said
    .slice(mark.at + 1)
    .find((other) => /^(thing|distance|material)$/.test(other.what));
  return (
    next?.what === "thing" &&
    next.sentence === mark.sentence &&
    next.clause - mark.clause === 1 &&
    /\bat$/.test(wordsOf(talk, mark.from - 1, mark.from)) &&
    !sense.unreal.has(next.at)
  );
}

/** Things and readings of a stretch of talk, in order. */
export function placings(ground: Ground, marks: readonly Said[]): Said[] {
  return marks.filter(
    (mark) =>
      isPlacing(ground, mark) ||
      (mark.what === "thing" &&
        !ground.sense.unreal.has(mark.at) &&
        !ground.sense.pointers.has(mark.at)),
  );
}
