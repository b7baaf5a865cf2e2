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

const kept = (state: string, year: number): Holidays =>
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
// (https://www.legalfina.com/en/laws/ca/government/general/miscellaneous/holidays). A city keeps it only
// where it made it its own (6700(b), https://codes.findlaw.com/ca/government-code/gov-sect-6700/).
describe("California", () => {
  test("March 31 is proposed, to be checked with the authority; the nation does not keep it", () => {
    const chavez = offeredHolidays("CA", 2026).find(({ day }) => day === "2026-03-31");
    expect(chavez?.usual).toBe(true);
    expect(chavez?.source).toContain("check with the authority");
    expect(federal.map(({ day }) => day)).not.toContain("2026-03-31");
  });

  test("24 hours from Monday, March 30, 2026 at 2:00 PM end on Wednesday at 2:00 PM", () => {
    expect(ends({ count: 24 }, "2026-03-30", "14:00", kept("CA", 2026))).toBe("2026-04-01 14:00");
    expect(ends({ count: 24 }, "2026-03-30", "14:00", federal)).toBe("2026-03-31 14:00");
  });

  test("14 days from March 17, 2026 end on April 1", () => {
    const days = { count: 14, unit: "calendar-days" } as const;
    expect(ends(days, "2026-03-17", "", kept("CA", 2026))).toBe("2026-04-01");
    expect(ends(days, "2026-03-17", "", federal)).toBe("2026-03-31");
  });
});
