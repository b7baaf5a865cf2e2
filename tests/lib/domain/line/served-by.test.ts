import { expect, test } from "vitest";
import { type ServingTieIn, servedBy } from "#lib/domain/line/served-by.ts";

function serving(id: string, station: number | null, rest: Partial<ServingTieIn> = {}) {
  const tieIn = { id, parentId: null };
  return { tieIn, station, live: true, propertyId: `house of ${id}`, ...rest };
}

const ROW: ServingTieIn[] = [
  serving("t1", 2_000, { propertyId: "12" }),
  serving("t2", 3_000, { propertyId: null }),
  serving("t3", 4_000, { propertyId: "14" }),
  serving("t4", 5_000, { propertyId: "14" }),
  serving("t5", 6_000, { propertyId: "16", live: false }),
];

test("servedBy() gives each property once, in the order of the line", () => {
  expect(servedBy(ROW, 0).properties).toEqual(["12", "14"]);
  expect(servedBy(ROW, 3_500).properties).toEqual(["14"]);
});

test("servedBy() counts who joins at the very station", () => {
  expect(servedBy(ROW, 5_000).properties).toEqual(["14"]);
  expect(servedBy(ROW, 5_010).properties).toEqual([]);
});

test("servedBy() names live tie-ins whose owner is unknown", () => {
  expect(servedBy(ROW, 3_000).unknownTieIns).toEqual(["t2"]);
  expect(servedBy(ROW, 3_010).unknownTieIns).toEqual([]);
});

test("servedBy() keeps apart what nobody can place: their flow may pass anywhere", () => {
  const tieIns = [
    ...ROW,
    serving("relative", null),
    serving("lost", 9_000, { tieIn: { id: "lost", parentId: "gone" } }),
    serving("dead", null, { live: false }),
  ];
  expect(servedBy(tieIns, 0).unplacedTieIns).toEqual(["relative", "lost"]);
  expect(servedBy(tieIns, 0).properties).toEqual(["12", "14"]);
});
