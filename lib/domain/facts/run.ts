import {
  clock,
  day,
  decimal,
  feet,
  inches,
  late,
  maybe,
  oneOf,
  type RowOf,
  ref,
  row,
  signedFeet,
  usually,
  words,
} from "./field.ts";
import { FITTINGS, MATERIALS } from "./line.ts";

export const DIRECTIONS = ["upstream", "downstream"] as const;
export type Direction = (typeof DIRECTIONS)[number];

export const FOOTAGE_FROM = ["access", "main"] as const;
/** What a run's footage is measured from: where the camera went in, or the main connection. */
export type FootageFrom = (typeof FOOTAGE_FROM)[number];

export const SELF_LEVELING = ["yes", "no", "unknown"] as const;
/** Whether the camera's head keeps its picture upright; one that turns shows no true clock. */
export type SelfLeveling = (typeof SELF_LEVELING)[number];

const ANSWERS = ["yes", "no", "cannot-tell"] as const;
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
export type Run = RowOf<typeof RUN>;

export const RUN = row({
  one: "run",
  most: 60,
  saved: "field",
  fields: {
    name: words,
    ranOn: day,
    operator: words,
    /** Where the camera went in. */
    accessPoint: words,
    /** Which way the lens looks; clock positions, left and right are as it looks. */
    looks: oneOf(DIRECTIONS),
    /**
     * `access`: the footage grows with the way from where the camera went in. `main`: it is 0 at the
     * main connection and grows upstream, whichever way the lens looks.
     */
    measuredFrom: late(usually(oneOf(FOOTAGE_FROM), "access")),
    selfLeveling: late(usually(oneOf(SELF_LEVELING), "unknown")),
    /** What the counter's zero was set at, in words. */
    zeroAt: words,
    /** Counter readings where looking began and ended. */
    fromCounter: usually(signedFeet, 0),
    toCounter: maybe(signedFeet),
    ended: late(usually(oneOf(RUN_ENDS), "unknown")),
    /** Anything that crosses the pipe, such as a gas line bored through it. */
    crossingSeen: usually(oneOf(ANSWERS), "cannot-tell"),
    /** Overrides the default uncertainty (1 ft or 0.5 %), if a person set one. */
    uncertainty: maybe(feet),
    note: words,
  },
});

const ANCHOR_KINDS = [
  "main-connection",
  "surface-locate",
  "cleanout",
  "material-change",
  "property-line",
  "settled-tie-in",
] as const;
export type AnchorKind = (typeof ANCHOR_KINDS)[number];

/** A counter reading at a point whose station is known. */
export type Anchor = RowOf<typeof ANCHOR>;

export const ANCHOR = row({
  one: "anchor",
  most: 300,
  saved: "field",
  fields: {
    runId: ref("runs"),
    kind: oneOf(ANCHOR_KINDS),
    counter: signedFeet,
    station: feet,
    note: words,
  },
});

const OBSCURED_BY = ["under-water", "blocked", "not-in-view", "not-recorded"] as const;
export type ObscuredBy = (typeof OBSCURED_BY)[number];

/** A stretch of the run's counter where the camera went or should have gone but could not see. */
export type Gap = RowOf<typeof GAP>;

export const GAP = row({
  one: "gap",
  saved: "field",
  fields: {
    runId: ref("runs"),
    fromCounter: signedFeet,
    toCounter: signedFeet,
    cause: oneOf(OBSCURED_BY),
    note: words,
  },
});

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

const READINGS = ["read", "between"] as const;
export type Reading = (typeof READINGS)[number];

/** One thing seen. */
export type Observation = RowOf<typeof OBSERVATION>;

export const OBSERVATION = row({
  one: "observation",
  most: 2_000,
  saved: "field",
  fields: {
    runId: ref("runs"),
    kind: oneOf(OBSERVATION_KINDS),
    counter: signedFeet,
    /** End of a stretch (a belly, roots); null for a point. */
    toCounter: maybe(signedFeet),
    /** 1 to 12 as the lens looks, half hours as .5; null where not noted. */
    clock: maybe(clock),
    fault: maybe(oneOf(FAULTS)),
    /** Null where nobody said. */
    degree: maybe(oneOf(DEGREES)),
    /** Percent of the bore that it takes, as told; null where nobody said. */
    reduction: maybe(decimal(100)),
    /** Upstream of a change of material, or of a tie-in's branch. */
    material: usually(oneOf(MATERIALS), "unknown"),
    /** Inches. */
    diameter: maybe(inches),
    fitting: usually(oneOf(FITTINGS), "unknown"),
    /** Whether the counter was read out here, or worked out between two readings by time. */
    reading: late(usually(oneOf(READINGS), "read")),
    /** How far off this reading may be either way, where it is known to be less sure than its run. */
    uncertainty: maybe(feet),
    /** Seconds into the video. */
    videoSecond: maybe(decimal(1_000_000)),
    /** A still of it: a stored picture. */
    pictureId: maybe(ref("uploads")),
    /** Inches of water that stand there, where somebody told: of a belly, or water. */
    waterDepth: maybe(inches),
    /** What the technician said, where it was drafted from a narration. */
    quote: late(words),
    /** The tie-in of which this is a sighting. */
    tieInId: maybe(ref("tieIns")),
    /** The office's own code, if it uses one. */
    code: words,
    note: words,
  },
});
