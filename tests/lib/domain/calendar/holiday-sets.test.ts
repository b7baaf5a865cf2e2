import { createRequire } from "node:module";
import { describe, expect, test } from "vitest";
import { holidayCaution } from "#lib/domain/calendar/holiday-caution.ts";
import {
  HOLIDAY_STATES,
  LIST_VERSION,
  offeredHolidays,
} from "#lib/domain/calendar/holiday-sets.ts";
import { weekday } from "#lib/domain/time/days.ts";
import { FEDERAL_SOURCE, federalHolidays } from "#lib/domain/time/federal-holidays.ts";
import { aClockRule, aHoliday } from "#tests/support/file.ts";

const ticked = (state: string, year: number) =>
  offeredHolidays(state, year).filter(({ usual }) => usual);

describe("offeredHolidays()", () => {
  test("names the edition of the list that it is from", () => {
    const read = createRequire(import.meta.url);
    expect(read("date-holidays/package.json").version).toBe(LIST_VERSION);
  });

  test("offers the federal days by statute, each once, and never a Saturday or Sunday", () => {
    for (const { code } of HOLIDAY_STATES) {
      for (const year of [2026, 2027, 2028]) {
        const offered = offeredHolidays(code, year);
        const days = offered.map(({ day }) => day);
        expect(new Set(days).size).toBe(days.length);
        expect(days).toEqual(days.toSorted());
        expect(days.map(weekday)).not.toContain("Saturday");
        expect(days.map(weekday)).not.toContain("Sunday");
        const federal = offered.filter(({ source }) => source.startsWith(FEDERAL_SOURCE));
        expect(federal.map(({ day }) => day)).toEqual(federalHolidays(year).map(({ day }) => day));
        expect(federal.every(({ usual }) => usual)).toBe(true);
      }
    }
  });

  test("offers the federal days alone where no state is named", () => {
    expect(offeredHolidays("", 2026).map(({ day, name }) => ({ day, name }))).toEqual(
      federalHolidays(2026),
    );
    expect(offeredHolidays("", 2026)[0]?.source).toBe(FEDERAL_SOURCE);
  });

  test("takes Washington's own day from the statute, which the list leaves out", () => {
    expect(ticked("WA", 2026)).toContainEqual({
      day: "2026-11-27",
      name: "Native American Heritage Day",
      source: "RCW 1.16.050(1)",
      usual: true,
      note: "",
    });
  });

  test("ticks a state's own holidays, and says that they are to be checked", () => {
    expect(ticked("HI", 2026)).toContainEqual({
      day: "2026-03-26",
      name: "Prince Jonah Kuhio Kalanianaole Day",
      source: `Hawaii list, date-holidays ${LIST_VERSION}: check with the authority`,
      usual: true,
      note: "",
    });
  });

  // Prince Kuhio Day 2028, March 26, is a Sunday: the list makes a Monday of it.
  test("leaves a day unticked that the list only moved off a weekend", () => {
    const moved = offeredHolidays("HI", 2028).find(({ day }) => day === "2028-03-27");
    expect(moved?.usual).toBe(false);
    expect(moved?.note).toMatch(/moved here from a weekend/);
    expect(moved?.name).not.toMatch(/substitute/);
  });

  test("offers unticked what only some offices keep", () => {
    const friday = offeredHolidays("AZ", 2026).find(({ day }) => day === "2026-11-27");
    expect(friday).toMatchObject({ usual: false });
    expect(offeredHolidays("AZ", 2026).map(({ name }) => name)).not.toContain("Valentine's Day");
  });
});

describe("holidayCaution()", () => {
  const rule = aClockRule("Locate", {
    unit: "business-days",
    roll: "none",
    citation: "RCW 19.122.030",
  });
  const federal = federalHolidays(2026).map(({ day, name }) =>
    aHoliday(day, { name, source: FEDERAL_SOURCE }),
  );

  test("is said where a rule by a state's statute meets federal holidays only", () => {
    expect(holidayCaution(rule, federal)).toBe(
      "Only federal holidays are entered, and RCW 19.122.030 is a state’s law: import the state’s list, or the days may be off.",
    );
    expect(
      holidayCaution(
        rule,
        federal.map((each) => ({ ...each, source: "" })),
      ),
    ).not.toBe("");
  });

  test("is not said once the state's list was brought in, or any day of one's own", () => {
    const brought = offeredHolidays("WA", 2026).map(({ day, name, source }) =>
      aHoliday(day, { name, source }),
    );
    expect(holidayCaution(rule, brought)).toBe("");
    expect(holidayCaution(rule, [...federal, aHoliday("2026-11-27")])).toBe("");
    expect(holidayCaution(rule, [])).toBe("");
  });

  test("is not said of rules that no holiday touches, nor of federal and local ones", () => {
    expect(holidayCaution({ ...rule, unit: "calendar-days" }, federal)).toBe("");
    expect(holidayCaution({ ...rule, unit: "calendar-days", roll: "forwards" }, federal)).not.toBe(
      "",
    );
    for (const citation of ["Fed. R. Civ. P. 6(a)", "15 U.S.C. 7001", "QMC 13.08.070", ""])
      expect(holidayCaution({ ...rule, citation }, federal)).toBe("");
  });

  test.each([
    "Cal. Gov. Code 4216.2",
    "California Government Code § 4216",
    "Tex. Util. Code 251.151",
    "ORS 757.542",
    "OAR 952-001-0050",
    "N.C. Gen. Stat. § 87-122",
    "220 ILCS 50/4",
    "C.R.S. 9-1.5-103",
    "Va. Code § 56-265.17",
  ])("knows %s as a state's law", (citation) => {
    expect(holidayCaution({ ...rule, citation }, federal)).not.toBe("");
  });
});
