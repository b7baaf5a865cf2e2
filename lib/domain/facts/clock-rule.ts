import { day, late, name, oneOf, type RowOf, row, usually, whole, words, yesNo } from "./field.ts";

export type Holiday = RowOf<typeof HOLIDAY>;

export const HOLIDAY = row({
  one: "holiday",
  fields: {
    /** Whose it is. */
    authorityId: words,
    day,
    name: words,
    /** Where the day is from: a statute, a state's list with its edition, or the office's own words. */
    source: late(words),
  },
});

/** What starts a clock. */
export const CLOCK_EVENTS = [
  "letter-sent",
  "certified-letter-mailed",
  "split-sent",
  "locate-called",
  "work-begins",
  "permit-issued",
  "permit-submitted",
  "corrections-asked",
  "permit-denied",
  "permit-expires",
  "emergency-work",
  "authority-order",
  "tenant-entry",
  "dye-test",
  "drains-paused",
  "inspection-booked",
  "work-ends",
  "drains-back",
  "street-closed",
] as const;
export type ClockEvent = (typeof CLOCK_EVENTS)[number];

export const CLOCK_UNITS = ["calendar-days", "business-days", "hours", "months"] as const;
export type ClockUnit = (typeof CLOCK_UNITS)[number];

export const ROLLS = ["none", "forwards", "backwards"] as const;
export type Roll = (typeof ROLLS)[number];

/** What the end of the count means. */
const CLOCK_MEANINGS = ["due-by", "not-before", "not-after", "expires"] as const;
export type ClockMeaning = (typeof CLOCK_MEANINGS)[number];

/** A rule that makes a deadline or opens a window. Data, with its source; never code. */
export type ClockRule = RowOf<typeof CLOCK_RULE>;

export const CLOCK_RULE = row({
  one: "clock rule",
  fields: {
    authorityId: words,
    title: name("a title"),
    event: oneOf(CLOCK_EVENTS),
    count: whole(10_000),
    unit: oneOf(CLOCK_UNITS),
    /** Counted forwards from the event, or backwards before it. */
    way: usually(oneOf(["after", "before"]), "after"),
    /** The day of the event counts as day 1 (most rules: no). */
    countsEventDay: yesNo,
    /** Full business days must have passed: the window opens the day after the last one. */
    fullDays: yesNo,
    roll: usually(oneOf(ROLLS), "none"),
    /** Calendar days added when the notice went by mail, after the roll. */
    mailDays: usually(whole(365), 0),
    meaning: oneOf(CLOCK_MEANINGS),
    /** Of a call to 811: the dig area has to be marked in white before it, by the same citation. */
    whiteLineFirst: late(yesNo),
    citation: words,
    asOf: day,
  },
});
