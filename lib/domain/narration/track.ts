import { type Cft, toTenth } from "../line/station.ts";
import type { NarrationRun } from "./draft.ts";
import type { Distance } from "./mark.ts";
import { inClause, isTurn, type Of, type Said, type Talk } from "./said.ts";
import type { Sense } from "./sense.ts";

/** A counter reading where the camera stood when it was spoken. */
export interface TrackPoint {
  readonly at: number;
  readonly counter: Cft;
  /** Thousandths of a second. */
  readonly time: number | null;
}

/** A counter worked out, with how far off it may be. */
export interface Between {
  readonly counter: Cft;
  readonly slack: Cft;
}

/**
 * Counter of a distance: those from the main need the counter at the main. Null where that is not
 * known, or where the counter would be below zero: then one of the two was misheard.
 */
export function counterOf(value: Cft, base: Distance["base"], run: NarrationRun): Cft | null {
  if (base === "counter") return value;
  if (run.mainCounter === null) return null;
  const counter =
    run.direction === "downstream" ? run.mainCounter - value : run.mainCounter + value;
  return counter < 0 ? null : counter;
}

/**
 * Where the camera was, as spoken: single readings, in the order of speaking. Lists, ranges and
 * what was seen earlier (`the one at thirty-four`) say nothing of where the camera is now.
 */
export function trackOf(talk: Talk, sense: Sense, run: NarrationRun): TrackPoint[] {
  return talk.said.flatMap((mark): TrackPoint[] => {
    if (mark.what !== "distance" || sense.unreal.has(mark.at)) return [];
    const { distance } = mark;
    if (distance.kind !== "at" || (distance.to !== null && !distance.choice)) return [];
    if (isListed(talk, mark) || isBackwardLook(talk, mark)) return [];
    const counter = counterOf(middleOf(distance), distance.base, run);
    return counter === null ? [] : [{ at: mark.at, counter, time: mark.time }];
  });
}

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
  return before !== undefined && isTurn(before, "same") && mark.clause === before.clause;
}

/**
 * The counter at a mark without a reading of its own: evenly by time between the readings spoken
 * before and after it, or halfway where there are no times. Null where none was spoken on one side.
 */
export function betweenReadings(track: readonly TrackPoint[], mark: Said): Between | null {
  const before = track.findLast((point) => point.at < mark.at);
  const after = track.find((point) => point.at > mark.at);
  if (!before || !after) return null;
  const slack = Math.max(50, Math.ceil(Math.abs(after.counter - before.counter) / 2));
  const part = partBetween(before.time, mark.time, after.time);
  const counter = toTenth(before.counter + part * (after.counter - before.counter));
  return { counter, slack };
}

function partBetween(before: number | null, time: number | null, after: number | null): number {
  if (before === null || time === null || after === null || after <= before) return 0.5;
  return Math.min(1, Math.max(0, (time - before) / (after - before)));
}

/** 1 where the counter was rising about here, −1 where it was falling. */
export function motionAt(track: readonly TrackPoint[], at: number): 1 | -1 {
  const after = track.findIndex((point) => point.at >= at);
  const near = after === -1 ? track.slice(-2) : track.slice(Math.max(0, after - 1), after + 1);
  const [first, last] = near.length === 2 ? near : [track[0], track[1]];
  return first && last && last.counter < first.counter ? -1 : 1;
}
