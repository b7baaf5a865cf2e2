import { type Cft, toTenth } from "../../length/station.ts";
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
import type { Sense } from "../meaning/sense.ts";
import type { Distance } from "../vocabulary/mark.ts";
import { type Axis, counterOf, startAtAccess, startAtMain } from "./axis.ts";
import { type Candidate, fitted } from "./fit.ts";
import { partBetween, passedIn } from "./passed.ts";

/** Where the camera stood, and until when. */
interface TrackPoint {
  readonly at: number;
  readonly counter: Cft;
  readonly clause: number;
  /** Where it was when it went on: the end of a spoken range. */
  readonly leaves: Cft;
  /** Thousandths of a second. */
  readonly time: number | null;
  /** Until then it stood there: as long as its find was told. */
  readonly until: number | null;
  /** Spoken as a distance; else worked out from one, or where the talk began. */
  readonly spoken: boolean;
}

/** The way of the camera, as far as it was spoken. */
export interface Track {
  readonly points: readonly TrackPoint[];
  /** 1 where footage grew on the whole, −1 where it fell. */
  readonly motion: 1 | -1;
  /** Marks of spoken distances that lie on no camera’s way together with the others. */
  readonly outliers: ReadonlySet<number>;
  /** Marks of distances that the camera had passed when they were told; they place what is told with them. */
  readonly passed: ReadonlySet<number>;
  /** Marks of distances where the camera had not come: told of another time. */
  readonly elsewhere: ReadonlySet<number>;
  /** Feet (hundredths) a second, and how unsteady: the spread of the speeds over their mean. */
  readonly speed: Speed | null;
  /** Clauses in which the speaker says that the camera goes back. */
  readonly turns: readonly number[];
  /** Footage at the main, which ends the way down; null where not known. */
  readonly end: Cft | null;
}

interface Speed {
  readonly mean: number;
  readonly spread: number;
}

/** A counter worked out, with how far off it may be. */
export interface Between {
  readonly counter: Cft;
  readonly slack: Cft;
  readonly reading: "between" | "beyond";
}

/**
 * Where the camera was, as spoken: the single readings and ranges that fit one camera’s way, in the
 * order of speaking, the place where it began, and steps counted on from the last. Lists and what
 * was seen earlier (`the one at thirty-four`) say nothing of where the camera is now.
 */
export function trackOf(talk: Talk, sense: Sense, axis: Axis): Track {
  const all = atTheirEnds(candidatesOf(talk, sense, axis));
  const opening = beforeZero(talk, sense, all);
  const { passed, elsewhere } = passedIn(talk, all);
  const candidates = all.filter(
    ({ at }) => !opening.has(at) && !passed.has(at) && !elsewhere.has(at),
  );
  const start = startOf(talk, axis, candidates);
  const { kept, motion } = fitted(start === null ? candidates : [start, ...candidates]);
  const on = new Set(kept.map(({ at }) => at));
  const points = kept.map((one): TrackPoint => {
    const { at, counter, time } = one;
    const clause = talk.said[at]?.clause ?? 0;
    return {
      at,
      counter,
      clause,
      leaves: one.to ?? counter,
      time,
      until: time,
      spoken: one !== start,
    };
  });
  const whole = withSteps(talk, sense, { points, motion }).map((point, at, all) => ({
    ...point,
    until: stoodUntil(talk, point, all[at + 1]),
  }));
  return {
    points: whole,
    motion,
    outliers: new Set(all.flatMap(({ at }) => (on.has(at) || passed.has(at) ? [] : [at]))),
    passed,
    elsewhere,
    speed: speedOf(whole),
    turns: [...talk.spans.keys()].filter((clause) => BACKWARDS.test(clauseWords(talk, clause))),
    end: axis.measuredFrom === "access" ? axis.mainCounter : null,
  };
}

