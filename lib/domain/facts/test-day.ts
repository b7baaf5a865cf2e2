import type { Day } from "../time/day.ts";
import type { TestResult } from "./test.ts";

export const FLOORS = ["outside", "basement", "first-floor", "upper-floor"] as const;
export type Floor = (typeof FLOORS)[number];

/** Drains that dye is put into. */
export const DRAINS = [
  "floor-drain",
  "laundry-sink",
  "toilet",
  "kitchen-sink",
  "bathroom-sink",
  "tub-or-shower",
  "yard-drain",
  "downspout",
  "sump",
] as const;
export type Drain = (typeof DRAINS)[number];

/** One drain on one floor; each floor that has drains is tested. */
export interface FloorDrain {
  readonly floor: Floor;
  readonly drain: Drain;
}

/** The plan of one day of dye tests: one address after another, one color at a time. */
export interface TestDay {
  readonly id: string;
  readonly on: Day;
  /** An address whose tie-in is known: dye from there shows that the watcher would see it. */
  readonly controlPropertyId: string | null;
  readonly stops: readonly TestStop[];
  /** The day on which whoever runs the sewer or the plant was told of the dye; null: not told. */
  readonly plantToldOn: Day | null;
  /** Who was told, by whom. */
  readonly plantTold: string;
  readonly note: string;
  readonly plannedBy: string;
  readonly plannedOn: Day;
}

/** One dosing, at one address or into an access of the pipe itself. */
export interface TestStop {
  /** Null: the pipe itself is dosed, at `pointId`. */
  readonly propertyId: string | null;
  readonly unitId: string | null;
  /** The cleanout or manhole that is dosed to see that dye passes the camera; null for an address. */
  readonly pointId: string | null;
  /** The tie-ins that are watched: all in view of the one place where the camera lies. */
  readonly tieInIds: readonly string[];
  /** The drains that are dosed, floor by floor. */
  readonly drains: readonly FloorDrain[];
  /** Another drain, in words. */
  readonly fixture: string;
  readonly colour: string;
  /** How much dye, in words. */
  readonly dose: string;
  /** Water that is run after it at each drain, in gallons; null: not said. */
  readonly flushGallons: number | null;
  /** Local clock time, `09:40`. */
  readonly startsAt: string;
  readonly waitMinutes: number;
  /** Minutes of clear water afterwards, until no color is left for the next dosing. */
  readonly rinseMinutes: number;
  /** Of a dosing of the pipe itself: whether dye was seen to pass the camera; null: not yet told. */
  readonly passed: TestResult | null;
}
