import { day, maybe, oneOf, type RowOf, ref, row, scale, signedFeet, words } from "./field.ts";

/**
 * A person's word on the shift and scale between a record and the camera. An accepted one is used
 * instead of what a search would find; a refused one is not proposed again. Kept with its reason.
 */
export type AlignmentDecision = RowOf<typeof ALIGNMENT_DECISION>;

export const ALIGNMENT_DECISION = row({
  one: "alignment",
  fields: {
    /** Null: for all records together. */
    recordId: maybe(ref("records", "record")),
    shift: signedFeet,
    /** Parts per million on top of 1. */
    scale,
    state: oneOf(["accepted", "refused"]),
    reason: words,
    decidedBy: words,
    decidedOn: day,
  },
});

/** The alignment accepted for one record, or for all (null); the last word where there are several. */
export function acceptedAlignment(
  decisions: readonly AlignmentDecision[],
  recordId: string | null,
): AlignmentDecision | null {
  return (
    decisions.findLast((each) => each.recordId === recordId && each.state === "accepted") ?? null
  );
}

/** What was refused for one record, or for all (null). */
export function refusedAlignments(
  decisions: readonly AlignmentDecision[],
  recordId: string | null,
): AlignmentDecision[] {
  return decisions.filter((each) => each.recordId === recordId && each.state === "refused");
}