function candidatesOf(talk: Talk, sense: Sense, axis: Axis): Candidate[] {
  let last = 0;
  return talk.said.flatMap((mark): Candidate[] => {
    if (mark.what !== "distance" || sense.unreal.has(mark.at)) return [];
    const { distance } = mark;
    if (distance.kind !== "at" || isListed(talk, mark) || isBackwardLook(talk, mark)) return [];
    if (isWhose(talk, mark)) return [];
    const from = distance.choice ? middleOf(distance) : distance.from;
    const counter = counterOf(from, distance.base, axis);
    const to =
      distance.to === null || distance.choice ? null : counterOf(distance.to, distance.base, axis);
    if (counter === null) return [];
    const back = BACKWARDS.test(wordsOf(talk, last, mark.from));
    last = mark.to;
    const weight = weightOf(talk, mark);
    return [{ at: mark.at, counter, to, time: mark.time, weight, back }];
  });
}

/** So near the end of a stretch, hundredths of a foot, the camera has come to it. */
const AT_END = 60;

/** `clay again at forty-one. So thirty-three to forty-one is plastic.`: told where the camera stood already. */
function atTheirEnds(candidates: readonly Candidate[]): Candidate[] {
  return candidates.map((one, index) => {
    const last = candidates[index - 1];
    if (one.to === null || !last) return one;
    const stood = last.to ?? last.counter;
    return Math.abs(one.to - stood) <= AT_END ? { ...one, counter: one.to, to: null } : one;
  });
}

function weightOf(talk: Talk, mark: Of<"distance">): number {
  const { weight } = mark.distance;
  return weight < PLAINLY_READ && isAtMain(talk, mark) ? weight + AT_MAIN : weight;
}

/** What it adds to a number that `and that’s the main, one oh four` says it. */
const AT_MAIN = 1.5;

/** Right behind or before the main: no house is there. */
function isAtMain(talk: Talk, mark: Said): boolean {
  return [talk.said[mark.at - 1], talk.said[mark.at + 1]].some(
    (other) =>
      other?.what === "thing" &&
      other.thing.kind === "main" &&
      other.sentence - mark.sentence <= 1 &&
      mark.sentence - other.sentence <= 1 &&
      Math.min(Math.abs(other.from - mark.to), Math.abs(mark.from - other.to)) <= 2,
  );
}

/** `twenty eight foot y on the left side thirty three`: behind a branch that has its footage, whose it is. */
function isWhose(talk: Talk, mark: Of<"distance">): boolean {
  const marks = inSentence(talk, mark.sentence);
  if (mark.distance.weight > 1 || marks.at(-1)?.at !== mark.at) return false;
  const branch = marks.findLast(
    (old) => old.at < mark.at && old.what === "thing" && old.thing.kind === "tie-in",
  );
  return marks.some(
    (old) =>
      branch !== undefined &&
      old.at < branch.at &&
      old.what === "distance" &&
      old.distance.weight >= PLAINLY_READ,
  );
}

/** So many sentences a talk may take to come to its zero. */
const OPENING = 8;
/** What weighs less has no feet, tenths or counter with it. */
const PLAINLY_READ = 3;

/**
 * `12 and 14 Larkspur, … zero at the cap`: bare numbers before the zero or the first find, that
 * the footage of it lies below and goes on to grow from.
 */
function beforeZero(talk: Talk, sense: Sense, candidates: readonly Candidate[]): Set<number> {
  const bare = candidates.filter(
    ({ at, weight }) => weight < PLAINLY_READ && (talk.said[at]?.sentence ?? 0) <= OPENING,
  );
  const first = candidates.findIndex((one) => one.counter === 0 || isFound(talk, sense, one));
  const from = candidates[first];
  const next = candidates[first + 1];
  if (!from || !next || next.counter <= from.counter) return new Set();
  return new Set(
    bare.flatMap(({ at, counter }) => (at < from.at && counter > from.counter ? [at] : [])),
  );
}

/** Something was found in the sentence that gives the distance. */
function isFound(talk: Talk, sense: Sense, { at }: Candidate): boolean {
  return inSentence(talk, talk.said[at]?.sentence ?? -1).some((mark) => isFinding(sense, mark));
}

