import DateHolidays from "date-holidays";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { offeredHolidays } from "#lib/domain/calendar/holiday-sets.ts";
import { type ClockCount, dayOfRule, latestEventFor } from "#lib/domain/calendar/rule-day.ts";
import { type Holidays, isBusinessDay } from "#lib/domain/time/business-days.ts";
import { addDays, weekday } from "#lib/domain/time/days.ts";
import { federalHolidays } from "#lib/domain/time/federal-holidays.ts";
import { AUTHORITY } from "#seed/office.ts";

/*
 * Deadlines that others have published. The pages were read, except where it says
 * “from memory” or “computed here”: by hand, from the published rule. Agencies' calendars differ, so each check names the
 * table of holidays that it counts with.
 */

const FEDERAL: Holidays = [2007, 2008, 2018, 2025, 2026, 2027].flatMap(federalHolidays);

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

function dayFor(
  rule: Partial<ClockCount>,
  event: string,
  { holidays = FEDERAL, mailed = false }: { holidays?: Holidays; mailed?: boolean } = {},
): string {
  return dayOfRule({ ...PLAIN, ...rule }, event, holidays, { mailed }).on;
}

describe("Fed. R. Civ. P. 6 (text read at federal-rules.laws-info.com/frcp/rule_6)", () => {
  const rule6a = { roll: "forwards", mailDays: 3 } as const;

  // The 2009 committee note's example; its dates from memory, its weekdays computed here.
  test("dayOfRule() runs 10 days from August 22, 2007 past Labor Day's weekend to Tuesday", () => {
    expect(weekday("2007-09-01")).toBe("Saturday");
    expect(dayFor({ ...rule6a, count: 10 }, "2007-08-22")).toBe("2007-09-04");
  });

  test("dayOfRule() counts 10 days before September 11, 2007 back to the Friday (from memory)", () => {
    expect(dayFor({ count: 10, way: "before", roll: "backwards" }, "2007-09-11")).toBe(
      "2007-08-31",
    );
  });

  // 72 hours from Friday 10:23 end on Monday at 9:23 by the clock: summer time ended in
  // between (from memory).
  test("dayOfRule() ends 72 hours from 10:23 AM on November 2, 2007 at 9:23 AM on November 5", () => {
    const rule = { ...PLAIN, count: 72, unit: "hours", roll: "forwards" } as const;
    expect(dayOfRule(rule, "2007-11-02", FEDERAL, { mailed: false, at: "10:23" })).toMatchObject({
      on: "2007-11-05",
      at: "09:23",
    });
  });

  // Rule 6(a) with 6(d): the days for mail come after the roll, and the sum is rolled again. (computed here)
  test.each([
    ["2026-11-06", 14, "2026-11-20", "2026-11-23"],
    ["2026-11-12", 14, "2026-11-27", "2026-11-30"],
    ["2026-12-11", 14, "2026-12-28", "2026-12-31"],
    ["2026-08-24", 14, "2026-09-08", "2026-09-11"],
    ["2026-06-03", 30, "2026-07-06", "2026-07-09"],
  ])("dayOfRule() from %s in %i days gives %s, by mail %s", (event, count, plain, mailed) => {
    expect(dayFor({ ...rule6a, count }, event)).toBe(plain);
    expect(dayFor({ ...rule6a, count }, event, { mailed: true })).toBe(mailed);
  });

  // Whether the Friday on which a Saturday's holiday is kept counts is a choice: the table's. (computed here)
  test("dayOfRule() stops on July 3, 2026 where the table keeps the Fourth on its own day only", () => {
    const unmoved = [{ day: "2026-07-04", name: "Independence Day" }];
    expect(dayFor({ ...rule6a, count: 30 }, "2026-06-03", { holidays: unmoved })).toBe(
      "2026-07-03",
    );
  });

  // Before 2009 periods under 11 days skipped weekends; the rule now counts every day.
  test("dayOfRule() counts Saturdays and Sundays in between in short periods too", () => {
    expect(dayFor({ ...rule6a, count: 7 }, "2026-11-02")).toBe("2026-11-09");
  });
});

