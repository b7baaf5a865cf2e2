import type { Day } from "./day.ts";
import { daysBetween, partsOf, weekday } from "./days.ts";

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** So many days on either side of today are near: the weekday says more than the year does. */
const NEAR = 60;

/** `Thursday, December 3` when it is near today, `December 3, 2027` when it is not. */
export function formatDay(day: Day, today: Day): string {
  if (Math.abs(daysBetween(today, day)) > NEAR) return formatDate(day);
  return `${weekday(day)}, ${monthDay(day)}`;
}

/** `December 3, 2026`. */
export function formatDate(day: Day): string {
  return `${monthDay(day)}, ${partsOf(day).year}`;
}

/** `Thursday, December 3, 2026`: for papers that are read long afterwards. */
export function formatFullDay(day: Day): string {
  return `${weekday(day)}, ${formatDate(day)}`;
}

/** `today`, `tomorrow`, `yesterday`; `Thursday` within the week to come; else as `formatDay`. */
export function formatNearDay(day: Day, today: Day): string {
  const ahead = daysBetween(today, day);
  if (ahead === 0) return "today";
  if (ahead === 1) return "tomorrow";
  if (ahead === -1) return "yesterday";
  if (ahead > 0 && ahead < 7) return weekday(day);
  return formatDay(day, today);
}

/** For a narrow column: `today`, `Tuesday`, `Wed, Nov 11`; with the year where it is another one. */
export function formatBriefDay(day: Day, today: Day): string {
  const ahead = daysBetween(today, day);
  if (ahead >= -1 && ahead < 7) return formatNearDay(day, today);
  const { year, month, day: dayOfMonth } = partsOf(day);
  const brief = `${weekday(day).slice(0, 3)}, ${(MONTHS[month - 1] ?? "").slice(0, 3)} ${dayOfMonth}`;
  return year === partsOf(today).year ? brief : `${brief}, ${year}`;
}

/** For the middle of a sentence: `on Thursday, December 3`, but `today` and `tomorrow` bare. */
export function onNearDay(day: Day, today: Day): string {
  const near = Math.abs(daysBetween(today, day)) <= 1;
  return near ? formatNearDay(day, today) : `on ${formatNearDay(day, today)}`;
}

function monthDay(day: Day): string {
  const { month, day: dayOfMonth } = partsOf(day);
  return `${MONTHS[month - 1] ?? ""} ${dayOfMonth}`;
}
