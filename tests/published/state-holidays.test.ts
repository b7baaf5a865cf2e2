import { describe, expect, test } from "vitest";
import { offeredHolidays } from "#lib/domain/calendar/holiday-sets.ts";
import { type ClockCount, dayOfRule } from "#lib/domain/calendar/rule-day.ts";
import type { Holidays } from "#lib/domain/time/business-days.ts";
import { federalHolidays } from "#lib/domain/time/federal-holidays.ts";

/*
 * Hours and days that end on a holiday which only the state keeps. Fed. R. Civ. P. 6(a)(2)(C): a period
 * of hours that ends on a Saturday, Sunday or legal holiday runs to the same time on the next day that
 * is none; 6(a)(6)(C): after an event the state's own holidays count too (both from memory). The dates
 * were computed here.
 */

const RULE: ClockCount = {
  count: 48,
  unit: "hours",
  way: "after",
  countsEventDay: false,
  fullDays: false,
  roll: "forwards",
  mailDays: 0,
  meaning: "due-by",
};

const kept = (state: string, year: number) =>
  offeredHolidays(state, year).filter(({ usual }) => usual);
const federal = federalHolidays(2026);

function ends(rule: Partial<ClockCount>, event: string, at: string, holidays: Holidays) {
  const { on, at: time } = dayOfRule({ ...RULE, ...rule }, event, holidays, { mailed: false, at });
  return `${on} ${time}`.trim();
}

// RCW 1.16.050(1): the Friday after Thanksgiving, November 27 in 2026.
describe("Washington", () => {
  test("48 hours from Wednesday, November 25, 2026 at 9:30 AM end on Monday at 9:30 AM", () => {
    expect(ends({}, "2026-11-25", "09:30", kept("WA", 2026))).toBe("2026-11-30 09:30");
    expect(ends({}, "2026-11-25", "09:30", federal)).toBe("2026-11-27 09:30");
  });

  test("24 hours from Wednesday at 4:05 PM pass Thanksgiving, the Friday and the weekend", () => {
    expect(ends({ count: 24 }, "2026-11-25", "16:05", kept("WA", 2026))).toBe("2026-11-30 16:05");
    expect(ends({ count: 24 }, "2026-11-25", "16:05", federal)).toBe("2026-11-27 16:05");
  });
});

// Cal. Gov. Code 6700(a)(7): March 31, Cesar Chavez Day, a Tuesday in 2026
// (https://www.legalfina.com/en/laws/ca/government/general/miscellaneous/holidays). Neither it nor Dr. King's
// day applies to a city, county or district unless its charter, ordinance or resolution makes it, and the
// Friday after Thanksgiving is not in the section (https://codes.findlaw.com/ca/government-code/gov-sect-6700/).
describe("California", () => {
  const adopted = kept("CA", 2026).map((each) => ({ ...each, source: "Resolution 12-4" }));
  const inDoubt = kept("CA", 2026);

  test("the days that a city keeps only by its own act are marked, with why", () => {
    const marked = inDoubt.filter(({ source }) => source.endsWith("kept only if adopted"));
    expect(marked.map(({ day }) => day)).toEqual(["2026-01-19", "2026-03-31", "2026-11-27"]);
    for (const { note } of marked) expect(note).toMatch(/only by its own act/);
    expect(federal.map(({ day }) => day)).not.toContain("2026-03-31");
  });

  test("24 hours from Monday, March 30, 2026 at 2:00 PM end on Wednesday where March 31 is kept", () => {
    const count = { count: 24 };
    expect(ends(count, "2026-03-30", "14:00", adopted)).toBe("2026-04-01 14:00");
    expect(ends(count, "2026-03-30", "14:00", federal)).toBe("2026-03-31 14:00");
    expect(ends(count, "2026-03-30", "14:00", inDoubt)).toBe("2026-03-31 14:00");
  });

  test.each([
    ["due-by", "2026-03-31"],
    ["not-after", "2026-03-31"],
    ["expires", "2026-03-31"],
    ["not-before", "2026-04-01"],
  ] as const)(
    "14 days from March 17, 2026, %s, in doubt whether March 31 is kept: %s",
    (meaning, on) => {
      const days = { count: 14, unit: "calendar-days", meaning } as const;
      expect(ends(days, "2026-03-17", "", inDoubt)).toBe(on);
      expect(ends(days, "2026-03-17", "", adopted)).toBe("2026-04-01");
    },
  );

  test("five business days before April 2, 2026 are due by the day that is early enough either way", () => {
    const days = { count: 5, unit: "business-days", way: "before", roll: "none" } as const;
    expect(ends(days, "2026-04-02", "", inDoubt)).toBe("2026-03-25");
    expect(ends(days, "2026-04-02", "", adopted)).toBe("2026-03-25");
    expect(ends(days, "2026-04-02", "", federal)).toBe("2026-03-26");
  });

  test("the sentence names the day in doubt and the other date, and nothing where they agree", () => {
    const days = { ...RULE, count: 14, unit: "calendar-days" } as const;
    const told = (event: string) => dayOfRule(days, event, inDoubt, { mailed: false }).sentence;
    expect(told("2026-03-17")).toMatch(
      /Whether this authority keeps César Chávez Day is not known; counted the other way it is .*April 1.* The earlier day is the safe one\.$/,
    );
    expect(told("2026-03-16")).not.toContain("Whether");
  });
});