function isFinding(sense: Sense, mark: Said): boolean {
  return (
    mark.what === "thing" &&
    !/^(main|cleanout)$/.test(mark.thing.kind) &&
    !sense.unreal.has(mark.at)
  );
}

const BACKWARDS =
  /\b(back(ing)? up|back it up|backed up|went back|going back|go back|back (to|out|at)|pull(ing|ed)? back|pulling out|run two|second run|other way|from the other|start(ing)? over|restart|reset|turn(ing|ed)? around)\b/;

/** The talk begins at the main or at the way in, and nobody says zero: that is zero then. */
function startOf(talk: Talk, axis: Axis, candidates: readonly Candidate[]): Candidate | null {
  if (candidates.some(({ counter }) => counter === 0)) return null;
  const main = startAtMain(talk);
  if (main && (axis.measuredFrom === "main" || axis.looks === "upstream"))
    return { at: main.at, counter: 0, to: null, time: main.time, weight: 3, back: false };
  if (main || axis.measuredFrom === "main") return null;
  const clause = startAtAccess(talk);
  if (clause === null) return null;
  const word = talk.speech.words[spanAt(talk, clause).from];
  return { at: -1, counter: 0, to: null, time: word?.time ?? null, weight: 1, back: false };
}

/** `two feet past that`: where the camera is then, counted on from the point before. */
function withSteps(
  talk: Talk,
  sense: Sense,
  { points, motion }: { readonly points: readonly TrackPoint[]; readonly motion: 1 | -1 },
): TrackPoint[] {
  const whole = [...points];
  for (const mark of talk.said) {
    if (mark.what !== "distance" || mark.distance.kind !== "relative") continue;
    if (sense.unreal.has(mark.at)) continue;
    const next = whole.findIndex((point) => point.at > mark.at);
    const place = next === -1 ? whole.length : next;
    const last = whole[place - 1];
    if (!last) continue;
    const counter = Math.max(0, last.counter + motion * mark.distance.from);
    whole.splice(place, 0, {
      at: mark.at,
      counter,
      clause: mark.clause,
      leaves: counter,
      time: mark.time,
      until: mark.time,
      spoken: false,
    });
  }
  return whole;
}

/** A camera stands for what is told without a silence, but hardly longer than this: it goes on while people talk. */
const STANDS = 4_000;

function stoodUntil(talk: Talk, point: TrackPoint, next: TrackPoint | undefined): number | null {
  const from = talk.said[point.at];
  if (point.time === null || from === undefined) return point.time;
  const breath = talk.speech.words[from.from]?.breath;
  const last = talk.speech.words.findLast((word) => word.breath === breath)?.time ?? point.time;
  const until = Math.min(last, point.time + STANDS);
  return next?.time != null && next.time <= until ? point.time : until;
}

/** Shorter than this, thousandths of a second, tells no speed. */
const BRIEF = 4_000;

function speedOf(points: readonly TrackPoint[]): Speed | null {
  const legs = points.slice(1).flatMap((point, index) => {
    const last = points[index];
    if (!last || last.until === null || point.time === null) return [];
    const time = point.time - last.until;
    const way = Math.abs(point.counter - last.leaves);
    return time >= BRIEF && way > 0 ? [{ time: time / 1000, way }] : [];
  });
  if (legs.length === 0) return null;
  const mean =
    legs.reduce((sum, { way }) => sum + way, 0) / legs.reduce((sum, { time }) => sum + time, 0);
  const off = legs.map(({ way, time }) => (way / time - mean) ** 2);
  const spread = Math.sqrt(off.reduce((sum, each) => sum + each, 0) / legs.length) / mean;
  return { mean, spread: legs.length < 3 ? Math.max(0.5, spread) : spread };
}

/** The middle of a distance told as two, hundredths of a foot; of one told as one, that. */
export function middleOf(distance: Distance): Cft {
  return distance.to === null ? distance.from : Math.round((distance.from + distance.to) / 2);
}

