import type { Day } from "./day.ts";
import { addDays, weekday } from "./days.ts";
import type { NamedDay } from "./federal-holidays.ts";

/** The days on which an authority's office is shut besides Saturdays and Sundays. */
export type Holidays = readonly (Pick<NamedDay, "day" | "name"> & { readonly source?: string })[];

/** Neither a Saturday, nor a Sunday, nor on the table of holidays. */
export function isBusinessDay(day: Day, holidays: Holidays): boolean {
  return whyNotBusiness(day, holidays) === null;
}

/** `Saturday`, `Sunday` or the holiday's name; null on a business day. */
export function whyNotBusiness(day: Day, holidays: Holidays): string | null {
  const name = weekday(day);
  if (name === "Saturday" || name === "Sunday") return `a ${name}`;
  return holidays.find((holiday) => holiday.day === day)?.name ?? null;
}

/**
 * The `count`-th business day after the day, which itself is not counted; before it when negative.
 * Zero gives the day back, whatever it is. Refuses parts of days.
 */
export function addBusinessDays(day: Day, count: number, holidays: Holidays): Day {
  if (!Number.isInteger(count))
    throw new RangeError(`Cannot count business days: count must be whole, got ${count}`);
  const step = Math.sign(count);
  let reached = day;
  for (let left = Math.abs(count); left > 0; left -= 1) {
    reached = rollDay(addDays(reached, step), step, holidays);
  }
  return reached;
}

/** The day itself if it is a business day, else the next one in the direction of `step`. */
export function rollDay(day: Day, step: number, holidays: Holidays): Day {
  let reached = day;
  while (!isBusinessDay(reached, holidays)) reached = addDays(reached, step < 0 ? -1 : 1);
  return reached;
}

/**
 * How many business days lie after `from`, up to and with `to`; negative when `to` is earlier.
 * From a Monday to its Thursday 3.
 */
export function businessDaysBetween(from: Day, to: Day, holidays: Holidays): number {
  if (to < from) return -businessDaysBetween(to, from, holidays);
  let count = 0;
  for (let day = addDays(from, 1); day <= to; day = addDays(day, 1)) {
    if (isBusinessDay(day, holidays)) count += 1;
  }
  return count;
}
