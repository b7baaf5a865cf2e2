import { describe, expect, test } from "vitest";
import type { FixtureCount } from "#lib/domain/facts/capacity.ts";
import { fixtureWeights } from "#lib/domain/split/fixture-weights.ts";
import { aPricedLine } from "#tests/support/priced-line.ts";

function aCount(propertyId: string, fixture: FixtureCount["fixture"], count: number): FixtureCount {
  return {
    id: `${propertyId}-${fixture}-${count}`,
    propertyId,
    unitId: null,
    fixture,
    count,
    note: "",
  };
}

const AB = [
  { id: "A", station: 2_000 },
  { id: "B", station: 6_000 },
];

function weightsOf(fixtures: readonly FixtureCount[], plumbingCode: "ipc" | "upc" | null = "ipc") {
  const { file, found } = aPricedLine(AB, { fixtures, line: { plumbingCode } });
  return fixtureWeights(file, found.tieIns);
}

describe("fixtureWeights()", () => {
  test("fixtureWeights() adds the code's units up, with the sum written out", () => {
    // IPC Table 709.1: bathroom group of 1.6 gallons 5, kitchen sink 2, clothes washer 2.
    const proposed = weightsOf([
      aCount("A", "bathroom-group", 1),
      aCount("A", "kitchen-sink", 1),
      aCount("A", "clothes-washer", 1),
      aCount("B", "bathroom-group", 1),
      aCount("B", "bathroom-group", 2),
    ]);
    expect(proposed).toMatchObject({
      ok: true,
      value: {
        table: "IPC Table 709.1, private use",
        weights: [
          {
            propertyId: "A",
            weight: 9,
            words: "1 bathroom group × 5 + 1 kitchen sink × 2 + 1 clothes washer × 2 = 9",
          },
          { propertyId: "B", weight: 15, words: "3 bathroom groups × 5 = 15" },
        ],
      },
    });
  });

  test("fixtureWeights() follows the code of the line: a washer is 3 under the UPC", () => {
    const counts = [aCount("A", "clothes-washer", 1), aCount("B", "lavatory", 2)];
    expect(weightsOf(counts, "upc")).toMatchObject({
      value: { weights: [{ weight: 3 }, { weight: 2 }] },
    });
  });

  test("fixtureWeights() says what is wanting instead of guessing", () => {
    const bath = aCount("A", "bathroom-group", 1);
    expect(weightsOf([])).toMatchObject({ error: "No plumbing fixtures counted yet." });
    expect(weightsOf([bath], null)).toMatchObject({ error: expect.stringContaining("Select") });
    expect(weightsOf([bath])).toMatchObject({ error: "Count the fixtures of B Fennel Row too." });
    expect(weightsOf([bath, aCount("B", "lavatory", 1)], "upc")).toMatchObject({
      error: expect.stringContaining("no row for bathroom group"),
    });
  });
});
