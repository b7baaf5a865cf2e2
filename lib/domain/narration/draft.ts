import type { Fitting, Material } from "../line/line.ts";
import type { Cft } from "../line/station.ts";
import type { Direction, Fault, ObscuredBy, ObservationKind, Reading } from "../run/run.ts";

/** One row of an observation log as drafted from what was said. A person accepts, mends or drops it. */
export interface Draft {
  /** The same for the same words at the same place of the text. */
  readonly key: string;
  readonly kind: ObservationKind;
  /** On the run's counter; null where nothing said tells where it is. */
  readonly counter: Cft | null;
  readonly toCounter: Cft | null;
  /** `between`: worked out by time between two spoken readings. */
  readonly reading: Reading;
  /** How far off the counter may be, by the speaker's own words or by working out. */
  readonly slack: Cft;
  readonly clock: number | null;
  readonly fault: Fault | null;
  readonly material: Material;
  readonly diameter: number | null;
  readonly fitting: Fitting;
  readonly videoSecond: number | null;
  /** The words that it rests on, as they stand in the text. */
  readonly quote: string;
  /** Hedges as spoken: `maybe`, `looks like`. */
  readonly hedges: readonly string[];
  /** What was said about the record here: `not on the card`. */
  readonly aboutRecord: string;
  /** The rest in plain words, for the note. */
  readonly note: string;
}

/** A stretch that could not be seen, as spoken. */
export interface DraftGap {
  readonly key: string;
  readonly fromCounter: Cft;
  readonly toCounter: Cft;
  readonly cause: ObscuredBy;
  readonly quote: string;
}

/** A distance as it was spoken, on the run's counter: what the rows between are worked out from. */
export interface SpokenReading {
  readonly counter: Cft;
  /** Null in text without times. */
  readonly videoSecond: number | null;
  readonly quote: string;
}

const NARRATION_FORMATS = ["webvtt", "srt", "timed-lines", "plain"] as const;
export type NarrationFormat = (typeof NARRATION_FORMATS)[number];

/** What is wrong with a line of the transcript; the rest is read all the same. */
export interface TranscriptProblem {
  /** From 1. */
  readonly line: number;
  readonly message: string;
}

export interface DraftLog {
  readonly format: NarrationFormat;
  readonly drafts: readonly Draft[];
  readonly gaps: readonly DraftGap[];
  /** Every counter reading that was spoken, in the order of speaking. */
  readonly readings: readonly SpokenReading[];
  /** The counter at the main connection, where the speaker said that the camera is there. */
  readonly mainCounter: Cft | null;
  readonly problems: readonly TranscriptProblem[];
}

/** What the run knows that the words leave out. */
export interface NarrationRun {
  readonly direction: Direction;
  /** Counter at the main connection by the run's anchors; for distances given from the main. */
  readonly mainCounter: Cft | null;
}
