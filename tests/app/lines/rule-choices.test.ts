import { expect, test } from "vitest";
import { onlyRule, ruleChoices } from "#app/lines/[lineId]/responsibility/rule-choices.ts";
import { anAuthority, aRule } from "#tests/support/file.ts";

const CITY = anAuthority({
  id: "city",
  name: "City",
  rules: [aRule("r", { title: "To the main" })],
});
const TOWN = anAuthority({ id: "town", name: "Test Township", rules: [] });
const DISTRICT = anAuthority({
  id: "district",
  name: "District",
  rules: [aRule("d", { title: "To the line" })],
});

test("ruleChoices() offers the line's own authority first, others by name, none that has no rule", () => {
  expect(ruleChoices([TOWN, DISTRICT, CITY], "city")).toEqual([
    { value: "city", label: "City: no rule selected" },
    { value: "city r", label: "City: To the main" },
    { value: "district d", label: "Another authority, District: To the line" },
  ]);
});

test("ruleChoices() offers every authority where the line has none yet", () => {
  expect(ruleChoices([TOWN, CITY], null).map(({ value }) => value)).toEqual([
    "town",
    "city",
    "city r",
  ]);
});

test("onlyRule() names the one rule that may apply, and none where there are several or none", () => {
  const one = anAuthority({
    id: "city",
    name: "City",
    rules: [aRule("r1", { title: "To the main" })],
  });
  const other = anAuthority({
    id: "district",
    name: "District",
    rules: [aRule("r2"), aRule("r3")],
  });
  expect(onlyRule([one], null)).toEqual({ value: "city r1", label: "City: To the main" });
  expect(onlyRule([one, other], "city")?.value).toBe("city r1");
  expect(onlyRule([one, other], null)).toBeNull();
  expect(onlyRule([one, other], "district")).toBeNull();
  expect(onlyRule([anAuthority({ rules: [] })], null)).toBeNull();
});
