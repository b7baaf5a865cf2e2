import type { Cft } from "../length/station.ts";
import type { Day } from "../time/day.ts";

/**
 * A person's word on the shift and scale between a record and the camera. An accepted one is used
 * instead of what a search would find; a refused one is not proposed again. Kept with its reason.
 */
export interface AlignmentDecision {
  readonly id: string;
  /** Null: for all records together. */
  readonly recordId: string | null;
  readonly shift: Cft;
  /** Parts per million on top of 1. */
  readonly scale: number;
  readonly state: "accepted" | "refused";
  readonly reason: string;
  readonly decidedBy: string;
  readonly decidedOn: Day;
}

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
