import { CLOCK_EVENTS } from "./clock-rule.ts";
import {
  day,
  idOf,
  late,
  maybe,
  oneOf,
  quantity,
  type RowOf,
  ref,
  row,
  timeOfDay,
  usually,
  words,
} from "./field.ts";

export const PERMIT_KINDS = ["side-sewer", "street-use", "connection", "other"] as const;
export type PermitKind = (typeof PERMIT_KINDS)[number];

export const PERMIT_STATES = [
  "drafting",
  /** Work that could not wait began with the authority’s leave; the permit is applied for afterward. */
  "emergency",
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
  "as-built-accepted",
  "final",
  "expired",
  "extension-asked",
  "extended",
  "withdrawn",
  "superseded",
] as const;
export type PermitState = (typeof PERMIT_STATES)[number];

export type PermitStep = RowOf<typeof PERMIT_STEP>;

export const PERMIT_STEP = row({
  one: "permit step",
  fields: {
    permitId: ref("permits"),
    state: oneOf(PERMIT_STATES),
    on: day,
    by: words,
    note: words,
    /** What went to the authority with this step, as it was sent; null: nothing that is on file. */
    uploadId: late(maybe(ref("uploads"))),
  },
});

export type Permit = RowOf<typeof PERMIT>;

export const PERMIT = row({
  one: "permit",
  saved: "office",
  fields: {
    kind: usually(oneOf(PERMIT_KINDS), "side-sewer"),
    number: words,
    /** As printed on the permit, if it prints one; it outranks the computed day. */
    expiresOn: maybe(day),
    /** The day on which its card was posted on site; null: not posted, as far as anybody said. */
    postedOn: late(maybe(day)),
    postedBy: late(words),
    /** Where on site the card hangs. */
    postedPlace: late(words),
    note: words,
  },
});

/** What the office says of one requirement. */
export const REQUIREMENT_STATES = ["in-hand", "missing", "does-not-apply"] as const;
export type RequirementState = (typeof REQUIREMENT_STATES)[number];

export type RequirementMark = RowOf<typeof REQUIREMENT_MARK>;

export const REQUIREMENT_MARK = row({
  one: "requirement",
  fields: {
    requirementId: idOf("requirement"),
    state: oneOf(REQUIREMENT_STATES),
    uploadId: maybe(ref("uploads")),
    note: words,
  },
});

/** With what the dig area is marked in white before the call. */
const WHITE_LINE_WAYS = ["paint", "flags", "paint-and-flags", "stakes"] as const;
export type WhiteLineWay = (typeof WHITE_LINE_WAYS)[number];

export type LocateTicket = RowOf<typeof LOCATE_TICKET>;

export const LOCATE_TICKET = row({
  one: "locate ticket",
  saved: "office",
  fields: {
    number: words,
    calledOn: day,
    /** Time of the call as `16:05`; empty where none is noted. */
    calledAt: late(timeOfDay),
    workBeginsOn: maybe(day),
    /** Time at which the work begins, as `07:00`; empty where none is noted. */
    workBeginsAt: late(timeOfDay),
    /** The day on which the dig area was marked in white; null: not noted. */
    whiteLinedOn: late(maybe(day)),
    whiteLinedBy: late(words),
    whiteLinedHow: late(maybe(oneOf(WHITE_LINE_WAYS))),
    /** A picture of the marks; null: none on file. */
    whiteLinePhotoId: late(maybe(ref("uploads"))),
    note: words,
  },
});

const INSPECTION_RESULTS = ["booked", "passed", "passed-in-part", "failed", "cancelled"] as const;
export type InspectionResult = (typeof INSPECTION_RESULTS)[number];

export type Inspection = RowOf<typeof INSPECTION>;

export const INSPECTION = row({
  one: "inspection",
  saved: "office",
  fields: {
    permitId: ref("permits"),
    title: words,
    bookedFor: day,
    /** Time as `10:30`; empty where none is noted. */
    bookedAt: late(timeOfDay),
    /** The end of the window as `12:00`; empty where none is given. */
    bookedUntil: late(timeOfDay),
    /** The authority’s kind of inspection; null: none of its list. */
    kindId: late(maybe(idOf("the kind of inspection"))),
    inspector: words,
    result: usually(oneOf(INSPECTION_RESULTS), "booked"),
    /** Pressure of a test in hundredths of a psi, at its start and at its end. */
    startPsi: late(maybe(quantity)),
    endPsi: late(maybe(quantity)),
    /** How long a test ran, in hundredths of a minute. */
    minutes: late(maybe(quantity)),
    /** Who saw the test. */
    witness: late(words),
    /** Hours of the inspector that the authority charges, in hundredths. */
    hours: late(maybe(quantity)),
    note: words,
  },
});

/** A happening that starts clocks and that no other fact records (an order, a pause of drains …). */
export type DatedEvent = RowOf<typeof DATED_EVENT>;

export const DATED_EVENT = row({
  one: "event",
  saved: "office",
  fields: {
    event: oneOf(CLOCK_EVENTS),
    on: day,
    /** Time of day as `16:05`, for rules in hours; empty where none is noted. */
    at: late(timeOfDay),
    /** When it ends, as `15:30`, for what has hours; empty where none is noted. */
    until: late(timeOfDay),
    /** Its last day, for what goes over several; null: the one day. */
    lastOn: maybe(day),
    /** The authority's number or reference, which letters print. */
    reference: late(words),
    /** The office's own; prints nowhere. */
    note: words,
  },
});