function isListed(talk: Talk, mark: Of<"distance">): boolean {
  const beside = inClause(talk, mark.clause).filter((other) => other.what === "distance");
  const many = inClause(talk, mark.clause).some(
    (other) => other.what === "thing" && other.thing.many,
  );
  return many && beside.length > 1;
}

function isBackwardLook(talk: Talk, mark: Said): boolean {
  const before = talk.said[mark.at - 1];
  // `and that’s the cleanout, I’m back at zero`
  if (mark.what === "distance" && mark.distance.from === 0) return false;
  return before !== undefined && isTurn(before, "same") && mark.clause === before.clause;
}

/** What is worked out by time is nowhere nearer than this, hundredths of a foot. */
const LEAST = 50;

/**
 * The counter at a mark without a reading of its own. Between two readings evenly by time, or
 * halfway where there are no times; past the last one by the speed so far. How far off it may be
 * follows from how steady the speed was, and is at most half of what lies between. Null where
 * neither can be said.
 */
export function workedOutAt(track: Track, mark: Said): Between | null {
  const { points, motion, speed } = track;
  const before = points.findLast((point) => point.at < mark.at);
  const after = points.find((point) => point.at > mark.at);
  if (before && after) return between(before, after, { mark, speed });
  if (before) return isTurned(track, before, mark) ? null : beyond(before, { mark, speed, motion });
  return after ? ahead(after, { mark, speed, motion }) : null;
}

/** At the main the way ends; and once the camera goes back, its speed tells nothing. */
function isTurned({ end, turns }: Track, last: TrackPoint, mark: Said): boolean {
  if (end !== null && end > 0 && Math.abs(last.leaves - end) <= LEAST) return true;
  return turns.some(
    (clause) => clause >= last.clause && clause <= mark.clause && clause > 0 && last.counter > 0,
  );
}

function between(
  before: TrackPoint,
  after: TrackPoint,
  { mark, speed }: { readonly mark: Said; readonly speed: Speed | null },
): Between {
  const part = partBetween(before.until, mark.time, after.time);
  const gap = after.counter - before.leaves;
  const half = Math.max(LEAST, Math.ceil(Math.abs(gap) / 2));
  const bySpeed =
    speed === null || part === null
      ? half
      : Math.ceil(Math.abs(gap) * Math.max(0.15, speed.spread) * 2 * Math.sqrt(part * (1 - part)));
  return {
    counter: toTenth(before.leaves + (part ?? 0.5) * gap),
    slack: Math.min(half, Math.max(100, bySpeed)),
    reading: "between",
  };
}

function beyond(
  last: TrackPoint,
  { mark, speed, motion }: { mark: Said; speed: Speed | null; motion: 1 | -1 },
): Between | null {
  if (speed === null || last.until === null || mark.time === null) return null;
  const way = (Math.max(0, mark.time - last.until) / 1000) * speed.mean;
  return {
    counter: Math.max(0, toTenth(last.leaves + motion * way)),
    slack: Math.max(200, Math.ceil(way * Math.max(0.5, speed.spread))),
    reading: "beyond",
  };
}

/** Before the first reading, where nothing tells where the camera began. */
function ahead(
  first: TrackPoint,
  { mark, speed, motion }: { mark: Said; speed: Speed | null; motion: 1 | -1 },
): Between | null {
  if (speed === null || first.time === null || mark.time === null) return null;
  const way = (Math.max(0, first.time - mark.time) / 1000) * speed.mean;
  return {
    counter: Math.max(0, toTenth(first.counter - motion * way)),
    slack: Math.max(200, Math.ceil(way * Math.max(0.5, speed.spread))),
    reading: "beyond",
  };
}

/** 1 where the counter was rising about here, −1 where it was falling. */
export function motionAt({ points, motion }: Track, at: number): 1 | -1 {
  const after = points.findIndex((point) => point.at >= at);
  const near = after === -1 ? points.slice(-2) : points.slice(Math.max(0, after - 1), after + 1);
  const [first, last] = near;
  if (!first || !last || first.counter === last.counter) return motion;
  return last.counter < first.counter ? -1 : 1;
}
