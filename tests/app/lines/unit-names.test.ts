import { expect, test } from "vitest";
import { missingUnitNames } from "#app/lines/[lineId]/who/unit-names.ts";

test("missingUnitNames() numbers what is missing and leaves out names that are there", () => {
  expect(missingUnitNames(3, ["unit 2"], "numbers")).toEqual(["Unit 1", "Unit 3"]);
});

test("missingUnitNames() counts units of another name toward the whole", () => {
  expect(missingUnitNames(2, ["Bakery"], "letters")).toEqual(["Unit A"]);
});

test("missingUnitNames() adds nothing where there are enough", () => {
  expect(missingUnitNames(1, ["Bakery", "Unit 2"], "numbers")).toEqual([]);
});

test("missingUnitNames() goes on with two letters after Z", () => {
  expect(missingUnitNames(28, [], "letters").slice(25)).toEqual(["Unit Z", "Unit AA", "Unit AB"]);
});
