import { expect, test } from "vitest";
import { fixtureWeights } from "#lib/domain/split/fixture-weights.ts";
import { anAgreement, aProperty, aScopeItem, aUnit } from "#tests/support/file.ts";
import { amountsOf, aPricedLine, divideLine } from "#tests/support/priced-line.ts";

// Sharing as our own rules have it, worked out by hand; no source that was read says it.

test("equal shares of the shared pipe, and each its own branch, whatever the house's place", () => {
  const line = aPricedLine(
    [
      { id: "A", station: 4_000 },
      { id: "B", station: 4_000 },
    ],
    {
      scope: [
        aScopeItem("shared", { from: 0, to: 4_000, quantity: 4_000 }),
        aScopeItem("own", {
          place: "branch",
          tieInId: "B",
          from: null,
          to: null,
          quantity: 1_000,
        }),
      ],
    },
  );
  expect(amountsOf(divideLine(line, "equal"))).toEqual({ A: 200_000, B: 300_000 });
});

test("upstream of the fault, nobody below it pays", () => {
  const line = aPricedLine(
    [
      { id: "downhill", station: 1_000 },
      { id: "up-1", station: 6_000 },
      { id: "up-2", station: 8_000 },
    ],
    {
      scope: [
        aScopeItem("fix", { place: "point", from: 3_000, to: null, quantity: 100, rate: 900_000 }),
      ],
    },
  );
  const outcome = divideLine(line, "upstream-of-fault", { faultStation: 3_000 });
  expect(amountsOf(outcome)).toEqual({ downhill: 0, "up-1": 450_000, "up-2": 450_000 });
});

test("by the default, a lot that is not connected contributes nothing", () => {
  const line = aPricedLine(
    [
      { id: "A", station: 2_000 },
      { id: "B", station: 4_000 },
    ],
    {
      properties: [aProperty("unbuilt")],
      scope: [aScopeItem("job", { quantity: 100, rate: 90_000 })],
    },
  );
  expect(amountsOf(divideLine(line, "equal"))).toEqual({ A: 45_000, B: 45_000 });
});

// By the terms of the instrument: it names whom it binds.
test("recorded shares bind who is named, connected or not", () => {
  const line = aPricedLine([{ id: "A", station: 2_000 }], {
    properties: [aProperty("moved")],
    agreements: [
      anAgreement("deed", {
        recordedOn: "1998-04-01",
        shares: [
          { propertyId: "A", parts: 2 },
          { propertyId: "moved", parts: 1 },
        ],
      }),
    ],
    scope: [aScopeItem("job", { quantity: 100, rate: 90_000 })],
  });
  expect(amountsOf(divideLine(line, "recorded-shares"))).toEqual({ A: 60_000, moved: 30_000 });
});

test("by fixture units: a house of 9 and one of 18 (IPC Table 709.1) pay one and two thirds", () => {
  // No recorded agreement was found that shares so: an option of the owners' own.
  const counts = (propertyId: string, count: number) =>
    (["bathroom-group", "kitchen-sink", "clothes-washer"] as const).map((fixture) => ({
      id: `${propertyId}-${fixture}`,
      propertyId,
      unitId: null,
      fixture,
      count,
      note: "",
    }));
  const plain = aPricedLine(
    [
      { id: "A", station: 2_000 },
      { id: "B", station: 4_000 },
    ],
    {
      line: { plumbingCode: "ipc" },
      fixtures: [...counts("A", 1), ...counts("B", 2)],
      units: [aUnit("a", "A")],
      scope: [aScopeItem("job", { quantity: 100, rate: 90_000 })],
    },
  );
  const proposed = fixtureWeights(plain.file, plain.found.tieIns);
  if (!proposed.ok) throw new Error(proposed.error);
  const properties = plain.file.properties.map((property) => ({
    ...property,
    weight: proposed.value.weights.find((each) => each.propertyId === property.id)?.weight ?? null,
  }));
  expect(proposed.value.weights.map(({ weight }) => weight)).toEqual([9, 18]);
  const weighed = { ...plain, file: { ...plain.file, properties } };
  expect(amountsOf(divideLine(weighed, "weights"))).toEqual({ A: 30_000, B: 60_000 });
});