describe("5 U.S.C. 6103(a) and (b), Executive Order 11582", () => {
  // Computed from the statute and equal to GSA's table of the same days. (computed here)
  test.each([
    [2024, "01-01 01-15 02-19 05-27 06-19 07-04 09-02 10-14 11-11 11-28 12-25"],
    [2025, "01-01 01-20 02-17 05-26 06-19 07-04 09-01 10-13 11-11 11-27 12-25"],
    [2026, "01-01 01-19 02-16 05-25 06-19 07-03 09-07 10-12 11-11 11-26 12-25"],
    [2027, "01-01 01-18 02-15 05-31 06-18 07-05 09-06 10-11 11-11 11-25 12-24 12-31"],
  ])("federalHolidays() keeps the days of %i", (year, days) => {
    const kept = federalHolidays(year).map(({ day }) => day);
    expect(kept).toEqual(days.split(" ").map((day) => `${year}-${day}`));
  });

  test("federalHolidays() keeps a New Year's Day on a Saturday in the year before", () => {
    expect(federalHolidays(2021).at(-1)).toEqual({
      day: "2021-12-31",
      name: "New Year’s Day (observed)",
    });
    expect(federalHolidays(2022).map(({ day }) => day)).not.toContain("2022-01-01");
  });

  test("federalHolidays() keeps the Veterans Day of 2028, a Saturday, on Friday", () => {
    expect(federalHolidays(2028)).toContainEqual({
      day: "2028-11-10",
      name: "Veterans Day (observed)",
    });
    expect(isBusinessDay("2028-11-10", federalHolidays(2028))).toBe(false);
  });

  test("federalHolidays() knows Juneteenth from 2021 on", () => {
    expect(federalHolidays(2020).filter(({ day }) => day.startsWith("2020-06"))).toEqual([]);
    expect(federalHolidays(2022)).toContainEqual({
      day: "2022-06-20",
      name: "Juneteenth National Independence Day (observed)",
    });
  });

  // date-holidays 3.37.0 as an independent table. Two gaps of it were found by running it: it
  // knows no substitute for Veterans Day, and it gives both the day and its substitute.
  test("federalHolidays() agrees with date-holidays from 2022 to 2035, Veterans Day apart", () => {
    const others = new DateHolidays("US");
    const isVeterans = (name: string) => name.startsWith("Veterans Day");
    for (let year = 2022; year <= 2035; year += 1) {
      const known = [year, year + 1]
        .flatMap((each) => others.getHolidays(each))
        .map(({ date }) => date.slice(0, 10));
      const missing = federalHolidays(year).filter(
        ({ day, name }) => !isVeterans(name) && !known.includes(day),
      );
      expect(missing).toEqual([]);
    }
  });
});

const full = (count: number) =>
  ({ count, unit: "business-days", fullDays: true, meaning: "not-before" }) as const;

describe("one-call notice, as the states' own pages work it out", () => {
  // https://www.sc811.com/notice-calendar/: notice on a Monday, life from Tuesday 12:00 a.m.,
  // due Thursday 11:59 p.m., dig on Friday morning.
  test("South Carolina: notice on a Monday lets dig on Friday", () => {
    expect(dayFor(full(3), "2026-10-05")).toBe("2026-10-09");
  });

  // https://va811.com/wait-times-explained/: after 7:00 a.m. on the third working day.
  // https://va811.com/what-to/: to dig on Saturday, call no later than Tuesday.
  test("Virginia: a call on Tuesday is the last that lets dig on Saturday", () => {
    const rule: ClockCount = { ...PLAIN, ...full(3), fullDays: false };
    expect(dayFor(rule, "2026-10-06")).toBe("2026-10-09");
    expect(dayFor(rule, "2026-10-07") > "2026-10-10").toBe(true);
    expect(latestEventFor(rule, "2026-10-10", FEDERAL)).toBe("2026-10-06");
  });

  // https://ndonecall.com/2017/04/: from the Friday before Labor Day the weekend and Monday do
  // not count; “Tuesday the 4th” and Wednesday wait; dig on Thursday at 12:01 a.m. Tuesday was the 4th
  // in 2018, with Labor Day on September 3.
  test("North Dakota: a call on Friday, August 31, 2018 lets dig on Thursday, September 6", () => {
    expect(weekday("2018-09-04")).toBe("Tuesday");
    expect(dayFor(full(2), "2018-08-31")).toBe("2018-09-06");
  });

  test("North Dakota: to dig on that Saturday, call by the Wednesday before", () => {
    expect(latestEventFor({ ...PLAIN, ...full(2) }, "2018-09-01", FEDERAL)).toBe("2018-08-29");
  });

  // https://ncbase.org/nc-one-call-center-changes/, the 48-hour rule of July 2008: notice Monday
  // 10:45 a.m., clock from Tuesday 12:01 a.m., dig Thursday 12:01 a.m.
  test("North Carolina, 2008: notice on Monday, July 14 lets dig on Thursday, July 17", () => {
    expect(dayFor(full(2), "2008-07-14")).toBe("2008-07-17");
  });

  // https://nc811.org/frequently-asked-questions/: three full working days now.
  test("North Carolina, now: three full working days after a Monday lets dig on Friday", () => {
    expect(dayFor(full(3), "2026-10-05")).toBe("2026-10-09");
  });

  // Tex. Util. Code 251.151 and .157: a Saturday notice, Tuesday 11:59 a.m.; Wednesday where
  // Monday is a holiday. The dates computed here.
  test("Texas: a Saturday notice lets dig on Tuesday, on Wednesday after a holiday Monday", () => {
    const rule = { count: 2, unit: "business-days", meaning: "not-before" } as const;
    expect(dayFor(rule, "2026-10-03")).toBe("2026-10-06");
    expect(dayFor(rule, "2026-09-05")).toBe("2026-09-09");
  });

  // Cal. Gov. Code 4216.2: at most 14 calendar days ahead; a ticket of 28 days.
  test("California: a ticket lets start up to 14 calendar days on and lasts 28", () => {
    expect(dayFor({ count: 14, meaning: "not-after" }, "2026-11-20")).toBe("2026-12-04");
    expect(dayFor({ count: 28, meaning: "expires" }, "2026-11-20")).toBe("2026-12-18");
  });
});

