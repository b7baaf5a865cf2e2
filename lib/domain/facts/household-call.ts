import { day, oneOf, type RowOf, ref, row, words } from "./field.ts";

/** What a household with a need is called about before it happens. */
export const CALL_PURPOSES = ["drain-pause", "test-visit"] as const;
export type CallPurpose = (typeof CALL_PURPOSES)[number];

export const CALL_OUTCOMES = ["agreed", "not-agreed", "not-reached"] as const;
export type CallOutcome = (typeof CALL_OUTCOMES)[number];

/** One call to a household about one day: who called, when, and what was agreed. */
export type HouseholdCall = RowOf<typeof HOUSEHOLD_CALL>;

export const HOUSEHOLD_CALL = row({
  one: "call",
  fields: {
    partyId: ref("parties"),
    propertyId: ref("properties"),
    purpose: oneOf(CALL_PURPOSES),
    /** The day that was spoken about. */
    forDay: day,
    outcome: oneOf(CALL_OUTCOMES),
    /** What was agreed, or what was said. */
    words,
    calledBy: words,
    calledOn: day,
    /** The need as it was known then: another need wants another call. */
    needs: words,
  },
});
