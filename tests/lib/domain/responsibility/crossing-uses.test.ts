import { expect, test } from "vitest";
import { crossingUses } from "#lib/domain/responsibility/crossing-uses.ts";
import { aReach } from "#tests/support/answers.ts";
import { aCrossing } from "#tests/support/file.ts";

test("crossingUses() tells who is only crossed from who uses the pipe elsewhere or right there", () => {
  const reaches = [
    aReach(0, 2_000, { servedBy: ["A", "B"] }),
    aReach(2_000, 6_000, { servedBy: ["B"] }),
  ];
  const crossings = [
    aCrossing("only", { propertyId: "Z", from: 0, to: 6_000 }),
    aCrossing("above", { propertyId: "A", from: 2_000, to: 3_000 }),
    aCrossing("own", { propertyId: "B", from: 1_000, to: 3_000 }),
    aCrossing("touching", { propertyId: "A", from: 2_000, to: 2_500 }),
  ];
  expect(
    crossingUses({ crossings }, reaches).map(({ crossing, uses }) => [crossing.id, uses]),
  ).toEqual([
    ["only", "none"],
    ["above", "elsewhere"],
    ["own", "here"],
    ["touching", "elsewhere"],
  ]);
});
