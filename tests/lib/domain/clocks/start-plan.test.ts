import { expect, test } from "vitest";
import { planStart } from "#lib/domain/clocks/start-plan.ts";
import type { ClockRule } from "#lib/domain/facts/clock-rule.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";

const LOCATE: ClockRule = {
  id: "locate",
  authorityId: "a",
  title: "Locate marks: earliest start",
  event: "locate-called",
  count: 2,
  unit: "business-days",
  way: "after",
  countsEventDay: false,
  fullDays: true,
  roll: "none",
  mailDays: 0,
  meaning: "not-before",
  whiteLineFirst: false,
  citation: "RCW 19.122.030",
  asOf: "2025-08-11",
};

const NOTICE: ClockRule = {
  ...LOCATE,
  id: "notice",
  title: "Tell the block",
  event: "work-begins",
  count: 72,
  unit: "hours",
  way: "before",
  fullDays: false,
  meaning: "due-by",
};

const EXPIRY: ClockRule = { ...LOCATE, id: "expiry", event: "permit-issued", meaning: "expires" };

function fileWith(clockRules: readonly ClockRule[]): Pick<LineFile, "authority"> {
  const thanksgiving = { id: "h", authorityId: "a", day: "2026-11-26", name: "Thanksgiving" };
  return { authority: { clockRules, holidays: [thanksgiving] } } as unknown as LineFile;
}

// RCW 19.122.030: the day of the notice, weekends and holidays do not count. Called on Thanksgiving,
// Friday and Monday are the two full days; called on Friday, Monday and Tuesday would be.
test("planStart() finds the last day for the locate call over a holiday and a weekend", () => {
  const [step] = planStart(fileWith([LOCATE]), "2026-12-01", "2026-11-20");
  expect(step).toMatchObject({ by: "2026-11-26", late: false, citation: "RCW 19.122.030" });
});

test("planStart() counts a notice back from the start, and puts the earliest first", () => {
  const steps = planStart(fileWith([LOCATE, NOTICE]), "2026-12-01", "2026-11-27");
  expect(steps.map((step) => [step.title, step.by, step.late])).toEqual([
    ["Locate marks: earliest start", "2026-11-26", true],
    ["Tell the block", "2026-11-27", false],
  ]);
});

test("planStart() leaves out rules that say nothing about a start", () => {
  expect(planStart(fileWith([EXPIRY]), "2026-12-01", "2026-11-20")).toEqual([]);
  expect(planStart({ authority: null }, "2026-12-01", "2026-11-20")).toEqual([]);
});
