import { expect, test } from "vitest";
import { calculationOf } from "#app/lines/[lineId]/cost/calculation.ts";
import { compareSplits } from "#lib/domain/split/compare.ts";
import { outcomesOf, splitOutcome } from "#lib/domain/split/outcomes.ts";
import { aScopeItem } from "#tests/support/file.ts";
import { aChoice, aPricedLine, divideLine } from "#tests/support/priced-line.ts";

// 10 to 50 ft for $4,000.00; tie-ins at 20, 40 and 60 ft: 1000/3, + 2000/2, + 1000.
const LINE = aPricedLine(
  [
    { id: "a", station: 2_000 },
    { id: "b", station: 4_000 },
    { id: "c", station: 6_000 },
  ],
  {
    scope: [
      aScopeItem("dig", {
        place: "stretch",
        from: 1_000,
        to: 5_000,
        quantity: 4_000,
        rate: 10_000,
      }),
    ],
  },
);
const USED = divideLine(LINE, "portion-used");

test("calculationOf() is one payer's steps, which add up to the amount", () => {
  const { calculation, oddCents } = calculationOf(USED, "a");
  expect(calculation).toMatchObject({ amount: 33_333, exact: "100000/3" });
  expect(calculation?.steps).toEqual([
    { words: expect.stringMatching(/^10\.0–20\.0 ft/), exact: "100000/3" },
  ]);
  expect(oddCents).toContain("1 cent was left after rounding");
});

test("calculationOf() has none for a payer without a share", () => {
  expect(calculationOf(USED, "nowhere")).toEqual({ calculation: null, oddCents: "" });
});

test("what the comparison sends of every rule holds no calculation", () => {
  const sent = JSON.stringify(compareSplits([USED], null));
  expect(sent).toContain("33333");
  expect(sent).not.toMatch(/steps|exact|piece/);
});

test("outcomesOf() gives each choice what it would have by itself", () => {
  const choices = (["carried", "held-apart"] as const).flatMap((unknownShares) =>
    (["equal", "portion-used", "reach-owner"] as const).map((rule) =>
      aChoice(rule, { unknownShares }),
    ),
  );
  const together = outcomesOf(LINE.file, LINE.found, choices);
  expect(together).toEqual(choices.map((choice) => splitOutcome(LINE.file, LINE.found, choice)));
});
