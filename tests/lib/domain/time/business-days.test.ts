import fc from "fast-check";
import { expect, test } from "vitest";
import {
  addBusinessDays,
  businessDaysBetween,
  isBusinessDay,
  rollDay,
  whyNotBusiness,
} from "#lib/domain/time/business-days.ts";
import { addDays } from "#lib/domain/time/days.ts";

const HOLIDAYS = [
  { day: "2026-11-26", name: "Thanksgiving Day" },
  { day: "2026-12-25", name: "Christmas Day" },
  { day: "2027-01-01", name: "New Year’s Day" },
];

const aDay = fc.integer({ min: 0, max: 200 }).map((ahead) => addDays("2026-09-01", ahead));
const aBusinessDay = aDay.map((day) => rollDay(day, 1, HOLIDAYS));
const aCount = fc.integer({ min: -40, max: 40 });

test("isBusinessDay() refuses Saturdays, Sundays and the table's days, with the reason", () => {
  expect(isBusinessDay("2026-11-25", HOLIDAYS)).toBe(true);
  expect(whyNotBusiness("2026-11-26", HOLIDAYS)).toBe("Thanksgiving Day");
  expect(whyNotBusiness("2026-11-28", HOLIDAYS)).toBe("a Saturday");
  expect(whyNotBusiness("2026-11-29", HOLIDAYS)).toBe("a Sunday");
});

test("isBusinessDay() follows an edited table", () => {
  const edited = [...HOLIDAYS, { day: "2026-11-27", name: "Day after Thanksgiving" }];
  expect(isBusinessDay("2026-11-27", HOLIDAYS)).toBe(true);
  expect(isBusinessDay("2026-11-27", edited)).toBe(false);
});

test("addBusinessDays() skips the holiday and the weekend, both ways", () => {
  expect(addBusinessDays("2026-11-25", 1, HOLIDAYS)).toBe("2026-11-27");
  expect(addBusinessDays("2026-11-25", 2, HOLIDAYS)).toBe("2026-11-30");
  expect(addBusinessDays("2026-11-30", -2, HOLIDAYS)).toBe("2026-11-25");
  expect(addBusinessDays("2026-11-28", 0, HOLIDAYS)).toBe("2026-11-28");
});

test("addBusinessDays() from a business day takes back what it added", () => {
  fc.assert(
    fc.property(aBusinessDay, aCount, (day, count) => {
      const moved = addBusinessDays(day, count, HOLIDAYS);
      expect(isBusinessDay(moved, HOLIDAYS)).toBe(true);
      expect(addBusinessDays(moved, -count, HOLIDAYS)).toBe(day);
      expect(businessDaysBetween(day, moved, HOLIDAYS)).toBe(count);
    }),
  );
});

test("addBusinessDays() in two steps is the same as in one", () => {
  fc.assert(
    fc.property(aDay, fc.nat(20), fc.nat(20), (day, one, other) => {
      fc.pre(one > 0);
      const twice = addBusinessDays(addBusinessDays(day, one, HOLIDAYS), other, HOLIDAYS);
      expect(twice).toBe(addBusinessDays(day, one + other, HOLIDAYS));
    }),
  );
});

test("addBusinessDays() never ends earlier for a later start, nor for one holiday more", () => {
  fc.assert(
    fc.property(aDay, fc.nat(20), aDay, (day, count, off) => {
      const end = addBusinessDays(day, count, HOLIDAYS);
      expect(addBusinessDays(addDays(day, 1), count, HOLIDAYS) >= end).toBe(true);
      const more = [...HOLIDAYS, { day: off, name: "Local day" }];
      expect(addBusinessDays(day, count, more) >= end).toBe(true);
    }),
  );
});

test("addBusinessDays() refuses parts of days", () => {
  expect(() => addBusinessDays("2026-11-25", 1.5, HOLIDAYS)).toThrow(
    "Cannot count business days: count must be whole, got 1.5",
  );
});

test("businessDaysBetween() counts the days after the first up to the last", () => {
  expect(businessDaysBetween("2026-11-25", "2026-12-01", HOLIDAYS)).toBe(3);
  expect(businessDaysBetween("2026-12-01", "2026-11-25", HOLIDAYS)).toBe(-3);
  expect(businessDaysBetween("2026-11-28", "2026-11-29", HOLIDAYS)).toBe(0);
});
