import type { Cft } from "../length/station.ts";
import type { Fixture } from "./fixtures.ts";

/** Plumbing fixtures of one kind at a property or in one unit of it. */
export interface FixtureCount {
  readonly id: string;
  readonly propertyId: string;
  readonly unitId: string | null;
  readonly fixture: Fixture;
  readonly count: number;
  readonly note: string;
}

export const LEVEL_METHODS = [
  "locator",
  "level",
  "cleanout-drop",
  "pothole",
  "as-built",
  "other",
] as const;
export type LevelMethod = (typeof LEVEL_METHODS)[number];

/** How deep and how high the pipe lies at one station, as somebody measured it. */
export interface Level {
  readonly id: string;
  readonly station: Cft;
  /** Of the ground, above any one datum; null where only the depth is known. */
  readonly ground: Cft | null;
  /** From the ground down to the invert. */
  readonly depth: Cft | null;
  /** Of the invert above the same datum, where it was measured itself. */
  readonly invert: Cft | null;
  readonly method: LevelMethod;
  /** Either way; null: the usual of the method. */
  readonly uncertainty: Cft | null;
  readonly note: string;
}
