import type { ClockRule } from "../facts/clock-rule.ts";
import type { Day } from "../time/day.ts";
import { addDays, nthOf, partsOf } from "../time/days.ts";
import { minutesOf, timeOf } from "../time/time-of-day.ts";

/** Where a count of hours ends. */
export interface HoursEnd {
  readonly on: Day;
  /** The time of day as `16:05`; empty: the whole day is free (a window), or still in time (a deadline). */
  readonly at: string;
  /** How it was counted beyond the plain sum, for its sentence; empty where nothing is to say. */
  readonly remark: string;
}

const A_DAY = 1_440;

/**
 * The moment so many hours from an event, on the wall clock where the event was.
 *
 * Without a time of day the event counts as at the end of its day where the count opens a window
 * (`not-before`), and as at the start of its day where the count ends one: neither can come out on
 * the unsafe side. An end at midnight is a whole day. Where summer time begins or ends in between
 * (15 U.S.C. 260a: 2 am on the second Sunday of March and the first of November), an hour goes to the
 * safe side, also where a state keeps no summer time.
 */
export function hoursEnd(
  rule: Pick<ClockRule, "count" | "way" | "meaning">,
  event: Day,
  time: string,
): HoursEnd {
  if (rule.count === 0) return { on: event, at: time, remark: "" };
  const opens = rule.meaning === "not-before";
  const noted = minutesOf(time);
  const from = noted ?? (opens ? A_DAY : 0);
  const plain = from + (rule.way === "before" ? -60 : 60) * rule.count;
  const change = changeBetween(event, Math.min(from, plain), Math.max(from, plain));
  const end = plain + safeHour(rule, change);
  const remarks = [
    noted === null
      ? ` (no time is recorded, so counted from the ${opens ? "end" : "start"} of that day)`
      : "",
    end === plain
      ? ""
      : ` (an hour is ${opens ? "added" : "subtracted"}, since daylight saving time ${change} in between)`,
  ];
  return { ...momentOf(event, end, opens), remark: remarks.join("") };
}

function momentOf(event: Day, minutes: number, opens: boolean): Pick<HoursEnd, "on" | "at"> {
  const days = Math.floor(minutes / A_DAY);
  if (minutes % A_DAY !== 0) return { on: addDays(event, days), at: timeOf(minutes) };
  return { on: addDays(event, opens ? days : days - 1), at: "" };
}

type Change = "begins" | "ends";

/** The change of clocks that the stretch touches, in minutes from the event's midnight; null: none. */
function changeBetween(event: Day, from: number, to: number): Change | null {
  const first = Math.floor(from / A_DAY);
  const last = Math.floor(to / A_DAY);
  for (let ahead = first; ahead <= last; ahead += 1) {
    const change = changeOn(addDays(event, ahead));
    if (change === null) continue;
    const [skipped, again] = CHANGED_HOUR[change];
    if (from < ahead * A_DAY + again && to >= ahead * A_DAY + skipped) return change;
  }
  return null;
}

/** The hour of the day that is left out, or comes twice. */
const CHANGED_HOUR: Record<Change, readonly [number, number]> = {
  begins: [120, 180],
  ends: [60, 120],
};

function changeOn(day: Day): Change | null {
  const { year } = partsOf(day);
  if (day === nthOf(year, 3, [2, "Sunday"])) return "begins";
  return day === nthOf(year, 11, [1, "Sunday"]) ? "ends" : null;
}

/** A day of 25 hours brings a deadline forward, one of 23 puts a window off; backwards the other way round. */
function safeHour(
  { way, meaning }: Pick<ClockRule, "way" | "meaning">,
  change: Change | null,
): number {
  const opens = meaning === "not-before";
  const unsafe: Change = opens === (way === "before") ? "ends" : "begins";
  if (change !== unsafe) return 0;
  return opens ? 60 : -60;
}
