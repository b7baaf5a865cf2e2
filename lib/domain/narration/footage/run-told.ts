import type { Direction, FootageFrom, Reading } from "../../facts/run.ts";
import type { Cft } from "../../length/station.ts";

/** What the run knows that the words leave out. */
export interface NarrationRun {
  /** Which way the lens looks. */
  readonly looks: Direction;
  /** Null where nobody said: then the talk decides. */
  readonly measuredFrom: FootageFrom | null;
  /** Counter at the main connection by the run's anchors; for distances given from the main. */
  readonly mainCounter: Cft | null;
}

/** A distance as it was spoken, on the run's counter: what the rows between are worked out from. */
export interface SpokenReading {
  readonly counter: Cft;
  /** Null in text without times. */
  readonly videoSecond: number | null;
  readonly quote: string;
}

/**
 * How a place was found: `read` was spoken there; `between` was worked out by time between two that
 * were spoken; `beyond` by the speed, after the last or before the first that was.
 */
export type DraftReading = Reading | "beyond";
