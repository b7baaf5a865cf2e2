import { describe, expect, test } from "vitest";
import { type ClockCount, dayOfRule } from "#lib/domain/calendar/rule-day.ts";
import { addBusinessDays, type Holidays } from "#lib/domain/time/business-days.ts";
import { federalHolidays } from "#lib/domain/time/federal-holidays.ts";

// Counts of the usual kinds, worked out by hand; no source that was read has these dates.

const FEDERAL: Holidays = [2022, 2026].flatMap(federalHolidays);

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

function dayFor(rule: Partial<ClockCount>, event: string): string {
  return dayOfRule({ ...PLAIN, ...rule }, event, FEDERAL, { mailed: false }).on;
}

describe("one-call notice", () => {
  test("a ticket of 28 days, the day of the call counted, lives from the 1st to the 28th", () => {
    expect(dayFor({ count: 28, countsEventDay: true, meaning: "expires" }, "2026-10-01")).toBe(
      "2026-10-28",
    );
  });

  // https://www.illinois1call.com/damage-prevent-act-amendments-landing/ was read: since January 1, 2025 (P.A. 103-0614)
  // a notice runs out after 25 days, weekends, the center's holidays and the day of notice not counted, and is
  // given at least 2 such days ahead. The page works out no example; these lie where no holiday does.
  test("25 days of Illinois, weekends and the day of notice left out, end on the fifth Tuesday after one", () => {
    const days = { unit: "business-days", meaning: "expires" } as const;
    expect(dayFor({ ...days, count: 25 }, "2026-02-17")).toBe("2026-03-24");
    expect(dayFor({ ...days, count: 2, meaning: "not-before" }, "2026-02-20")).toBe("2026-02-24");
  });

  test("a call on Tuesday gives Wednesday and Thursday", () => {
    expect(addBusinessDays("2026-10-06", 1, FEDERAL)).toBe("2026-10-07");
    expect(addBusinessDays("2026-10-06", 2, FEDERAL)).toBe("2026-10-08");
  });

  test("days of a state's own table do not count", () => {
    const table = [...federalHolidays(2022), { day: "2022-11-08", name: "Election Day" }];
    expect(addBusinessDays("2022-11-07", 1, federalHolidays(2022))).toBe("2022-11-08");
    expect(addBusinessDays("2022-11-07", 3, table)).toBe("2022-11-14");
  });

  // Two full business days, the day of notice left out, federal holidays alone.
  test.each([
    ["2026-10-05", "2026-10-08"],
    ["2026-10-08", "2026-10-14"],
    ["2026-09-03", "2026-09-09"],
    ["2026-09-04", "2026-09-10"],
    ["2026-07-01", "2026-07-07"],
    ["2026-11-24", "2026-11-28"],
  ])("dayOfRule() lets dig two full business days after %s on %s", (notice, dig) => {
    const rule = {
      count: 2,
      unit: "business-days",
      fullDays: true,
      meaning: "not-before",
    } as const;
    expect(dayFor(rule, notice)).toBe(dig);
  });
});
