import type { Day } from "../calendar/day.ts";

/** What a hold stops. */
export const HOLD_STOPS = [
  "capping",
  "lining",
  "final-split",
  "demand",
  "submission",
  "digging",
] as const;
export type HoldStop = (typeof HOLD_STOPS)[number];

const HOLD_CAUSES = [
  "tie-in-owner-unknown",
  "tie-in-undecided",
  "ruling-not-done",
  "entry-undecided",
  "entry-not-inspected",
  "station-relative-only",
  "responsibility-unclear",
  "easement-missing",
  "crossing-seen",
] as const;
export type HoldCause = (typeof HOLD_CAUSES)[number];

/** A hard stop. Computed from the facts; lifted by its cause being settled, or by a waiver. */
export interface Hold {
  /** Stable over recomputation: `cause:subject`. */
  readonly key: string;
  readonly cause: HoldCause;
  readonly subjectId: string;
  readonly subjectLabel: string;
  readonly stops: readonly HoldStop[];
  readonly sentence: string;
  /** What would lift it. */
  readonly closes: string;
  readonly waiver: Waiver | null;
}

/** A named person's word that work may go on despite a hold. Prints in the packet. */
export interface Waiver {
  readonly id: string;
  readonly holdKey: string;
  readonly reason: string;
  readonly by: string;
  readonly on: Day;
}
