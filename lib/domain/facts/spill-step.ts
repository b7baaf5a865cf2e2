import type { Day } from "../time/day.ts";

export const SPILL_STEP_KINDS = [
  "known",
  "office-called",
  "crew-on-site",
  "flow-stopped",
  "reported",
  "cleaned-up",
] as const;
export type SpillStepKind = (typeof SPILL_STEP_KINDS)[number];

/** One thing that happened about a spill, when it happened: all that a letter may say of it. */
export interface SpillStep {
  readonly id: string;
  readonly kind: SpillStepKind;
  readonly on: Day;
  /** Local time as `16:05`; empty where none is noted. */
  readonly at: string;
  /** `known`: where sewage came out. `reported`: to whom. */
  readonly place: string;
  /** `reported`: the number that was given. */
  readonly number: string;
  /** `known`: about how much, in gallons; null where nobody can say. */
  readonly gallons: number | null;
  /** `known`: what it reached, such as a street drain or a creek; empty where nothing is known. */
  readonly reached: string;
  /** The office's own; prints nowhere. */
  readonly note: string;
}
