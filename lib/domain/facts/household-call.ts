import type { Day } from "../time/day.ts";

/** What a household with a need is called about before it happens. */
export const CALL_PURPOSES = ["drain-pause", "test-visit"] as const;
export type CallPurpose = (typeof CALL_PURPOSES)[number];

export const CALL_OUTCOMES = ["agreed", "not-agreed", "not-reached"] as const;
export type CallOutcome = (typeof CALL_OUTCOMES)[number];

/** One call to a household about one day: who called, when, and what was agreed. */
export interface HouseholdCall {
  readonly id: string;
  readonly partyId: string;
  readonly propertyId: string;
  readonly purpose: CallPurpose;
  /** The day that was spoken about. */
  readonly forDay: Day;
  readonly outcome: CallOutcome;
  /** What was agreed, or what was said. */
  readonly words: string;
  readonly calledBy: string;
  readonly calledOn: Day;
  /** The need as it was known then: another need wants another call. */
  readonly needs: string;
}
