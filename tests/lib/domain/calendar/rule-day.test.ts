import fc from "fast-check";
import { expect, test } from "vitest";
import { isBusinessDay } from "#lib/domain/calendar/business-days.ts";
import { CLOCK_UNITS, ROLLS } from "#lib/domain/calendar/clock-rule.ts";
import { addDays } from "#lib/domain/calendar/days.ts";
import { federalHolidays } from "#lib/domain/calendar/federal-holidays.ts";
import { type ClockCount, dayOfRule, earliestEventFor } from "#lib/domain/calendar/rule-day.ts";

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
    "14 calendar days after Thursday, November 12, 2026 is Thursday, November 26; as that is Thanksgiving Day, forwards to Friday, November 27; 3 days for mail give Monday, November 30.",
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
    "2 full business days after Tuesday, November 24, 2026 is Friday, November 27; once it has passed comes Saturday, November 28.",
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
  expect(counted({ ...own, count: 1, unit: "hours" }, "2026-11-25").on).toBe("2026-11-25");
  expect(counted({ ...own, count: 0, unit: "business-days" }, "2026-11-25").on).toBe("2026-11-25");
});

test("dayOfRule() clamps months to the month that they reach", () => {
  expect(counted({ count: 1, unit: "months" }, "2027-01-31").on).toBe("2027-02-28");
  expect(counted({ count: 13, unit: "months" }, "2027-01-31").on).toBe("2028-02-29");
  expect(counted({ count: 6, unit: "months", way: "before" }, "2026-08-31").on).toBe("2026-02-28");
});

// Days have no hours here, so part of a day falls on the side that cannot come too late.
test.each([
  [{ count: 24, way: "before" }, "2026-12-01"],
  [{ count: 4, way: "before" }, "2026-12-01"],
  [{ count: 36, way: "after" }, "2026-12-03"],
  [{ count: 36, way: "after", meaning: "not-before" }, "2026-12-04"],
  [{ count: 72, way: "after" }, "2026-12-05"],
] as const)("dayOfRule() counts the hours of %j on the careful side", (rule, on) => {
  expect(counted({ ...rule, unit: "hours" }, "2026-12-02").on).toBe(on);
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
