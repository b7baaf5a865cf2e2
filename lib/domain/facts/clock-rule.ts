import type { Day } from "../time/day.ts";

export interface Holiday {
  readonly id: string;
  readonly authorityId: string;
  readonly day: Day;
  readonly name: string;
  /** Where the day is from: a statute, a state's list with its edition, or the office's own words. */
  readonly source: string;
}

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
  "authority-order",
  "tenant-entry",
  "dye-test",
  "drains-paused",
  "inspection-booked",
  "work-ends",
] as const;
export type ClockEvent = (typeof CLOCK_EVENTS)[number];

export const CLOCK_UNITS = ["calendar-days", "business-days", "hours", "months"] as const;
export type ClockUnit = (typeof CLOCK_UNITS)[number];

export const ROLLS = ["none", "forwards", "backwards"] as const;
export type Roll = (typeof ROLLS)[number];

/** What the end of the count means. */
export const CLOCK_MEANINGS = ["due-by", "not-before", "not-after", "expires"] as const;
export type ClockMeaning = (typeof CLOCK_MEANINGS)[number];

/** A rule that makes a deadline or opens a window. Data, with its source; never code. */
export interface ClockRule {
  readonly id: string;
  readonly authorityId: string;
  readonly title: string;
  readonly event: ClockEvent;
  readonly count: number;
  readonly unit: ClockUnit;
  /** Counted forwards from the event, or backwards before it. */
  readonly way: "after" | "before";
  /** The day of the event counts as day 1 (most rules: no). */
  readonly countsEventDay: boolean;
  /** Full business days must have passed: the window opens the day after the last one. */
  readonly fullDays: boolean;
  readonly roll: Roll;
  /** Calendar days added when the notice went by mail, after the roll. */
  readonly mailDays: number;
  readonly meaning: ClockMeaning;
  readonly citation: string;
  readonly asOf: Day;
}
