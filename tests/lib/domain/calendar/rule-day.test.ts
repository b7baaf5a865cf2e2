import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { type ClockCount, dayOfRule, earliestEventFor } from "#lib/domain/calendar/rule-day.ts";
import { CLOCK_UNITS, ROLLS } from "#lib/domain/facts/clock-rule.ts";
import { isBusinessDay } from "#lib/domain/time/business-days.ts";
import { addDays } from "#lib/domain/time/days.ts";
import { federalHolidays } from "#lib/domain/time/federal-holidays.ts";
import { timeOf } from "#lib/domain/time/time-of-day.ts";

const HOLIDAYS = [2025, 2026, 2027, 2028].flatMap(federalHolidays);

const PLAIN: ClockCount = {
  count: 0,
  unit: "calendar-days",
  way: "after",
  countsEventDay: false,
  fullDays: false,
  roll: "none",
  mailDays: 0,
  meaning: "due-by",
};

function counted(rule: Partial<ClockCount>, event: string, mailed = false) {
  return dayOfRule({ ...PLAIN, ...rule }, event, HOLIDAYS, { mailed });
}

test("dayOfRule() says how it counted, with the roll and the days for mail in that order", () => {
  const { on, sentence } = counted(
    { count: 14, roll: "forwards", mailDays: 3 },
    "2026-11-12",
    true,
  );
  expect(on).toBe("2026-11-30");
  expect(sentence).toBe(
    "14 calendar days after Thursday, November 12, 2026 is Thursday, November 26; since that is Thanksgiving Day, moved forward to Friday, November 27; 3 days for mail give Monday, November 30.",
  );
});

test("dayOfRule() rolls again after the days for mail", () => {
  const { on } = counted({ count: 14, roll: "forwards", mailDays: 3 }, "2026-11-04", true);
  expect(on).toBe("2026-11-23");
});

test("dayOfRule() takes the days for mail off a count backwards", () => {
  const rule = { count: 10, way: "before", roll: "backwards", mailDays: 3 } as const;
  expect(counted(rule, "2026-12-14").on).toBe("2026-12-04");
  expect(counted(rule, "2026-12-14", true).on).toBe("2026-12-01");
});

test("dayOfRule() gives the first allowed day after full business days", () => {
  const rule = { count: 2, unit: "business-days", fullDays: true, meaning: "not-before" } as const;
  const { on, sentence } = counted(rule, "2026-11-24");
  expect(on).toBe("2026-11-28");
  expect(sentence).toBe(
    "2 full business days after Tuesday, November 24, 2026 is Friday, November 27; after it has passed is Saturday, November 28.",
  );
  expect(counted({ ...rule, roll: "forwards" }, "2026-11-24").on).toBe("2026-11-30");
});

test("dayOfRule() keeps full business days free before an event too", () => {
  const rule = { count: 2, unit: "business-days", way: "before", fullDays: true } as const;
  expect(counted(rule, "2026-10-09").on).toBe("2026-10-06");
});

test("dayOfRule() counts the event's own day where the rule says so", () => {
  expect(counted({ count: 28, countsEventDay: true }, "2026-10-01").on).toBe("2026-10-28");
  expect(counted({ count: 1, unit: "business-days", countsEventDay: true }, "2026-11-25").on).toBe(
    "2026-11-25",
  );
  expect(counted({ count: 1, unit: "business-days", countsEventDay: true }, "2026-11-26").on).toBe(
    "2026-11-27",
  );
});

// Found by the property below: an hour counted as the event's own day ended the day before it.
test("dayOfRule() ends no count before the event that it follows", () => {
  const own = { countsEventDay: true } as const;
  expect(counted({ ...own, count: 0, unit: "hours" }, "2026-11-25").on).toBe("2026-11-25");
  expect(counted({ ...own, count: 1, unit: "hours" }, "2026-11-25").on).toBe("2026-11-25");
  expect(counted({ ...own, count: 0, unit: "business-days" }, "2026-11-25").on).toBe("2026-11-25");
});

test("dayOfRule() clamps months to the month that they reach", () => {
  expect(counted({ count: 1, unit: "months" }, "2027-01-31").on).toBe("2027-02-28");
  expect(counted({ count: 13, unit: "months" }, "2027-01-31").on).toBe("2028-02-29");
  expect(counted({ count: 6, unit: "months", way: "before" }, "2026-08-31").on).toBe("2026-02-28");
});

