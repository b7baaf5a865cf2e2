import type { Cft } from "../length/station.ts";
import type { Day } from "../time/day.ts";
import type { Fitting, Material } from "./line.ts";

export const DIRECTIONS = ["upstream", "downstream"] as const;
export type Direction = (typeof DIRECTIONS)[number];

export const FOOTAGE_FROM = ["access", "main"] as const;
/** What a run's footage is measured from: where the camera went in, or the main connection. */
export type FootageFrom = (typeof FOOTAGE_FROM)[number];

export const SELF_LEVELING = ["yes", "no", "unknown"] as const;
/** Whether the camera's head keeps its picture upright; one that turns shows no true clock. */
export type SelfLeveling = (typeof SELF_LEVELING)[number];

export const ANSWERS = ["yes", "no", "cannot-tell"] as const;
export type Answer = (typeof ANSWERS)[number];

export const RUN_ENDS = [
  "reached-main",
  "reached-upper-end",
  "blocked",
  "under-water",
  "turned-back",
  "out-of-cable",
  "unknown",
] as const;
/** Why looking ended where it did. */
export type RunEnd = (typeof RUN_ENDS)[number];

/** One pass of the camera. */
export interface Run {
  readonly id: string;
  readonly name: string;
  readonly ranOn: Day;
  readonly operator: string;
  /** Where the camera went in. */
  readonly accessPoint: string;
  /** Which way the lens looks; clock positions, left and right are as it looks. */
  readonly looks: Direction;
  /**
   * `access`: the footage grows with the way from where the camera went in. `main`: it is 0 at the
   * main connection and grows upstream, whichever way the lens looks.
   */
  readonly measuredFrom: FootageFrom;
  readonly selfLeveling: SelfLeveling;
  /** What the counter's zero was set at, in words. */
  readonly zeroAt: string;
  /** Counter readings where looking began and ended. */
  readonly fromCounter: Cft;
  readonly toCounter: Cft | null;
  readonly ended: RunEnd;
  /** Anything that crosses the pipe, such as a gas line bored through it. */
  readonly crossingSeen: Answer;
  /** Overrides the default uncertainty (1 ft or 0.5 %), if a person set one. */
  readonly uncertainty: Cft | null;
  readonly note: string;
}

export const ANCHOR_KINDS = [
  "main-connection",
  "surface-locate",
  "cleanout",
  "material-change",
  "property-line",
  "settled-tie-in",
] as const;
export type AnchorKind = (typeof ANCHOR_KINDS)[number];

/** A counter reading at a point whose station is known. */
export interface Anchor {
  readonly id: string;
  readonly runId: string;
  readonly kind: AnchorKind;
  readonly counter: Cft;
  readonly station: Cft;
  readonly note: string;
}

export const OBSCURED_BY = ["under-water", "blocked", "not-in-view", "not-recorded"] as const;
export type ObscuredBy = (typeof OBSCURED_BY)[number];

/** A stretch of the run's counter where the camera went or should have gone but could not see. */
export interface Gap {
  readonly id: string;
  readonly runId: string;
  readonly fromCounter: Cft;
  readonly toCounter: Cft;
  readonly cause: ObscuredBy;
  readonly note: string;
}

export const OBSERVATION_KINDS = [
  "tie-in",
  "fault",
  "material",
  "water",
  "deposit",
  "blockage",
  "bend",
  "cleanout",
  "crossing",
  "remark",
] as const;
export type ObservationKind = (typeof OBSERVATION_KINDS)[number];

/** Defects in plain words. */
export const FAULTS = [
  "belly",
  "broken",
  "collapsed",
  "crack",
  "deformed",
  "hole",
  "infiltration",
  "offset-joint",
  "open-joint",
  "protruding-tie-in",
  "roots",
  "worn-surface",
] as const;
export type Fault = (typeof FAULTS)[number];

export const DEGREES = ["slight", "medium", "severe"] as const;
/** How bad something is, as the technician put it. */
export type Degree = (typeof DEGREES)[number];

export const READINGS = ["read", "between"] as const;
export type Reading = (typeof READINGS)[number];

/** One thing seen. */
export interface Observation {
  readonly id: string;
  readonly runId: string;
  readonly kind: ObservationKind;
  readonly counter: Cft;
  /** End of a stretch (a belly, roots); null for a point. */
  readonly toCounter: Cft | null;
  /** 1 to 12 as the lens looks, half hours as .5; null where not noted. */
  readonly clock: number | null;
  readonly fault: Fault | null;
  /** Null where nobody said. */
  readonly degree: Degree | null;
  /** Percent of the bore that it takes, as told; null where nobody said. */
  readonly reduction: number | null;
  /** Upstream of a change of material, or of a tie-in's branch. */
  readonly material: Material;
  /** Inches. */
  readonly diameter: number | null;
  readonly fitting: Fitting;
  /** Whether the counter was read out here, or worked out between two readings by time. */
  readonly reading: Reading;
  /** How far off this reading may be either way, where it is known to be less sure than its run. */
  readonly uncertainty: Cft | null;
  /** Seconds into the video. */
  readonly videoSecond: number | null;
  /** A still of it: a stored picture. */
  readonly pictureId: string | null;
  /** Inches of water that stand there, where somebody told: of a belly, or water. */
  readonly waterDepth: number | null;
  /** What the technician said, where it was drafted from a narration. */
  readonly quote: string;
  /** The tie-in of which this is a sighting. */
  readonly tieInId: string | null;
  /** The office's own code, if it uses one. */
  readonly code: string;
  readonly note: string;
}
