import type { Day } from "../time/day.ts";

export const PERMIT_KINDS = ["side-sewer", "street-use", "connection", "other"] as const;
export type PermitKind = (typeof PERMIT_KINDS)[number];

export const PERMIT_STATES = [
  "drafting",
  "waiting-on-signatures",
  "submitted",
  "returned-incomplete",
  "in-review",
  "corrections",
  "denied",
  "appealed",
  "approved-fees-due",
  "issued",
  "working",
  "inspection-requested",
  "inspection-failed",
  "passed-may-backfill",
  "as-built-submitted",
  "as-built-rejected",
  "final",
  "expired",
  "extended",
  "withdrawn",
  "superseded",
] as const;
export type PermitState = (typeof PERMIT_STATES)[number];

export interface PermitStep {
  readonly id: string;
  readonly permitId: string;
  readonly state: PermitState;
  readonly on: Day;
  readonly by: string;
  readonly note: string;
}

export interface Permit {
  readonly id: string;
  readonly kind: PermitKind;
  readonly number: string;
  /** As printed on the permit, if it prints one; it outranks the computed day. */
  readonly expiresOn: Day | null;
  readonly note: string;
}

/** What the office says of one requirement. */
export const REQUIREMENT_STATES = ["in-hand", "missing", "does-not-apply"] as const;
export type RequirementState = (typeof REQUIREMENT_STATES)[number];

export interface RequirementMark {
  readonly id: string;
  readonly requirementId: string;
  readonly state: RequirementState;
  readonly uploadId: string | null;
  readonly note: string;
}

export interface LocateTicket {
  readonly id: string;
  readonly number: string;
  readonly calledOn: Day;
  /** Time of the call as `16:05`; empty where none is noted. */
  readonly calledAt: string;
  readonly workBeginsOn: Day | null;
  /** Time at which the work begins, as `07:00`; empty where none is noted. */
  readonly workBeginsAt: string;
  readonly note: string;
}

export const INSPECTION_RESULTS = ["booked", "passed", "failed", "cancelled"] as const;
export type InspectionResult = (typeof INSPECTION_RESULTS)[number];

export interface Inspection {
  readonly id: string;
  readonly permitId: string;
  readonly title: string;
  readonly bookedFor: Day;
  /** Time as `10:30`; empty where none is noted. */
  readonly bookedAt: string;
  readonly inspector: string;
  readonly result: InspectionResult;
  readonly note: string;
}

/** A happening that starts clocks and that no other fact records (an order, a pause of drains …). */
export interface DatedEvent {
  readonly id: string;
  readonly event: import("./clock-rule.ts").ClockEvent;
  readonly on: Day;
  /** Time of day as `16:05`, for rules in hours; empty where none is noted. */
  readonly at: string;
  /** When it ends, as `15:30`, for what has hours; empty where none is noted. */
  readonly until: string;
  /** Its last day, for what goes over several; null: the one day. */
  readonly lastOn: Day | null;
  /** The authority's number or reference, which letters print. */
  readonly reference: string;
  /** The office's own; prints nowhere. */
  readonly note: string;
}