// Hours run from a time of day. Where none is noted, the count takes the side that cannot come too
// late: a window opens counted from the day's end, anything due is counted from its start.
test.each([
  [{ count: 24, way: "before" }, "2026-11-30", ""],
  [{ count: 4, way: "before" }, "2026-12-01", "20:00"],
  [{ count: 48, way: "before", meaning: "not-before" }, "2026-12-01", ""],
  [{ count: 24, way: "after" }, "2026-12-02", ""],
  [{ count: 4, way: "after" }, "2026-12-02", "04:00"],
  [{ count: 36, way: "after" }, "2026-12-03", "12:00"],
  [{ count: 72, way: "after" }, "2026-12-04", ""],
  [{ count: 72, way: "after", meaning: "expires" }, "2026-12-04", ""],
  [{ count: 36, way: "after", meaning: "not-before" }, "2026-12-04", "12:00"],
  [{ count: 48, way: "after", meaning: "not-before" }, "2026-12-05", ""],
] as const)("dayOfRule() takes the safe side for %j where no hour is noted", (rule, on, at) => {
  expect(counted({ ...rule, unit: "hours" }, "2026-12-02")).toMatchObject({ on, at });
});

test.each([
  [{ count: 48, meaning: "not-before" }, "16:00", "2026-12-04", "16:00"],
  [{ count: 48 }, "16:00", "2026-12-04", "16:00"],
  [{ count: 24, way: "before" }, "07:00", "2026-12-01", "07:00"],
  [{ count: 8 }, "16:00", "2026-12-02", ""],
  [{ count: 8, meaning: "not-before" }, "16:00", "2026-12-03", ""],
] as const)("dayOfRule() counts %j from %s to the hour", (rule, time, on, at) => {
  expect(at24(rule, "2026-12-02", time)).toMatchObject({ on, at });
});

function at24(rule: Partial<ClockCount>, event: string, at: string) {
  return dayOfRule({ ...PLAIN, ...rule, unit: "hours" }, event, HOLIDAYS, { mailed: false, at });
}

test("dayOfRule() says from which hour it counted, and where it had none", () => {
  const opens = { count: 48, meaning: "not-before" } as const;
  expect(at24(opens, "2026-11-30", "16:00").sentence).toBe(
    "48 hours after 4:00 PM on Monday, November 30, 2026 is 4:00 PM on Wednesday, December 2.",
  );
  expect(at24(opens, "2026-11-30", "").sentence).toBe(
    "48 hours after Monday, November 30, 2026 is Thursday, December 3 (no time is recorded, so counted from the end of that day).",
  );
  expect(at24({ count: 24, way: "before" }, "2026-12-01", "").sentence).toBe(
    "24 hours before Tuesday, December 1, 2026 is the end of Sunday, November 29 (no time is recorded, so counted from the start of that day).",
  );
});

test("dayOfRule() keeps the hour where hours roll off a day that is no business day", () => {
  const rule = { count: 24, way: "before", roll: "backwards" } as const;
  expect(at24(rule, "2026-12-07", "07:00")).toMatchObject({ on: "2026-12-04", at: "07:00" });
  expect(at24(rule, "2026-12-07", "07:00").sentence).toBe(
    "24 hours before 7:00 AM on Monday, December 7, 2026 is 7:00 AM on Sunday, December 6; since that is a Sunday, moved back to 7:00 AM on Friday, December 4.",
  );
});

// On Sunday, November 1, 2026 a day has 25 hours, on March 14, 2027 it has 23.
test.each([
  [{ count: 24 }, "2026-10-31", "2026-11-01", "09:00", "ends"],
  [{ count: 24, meaning: "not-before" }, "2026-10-31", "2026-11-01", "10:00", ""],
  [{ count: 24, meaning: "not-before" }, "2027-03-13", "2027-03-14", "11:00", "begins"],
  [{ count: 24 }, "2027-03-13", "2027-03-14", "10:00", ""],
  [{ count: 24, way: "before" }, "2027-03-14", "2027-03-13", "09:00", "begins"],
  [{ count: 24, way: "before" }, "2026-11-01", "2026-10-31", "10:00", ""],
] as const)(
  "dayOfRule() keeps %j from 10 am on %s safe over a change of clocks",
  (rule, event, on, at, change) => {
    const found = at24(rule, event, "10:00");
    expect(found).toMatchObject({ on, at });
    expect(/daylight saving time (ends|begins)/.exec(found.sentence)?.[1] ?? "").toBe(change);
  },
);

