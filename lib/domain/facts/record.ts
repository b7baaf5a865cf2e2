import { day, feet, maybe, oneOf, type RowOf, ref, row, usually, words } from "./field.ts";
import { pipe, SIDES } from "./line.ts";

const RECORD_KINDS = ["card", "drawing", "permit", "as-built", "other"] as const;
export type RecordKind = (typeof RECORD_KINDS)[number];

const MEASURED_FROM = ["main", "upper-end", "unknown"] as const;
export type MeasuredFrom = (typeof MEASURED_FROM)[number];

/** A card, drawing or permit that the authority keeps. */
export type PermitRecord = RowOf<typeof PERMIT_RECORD>;

export const PERMIT_RECORD = row({
  one: "permit record",
  most: 12,
  saved: "office",
  fields: {
    kind: usually(oneOf(RECORD_KINDS), "card"),
    title: words,
    number: words,
    /** As written on it; cards are often dated by year alone: `1958` or `1958-04-12`. */
    dated: words,
    /** Where its distances start; one that nobody read off the record places nothing. */
    measuredFrom: usually(oneOf(MEASURED_FROM), "unknown"),
    /** Length of the line on the record, for stations measured from the upper end. */
    length: maybe(feet),
    obtainedOn: maybe(day),
    uploadId: maybe(ref("uploads")),
    note: words,
  },
});

/** One connection that a record shows. */
export type RecordEntry = RowOf<typeof RECORD_ENTRY>;

export const RECORD_ENTRY = row({
  one: "record entry",
  most: 160,
  saved: "office",
  fields: {
    recordId: ref("records", "record"),
    /** As on the record: `House 14`. */
    label: words,
    /** Distance on the record, in the record's own direction; null where it gives none. */
    distance: maybe(feet),
    /** How far off that distance may be, as written (`about 21`, `20–22`) or judged; null: not said. */
    uncertainty: maybe(feet),
    side: usually(oneOf(SIDES), "unknown"),
    ...pipe(),
    propertyId: maybe(ref("properties")),
    /** Set when a person has explained an entry that no tie-in answers to. */
    explanation: words,
    explainedBy: words,
    explainedOn: maybe(day),
    note: words,
  },
});
