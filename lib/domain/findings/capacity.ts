import type { LevelMethod } from "../facts/capacity.ts";
import type { Material } from "../facts/line.ts";
import type { PlumbingCode, SlopeName } from "../facts/plumbing-code.ts";
import type { Cft } from "../length/station.ts";
import type { Stretch } from "../length/stretch.ts";

/** Stands under the words “Not a design” on every page and sheet of such results; none may leave it out. */
export const NOT_A_DESIGN =
  "Measurements and counts entered here are compared with code tables and a formula. The authority’s adopted code governs, and design is an engineer’s job.";

/** A level as it is used: how far it may be off, and what it says of the invert. */
export interface LevelFinding {
  readonly levelId: string;
  readonly station: Cft;
  readonly ground: Cft | null;
  /** From the ground down to the invert. */
  readonly depth: Cft | null;
  /** Null where only a depth is known. */
  readonly invert: Cft | null;
  readonly method: LevelMethod;
  /** Either way. */
  readonly uncertainty: Cft;
  /** Slopes are taken from it; false where it says no invert, or a surer one lies at the station. */
  readonly used: boolean;
  /** What is wanting or contradicts itself; empty where nothing does. */
  readonly caution: string;
}

/** `falls-back`: sewage would have to run uphill, even at the best of the uncertainty. */
export type SlopeVerdict =
  | "meets"
  | "too-flat"
  | "falls-back"
  | "cannot-be-told"
  /** Water stands in it: the average says nothing of the slope where it stands. */
  | "average-only"
  | "nothing-to-test";

/** The slope between two neighboring levels. Slopes are feet per foot, rising upstream. */
/** Where water stood in the pipe. */
export interface StandingWater extends Stretch {
  /** Inches, as told; the deepest of those told. Null where nobody said. */
  readonly depth: number | null;
}

export interface SlopeFinding {
  readonly from: Cft;
  readonly to: Cft;
  /** How much higher the upper invert is; below zero where the pipe falls back. */
  readonly fall: Cft;
  /** Of the fall, either way: both levels off by their most, in opposite directions. */
  readonly uncertainty: Cft;
  readonly slope: number;
  readonly low: number;
  readonly high: number;
  /** The minimum that it is held against; null while none is chosen. */
  readonly against: SlopeName | null;
  readonly verdict: SlopeVerdict;
  /** Where water stood between the two levels. */
  readonly water: readonly StandingWater[];
  readonly sentence: string;
}

/** Drainage fixture units that pass a reach, as far as they are counted. */
export interface Load {
  /** At least so many. */
  readonly least: number;
  /** At most; null while somebody's fixtures are not counted. */
  readonly most: number | null;
  readonly parts: readonly {
    readonly propertyId: string;
    readonly label: string;
    readonly units: number;
    /** Some of its tie-ins join below: not all of this may drain through here. */
    readonly partly: boolean;
  }[];
  /** Whose fixtures are not counted, by name; an unknown owner by the tie-in. */
  readonly uncounted: readonly string[];
}

export type LoadVerdict = "within" | "too-much" | "cannot-be-told" | "no-row" | "nothing-counted";

export interface LoadFinding {
  readonly load: Load;
  /** What the table allows at the flattest and the steepest slope that the levels leave open. */
  readonly most: number | null;
  readonly mostAtSteepest: number | null;
  /** The slope was not measured here: the least slope was taken instead. */
  readonly assumed: boolean;
  readonly verdict: LoadVerdict;
  readonly sentence: string;
}

/** From the least to the most. Feet per second and US gallons per minute. */
export interface FlowRange {
  readonly velocity: readonly [number, number];
  readonly gpm: readonly [number, number];
}

/** What a clean pipe of this size and slope carries by Manning's formula. */
export interface FlowFinding {
  /** Manning's n, from the smoothest to the roughest usual for the material. */
  readonly roughness: readonly [number, number];
  /** At the slope as measured. */
  readonly full: FlowRange;
  readonly half: FlowRange;
  /** Full, over all slopes that the uncertainty leaves open; 0 where it may not fall at all. */
  readonly fullWithin: FlowRange;
  readonly sentence: string;
}

/** A stretch of one pipe, one slope and one load. */
export interface ReachCapacity {
  readonly from: Cft;
  readonly to: Cft;
  readonly material: Material;
  readonly diameter: number | null;
  /** Where water stood, in it or between the levels that it lies between: its slope is not known. */
  readonly water: readonly StandingWater[];
  /** Null where no two levels have it between them. */
  readonly slope: SlopeFinding | null;
  /** Null while no code is chosen. */
  readonly load: LoadFinding | null;
  /** Null where size or slope is unknown, water stands, or the pipe does not fall. */
  readonly flow: FlowFinding | null;
}

/** Something seen in the pipe whose size was noted, and what it leaves of the cross-section. */
export interface Obstruction {
  readonly observationId: string;
  /** Null: relative only. */
  readonly station: Cft | null;
  readonly what: string;
  /** Parts of the whole section from 0 to 1, from the worse reading of the note to the better. */
  readonly left: readonly [number, number];
  readonly sentence: string;
}

/** Load, slope and flow of a line, as far as they are known. */
export interface Capacity {
  readonly code: PlumbingCode | null;
  readonly levels: readonly LevelFinding[];
  readonly slopes: readonly SlopeFinding[];
  readonly reaches: readonly ReachCapacity[];
  readonly obstructions: readonly Obstruction[];
  /** Where the camera saw water stand, or was under it. */
  readonly water: readonly StandingWater[];
  /** What is wanting for an answer on all of the line. */
  readonly wanting: readonly string[];
}
