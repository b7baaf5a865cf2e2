import { expect, test } from "vitest";
import type { ClockRule } from "#lib/domain/facts/clock-rule.ts";
import { replyByFor } from "#lib/domain/notices/reply-by.ts";
import { aClockRule, anAuthority } from "#tests/support/file.ts";

const TODAY = "2026-11-25";
const RULE = aClockRule("Answer to a letter", { count: 14, roll: "none", mailDays: 3 });

function dayFor(kind: Parameters<typeof replyByFor>[1], ...clockRules: ClockRule[]) {
  const day = replyByFor({ authority: anAuthority({ clockRules }) }, kind, TODAY);
  return day === null ? null : [day.on, day.title];
}

test("replyByFor() takes the day from the rule on letters, with its days for mail", () => {
  expect(dayFor("finding", RULE)).toEqual(["2026-12-12", "Answer to a letter"]);
  expect(dayFor("proposed-split", RULE)).toEqual(["2026-12-12", "Answer to a letter"]);
  expect(replyByFor({ authority: null }, "finding", TODAY)).toBeNull();
  expect(dayFor("finding")).toBeNull();
});

test("replyByFor() asks for no answer where the letter asks for none", () => {
  for (const kind of ["work-start", "drain-pause", "spill", "close-out"] as const)
    expect(dayFor(kind, RULE), kind).toBeNull();
});

test("replyByFor() gives the reader the longest of the times that the rules give", () => {
  const split = aClockRule("Objection to a split", { event: "split-sent", count: 30 });
  expect(dayFor("proposed-split", RULE, split)).toEqual(["2026-12-25", "Objection to a split"]);
  expect(dayFor("finding", RULE, split)).toEqual(["2026-12-12", "Answer to a letter"]);
});

test("replyByFor() leaves out rules that count backwards or say something else", () => {
  const before = { ...RULE, id: "b", way: "before" } as const;
  const opens = { ...RULE, id: "o", meaning: "not-before" } as const;
  const permit = { ...RULE, id: "p", event: "permit-issued" } as const;
  expect(dayFor("finding", before, opens, permit)).toBeNull();
});