test("dayOfRule() never ends hours later for an hour earlier, and never too late by the true hours", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 120 }),
      fc.integer({ min: 0, max: 1_439 }),
      fc.integer({ min: 0, max: 800 }).map((ahead) => addDays("2026-01-01", ahead)),
      fc.constantFrom("after", "before"),
      fc.constantFrom("due-by", "not-before"),
      (count, minutes, day, way, meaning) => {
        const rule = { count, way, meaning } as const;
        const found = at24(rule, day, timeOf(minutes));
        const start = Temporal.PlainDate.from(day).toZonedDateTime({
          timeZone: "America/Los_Angeles",
          plainTime: timeOf(minutes),
        });
        const truly = start.add({ hours: way === "before" ? -count : count });
        const midnight = { timeZone: "America/Los_Angeles", plainTime: "00:00" };
        const said =
          found.at === ""
            ? Temporal.PlainDate.from(found.on)
                .add({ days: meaning === "not-before" ? 0 : 1 })
                .toZonedDateTime(midnight)
            : Temporal.PlainDate.from(found.on).toZonedDateTime({
                ...midnight,
                plainTime: found.at,
              });
        const ahead = Temporal.ZonedDateTime.compare(said, truly);
        fc.pre(start.toPlainTime().toString({ smallestUnit: "minute" }) === timeOf(minutes));
        expect(meaning === "not-before" ? ahead >= 0 : ahead <= 0).toBe(true);
        expect(Math.abs(said.until(truly).total("hours"))).toBeLessThanOrEqual(1);
      },
    ),
    { numRuns: 600 },
  );
});

test("dayOfRule() cautions where the table knows no holiday of the year that it reaches", () => {
  const { sentence } = counted({ count: 4, unit: "months", roll: "forwards" }, "2028-11-03");
  expect(sentence).toMatch(/ No holidays are entered for 2029\.$/);
  expect(counted({ count: 4, unit: "months" }, "2028-11-03").sentence).not.toMatch(/No holidays/);
});

test("dayOfRule() refuses a count that is negative or not whole", () => {
  expect(() => counted({ count: -1 }, "2026-11-02")).toThrow(
    "Cannot count a rule: count must be whole and >= 0, got -1",
  );
  expect(() => counted({ count: 1.5 }, "2026-11-02")).toThrow(RangeError);
});

const aRule = fc.record({
  count: fc.nat(60),
  unit: fc.constantFrom(...CLOCK_UNITS),
  countsEventDay: fc.boolean(),
  fullDays: fc.boolean(),
  roll: fc.constantFrom(...ROLLS),
  mailDays: fc.nat(5),
});
const aDay = fc.integer({ min: 0, max: 700 }).map((ahead) => addDays("2026-01-01", ahead));

test("dayOfRule() never ends earlier for a later event", () => {
  fc.assert(
    fc.property(
      aRule,
      aDay,
      fc.constantFrom("after", "before"),
      fc.boolean(),
      (rule, day, way, mailed) => {
        const one = counted({ ...rule, way }, day, mailed).on;
        expect(counted({ ...rule, way }, addDays(day, 1), mailed).on >= one).toBe(true);
      },
    ),
    { numRuns: 500 },
  );
});

test("dayOfRule() never ends earlier, counting forwards, for one more to count", () => {
  fc.assert(
    fc.property(aRule, aDay, (rule, day) => {
      const one = counted(rule, day).on;
      expect(rule.roll === "backwards" || one >= day).toBe(true);
      expect(counted({ ...rule, count: rule.count + 1 }, day).on >= one).toBe(true);
    }),
    { numRuns: 500 },
  );
});

test("dayOfRule() ends on a business day wherever the rule rolls", () => {
  fc.assert(
    fc.property(aRule, aDay, fc.boolean(), (rule, day, mailed) => {
      fc.pre(rule.roll !== "none");
      expect(isBusinessDay(counted(rule, day, mailed).on, HOLIDAYS)).toBe(true);
    }),
  );
});

test("earliestEventFor() is the first day that leaves a notice sent today early enough", () => {
  const rule: ClockCount = { ...PLAIN, count: 10, way: "before", roll: "backwards" };
  const day = earliestEventFor(rule, "2026-11-25", HOLIDAYS);
  expect(day).toBe("2026-12-05");
  expect(counted(rule, "2026-12-04").on < "2026-11-25").toBe(true);
});
