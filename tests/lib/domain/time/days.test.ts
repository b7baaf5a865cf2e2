import fc from "fast-check";
import { expect, test } from "vitest";
import type { Day } from "#lib/domain/time/day.ts";
import {
  addDays,
  addMonths,
  dayAt,
  daysBetween,
  isDay,
  WEEKDAYS,
  weekday,
} from "#lib/domain/time/days.ts";

const aDay = fc.integer({ min: -60_000, max: 60_000 }).map((ahead) => addDays("2026-03-08", ahead));
const aCount = fc.integer({ min: -5_000, max: 5_000 });

test("addDays() goes over the ends of months, years and leap Februaries", () => {
  expect(addDays("2026-12-31", 1)).toBe("2027-01-01");
  expect(addDays("2028-02-28", 1)).toBe("2028-02-29");
  expect(addDays("2027-02-28", 1)).toBe("2027-03-01");
  expect(addDays("2100-02-28", 1)).toBe("2100-03-01");
  expect(addDays("2026-03-01", -1)).toBe("2026-02-28");
});

test("addDays() takes back what it added, and daysBetween() finds it", () => {
  fc.assert(
    fc.property(aDay, aCount, (day, count) => {
      const moved = addDays(day, count);
      expect(addDays(moved, -count)).toBe(day);
      expect(daysBetween(day, moved)).toBe(count);
    }),
  );
});

test("addDays() keeps the order of days, as their texts do", () => {
  fc.assert(
    fc.property(aDay, fc.integer({ min: 1, max: 5_000 }), (day, count) => {
      expect(addDays(day, count) > day).toBe(true);
    }),
  );
});

test("addDays() gives a day of the calendar, a week later on the same weekday", () => {
  fc.assert(
    fc.property(aDay, (day) => {
      expect(isDay(day)).toBe(true);
      expect(weekday(addDays(day, 7))).toBe(weekday(day));
    }),
  );
});

// Days have no hours, so the nights on which US clocks change are days like any other.
test.each([
  ["2026-03-07", "2026-03-09"],
  ["2026-10-31", "2026-11-02"],
])("daysBetween() %s and %s is 2 although the clocks change in between", (from, to) => {
  expect(daysBetween(from, to)).toBe(2);
  expect(addDays(from, 2)).toBe(to);
});

test("addMonths() stays within the month that it reaches", () => {
  expect(addMonths("2026-01-31", 1)).toBe("2026-02-28");
  expect(addMonths("2028-01-31", 1)).toBe("2028-02-29");
  expect(addMonths("2026-08-31", -6)).toBe("2026-02-28");
  expect(addMonths("2026-11-30", 12)).toBe("2027-11-30");
});

test("weekday() names the day", () => {
  const week: Day[] = [0, 1, 2, 3, 4, 5, 6].map((ahead) => addDays("2026-11-23", ahead));
  expect(week.map(weekday)).toEqual([...WEEKDAYS]);
});

test.each([
  "2026-02-29",
  "2026-13-01",
  "2026-1-01",
  "26-01-01",
  "2026-01-01T00:00",
  "",
  "+002026-01-01",
])("isDay() refuses %j", (text) => {
  expect(isDay(text)).toBe(false);
});

test("addDays() throws on a text that is no day", () => {
  expect(() => addDays("tomorrow", 1)).toThrow(
    'Cannot read a day: expected yyyy-mm-dd, got "tomorrow"',
  );
  expect(() => addDays("2026-02-30", 1)).toThrow(RangeError);
});

test("dayAt() is the office's day, not the one in UTC", () => {
  expect(dayAt("2026-11-26T02:00:00.000Z", "America/Los_Angeles")).toBe("2026-11-25");
  expect(dayAt("2026-11-26T02:00:00.000Z", "UTC")).toBe("2026-11-26");
});
