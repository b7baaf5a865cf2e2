import { Temporal } from "temporal-polyfill";
import type { Day, Instant } from "./day.ts";

/**
 * Sums on days without times. No clock, no zone: whether summer time begins or ends in between
 * cannot matter. A text that is no day throws; use `isDay` on what people type.
 */

export const WEEKDAYS = [
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
  "Sunday",
] as const;
export type Weekday = (typeof WEEKDAYS)[number];

const EPOCH: Day = "1970-01-01";

/** Answers of a kind that are kept; with one more all of them are let go. */
const MOST_KEPT = 4_000;

/**
 * Keeps what came of each key: a file asks for the same few days thousands of times, and each answer
 * of the calendar takes longer than reading it here. `key` says everything that `work` is given.
 */
function kept<Given extends readonly unknown[], T>(
  work: (key: string, ...given: Given) => T,
): (key: string, ...given: Given) => T {
  const answers = new Map<string, T>();
  return (key, ...given) => {
    const known = answers.get(key);
    if (known !== undefined) return known;
    const answer = work(key, ...given);
    if (answers.size >= MOST_KEPT) answers.clear();
    answers.set(key, answer);
    return answer;
  };
}

/** Whether the text is a day of the calendar, written `yyyy-mm-dd`: `2026-02-29` is not. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  try {
    Temporal.PlainDate.from(text, { overflow: "reject" });
    return true;
  } catch {
    return false;
  }
}

/** The day `count` days later; earlier when negative. */
export function addDays(day: Day, count: number): Day {
  return added(`${count} ${day}`, day, count);
}

const added = kept((_key, day: Day, count: number) => parsed(day).add({ days: count }).toString());

/** The same day of the month `count` months later, or that month's last: January 31 + 1 is February 28. */
export function addMonths(day: Day, count: number): Day {
  return parsed(day).add({ months: count }, { overflow: "constrain" }).toString();
}

/** How many days `to` is later than `from`; negative when it is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return sinceEpoch(to, to) - sinceEpoch(from, from);
}

const sinceEpoch = kept(
  (_key, day: Day) => parsed(EPOCH).until(parsed(day), { largestUnit: "days" }).days,
);

/** `2026-11-26` is a `Thursday`. */
export function weekday(day: Day): Weekday {
  const name = WEEKDAYS[parsed(day).dayOfWeek - 1];
  if (name === undefined) throw new RangeError(`Cannot name the weekday of ${day}`);
  return name;
}

/** The earlier of two days. */
export function earlierOf(one: Day, other: Day): Day {
  if (other < one) return other;
  return one;
}

/** `yyyy-mm-dd` from its numbers; throws where there is no such day. */
export function dayOf(year: number, month: number, day: number): Day {
  return written(`${year} ${month} ${day}`, { year, month, day });
}

const written = kept((_key, date: { year: number; month: number; day: number }) =>
  Temporal.PlainDate.from(date, { overflow: "reject" }).toString(),
);

/** Year, month (1 to 12) and day of the month. */
export function partsOf(day: Day): { year: number; month: number; day: number } {
  const date = parsed(day);
  return { year: date.year, month: date.month, day: date.day };
}

/** The third Monday of a month and the like. */
export function nthOf(year: number, month: number, [nth, on]: readonly [number, Weekday]): Day {
  const first = dayOf(year, month, 1);
  const ahead = (WEEKDAYS.indexOf(on) - WEEKDAYS.indexOf(weekday(first)) + 7) % 7;
  return addDays(first, ahead + (nth - 1) * 7);
}

/** Which day it was in a zone (an IANA name) at that moment: an evening in Seattle is tomorrow in UTC. */
export function dayAt(instant: Instant, zone: string): Day {
  return Temporal.Instant.from(instant).toZonedDateTimeISO(zone).toPlainDate().toString();
}

function parsed(day: Day): Temporal.PlainDate {
  return parsedOnce(day, day);
}

const parsedOnce = kept((_key, day: Day) => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day))
    throw new RangeError(`Cannot read a day: expected yyyy-mm-dd, got "${day}"`);
  return Temporal.PlainDate.from(day, { overflow: "reject" });
});