/*
 * Washington. RCW 19.122.020(3), read at app.leg.wa.gov: a business day is “any day other than
 * Saturday, Sunday, or a legal local, state, or federal holiday”. RCW 1.16.050(1), read at
 * apps.leg.wa.gov in a copy from before 2021, lists the state's; Juneteenth came in 2021 (2021 c 295;
 * read in the text of SB 5677 of 2023 and in WAC 357-31-005). RCW 19.122.030 as of 2025 c 292: no less than two full
 * business days and no more than ten full ones before, and marks for up to 45 days (Utilities and
 * Transportation Commission, release of July 15, 2025, https://pubt.io/view/CC0B686396FFF250E1408F74DC1DAFE9BC60E030).
 */
describe("Washington's business days", () => {
  const STATE = [
    "01-01 New Year",
    "01-19 King",
    "02-16 Presidents",
    "05-25 Memorial Day",
    "06-19 Juneteenth",
    "07-03 Independence Day, a Saturday",
    "09-07 Labor Day",
    "11-11 Veterans Day",
    "11-26 Thanksgiving",
    "11-27 Native American Heritage Day",
    "12-25 Christmas",
  ].map((words) => `2026-${words.slice(0, 5)}`);
  const kept = offeredHolidays("WA", 2026).filter(({ usual }) => usual);

  test("the days that are proposed for 2026 are the state's and the nation's, and no others", () => {
    const columbus = "2026-10-12";
    expect(kept.map(({ day }) => day)).toEqual([...STATE, columbus].toSorted());
  });

  const holidays = AUTHORITY.holidays;
  const counted = (id: string, called: string) => {
    const rule = AUTHORITY.clockRules.find((each) => each.id.endsWith(id));
    if (rule === undefined) throw new Error(`No rule ${id}`);
    return dayOfRule(rule, called, holidays, { mailed: false }).on;
  };

  // By hand: after Wednesday, November 25 the 26th and 27th are holidays, then a weekend; Monday and
  // Tuesday are the two full business days.
  test("the sample office, calling on the day before Thanksgiving, digs on Wednesday, December 2", () => {
    expect(counted("locate-opens", "2026-11-25")).toBe("2026-12-02");
    expect(dayFor(full(2), "2026-11-25", { holidays: FEDERAL })).toBe("2026-12-01");
  });

  // By hand: November 24, 25, 30, December 1 to 4, 7, 8 and 9 are the ten.
  test("its ticket of November 23 must be used by December 9, and its marks end on January 7", () => {
    expect(counted("locate-closes", "2026-11-23")).toBe("2026-12-09");
    expect(counted("locate-marks", "2026-11-23")).toBe("2027-01-07");
  });
});

test("latestEventFor() is the last call that still lets dig on the day, for any day and count", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 700 }),
      fc.integer({ min: 1, max: 12 }),
      (ahead, count) => {
        const rule: ClockCount = {
          ...PLAIN,
          count,
          unit: "business-days",
          fullDays: true,
          meaning: "not-before",
        };
        const target = addDays("2026-01-02", ahead);
        const call = latestEventFor(rule, target, FEDERAL);
        if (call === null) throw new Error("Expected a day within the year");
        expect(dayFor(rule, call) <= target).toBe(true);
        expect(dayFor(rule, addDays(call, 1)) > target).toBe(true);
      },
    ),
  );
});
