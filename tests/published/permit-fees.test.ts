import { expect, test } from "vitest";
import { feesOf } from "#lib/domain/application/fees.ts";
import { anApplication, aSurfaceCut } from "#tests/support/application.ts";
import { aFee, aFile, anAuthority, anInspection, aPermit, aProperty } from "#tests/support/file.ts";

/*
 * Fees as towns' codes have them; the codes were read in the publisher's pages. What a job comes to
 * was worked out here, by hand, from the code's words.
 */

const PERMIT = aPermit("permit");
const held = (id: string, on: string, result: "failed" | "passed") =>
  anInspection(id, "permit", { bookedFor: on, result });

// https://codelibrary.amlegal.com/codes/frankfortin/latest/frankfort_in/0-0-0-1586, § 51.050: $25 for a
// residential service's permit and inspection, $325 a tap, one tap to a lot.
test("Frankfort, Indiana: a residential permit with three taps comes to $1,000", () => {
  const fees = [
    aFee("permit", { amount: 2_500 }),
    aFee("tap", { amount: 32_500, per: "connection" }),
  ];
  const file = aFile({ authority: anAuthority({ fees }), permits: [PERMIT] });
  expect(feesOf(file, PERMIT, 3)).toMatchObject({ total: 100_000, due: 100_000 });
});

// https://codelibrary.amlegal.com/codes/alma/latest/alma_ks/0-0-0-1448, 4-412: a plumbing permit is $1 per
// $100 of the estimated cost of the work, $5 at least and $25 at most. Whether a part of $100 counts is
// not said there; here the costs are whole hundreds.
test.each([
  [30_000, 500],
  [120_000, 1_200],
  [250_000, 2_500],
  [900_000, 2_500],
])("Alma, Kansas: work at %d cents pays %d by its cost", (valuation, total) => {
  const fees = [aFee("p", { amount: 100, per: "cost", step: 100, least: 500, most: 2_500 })];
  const applications = [anApplication({ valuation })];
  const file = aFile({ authority: anAuthority({ fees }), permits: [PERMIT], applications });
  expect(feesOf(file, PERMIT, 1).total).toBe(total);
});

// By cost with a part counted:
// https://codelibrary.amlegal.com/codes/prosperity/latest/prosperity_sc/0-0-0-2413, § 150.04(A)(1), $1,001 to
// $5,000: $25 for the first $1,000 and $5 for each additional $1,000 or fraction of it.
test.each([
  [100_100, 3_000],
  [300_000, 3_500],
  [300_001, 4_000],
])("Prosperity, South Carolina: work at %d cents pays %d", (valuation, total) => {
  const fees = [
    aFee("first", { amount: 2_500 }),
    aFee("more", { amount: 500, per: "cost", step: 1_000, included: 1_000 }),
  ];
  const applications = [anApplication({ valuation })];
  const file = aFile({ authority: anAuthority({ fees }), permits: [PERMIT], applications });
  expect(feesOf(file, PERMIT, 1).total).toBe(total);
});

// https://codelibrary.amlegal.com/codes/westhavenut/latest/westhaven_ut/0-0-0-3965, § 152.20(D)(1): $0.05 for
// each square foot of shoulder, gravel or dirt road, $30 at least.
test.each([
  [10_000, 3_000],
  [30_000, 4_500],
])(
  "West Haven, Utah: a cut in gravel 3 ft wide over %d hundredths of a foot pays %d",
  (to, total) => {
    const fees = [aFee("g", { amount: 5, per: "square-foot", surface: "gravel", least: 3_000 })];
    const surfaceCuts = [aSurfaceCut({ surface: "gravel", trenchWidth: 300, to })];
    const file = aFile({ authority: anAuthority({ fees }), permits: [PERMIT], surfaceCuts });
    expect(feesOf(file, PERMIT, 1).total).toBe(total);
  },
);

// https://codelibrary.amlegal.com/codes/yuma/latest/yuma_az/0-0-0-53895, § 210-30(A)(4)(a)2.: pavement less
// than 12 months old, over ten square feet: $2,500 for every additional 50 square feet or fraction of it.
test("Yuma, Arizona: 75 sq ft of new asphalt are two steps of 50 beyond the first ten", () => {
  const fees = [
    aFee("new", {
      amount: 250_000,
      per: "square-foot",
      surface: "asphalt",
      step: 50,
      included: 10,
    }),
  ];
  const surfaceCuts = [aSurfaceCut({ trenchWidth: 300, to: 2_500 })];
  const file = aFile({ authority: anAuthority({ fees }), permits: [PERMIT], surfaceCuts });
  expect(feesOf(file, PERMIT, 1).total).toBe(500_000);
});

// https://codelibrary.amlegal.com/codes/alma/latest/alma_ks/0-0-0-3086: the permit's fee, here at its
// most, $25, has one inspection in it; each one after that is $25.
test.each([
  [[], 2_500],
  [[held("a", "2026-11-10", "passed")], 2_500],
  [[held("a", "2026-11-10", "failed"), held("b", "2026-11-12", "passed")], 5_000],
  [
    [
      held("a", "2026-11-10", "failed"),
      held("b", "2026-11-12", "failed"),
      held("c", "2026-11-16", "passed"),
    ],
    7_500,
  ],
])(
  "Alma, Kansas: one inspection is in the permit's fee, each after it is $25 more (%#)",
  (inspections, total) => {
    const fees = [
      aFee("permit", { amount: 2_500 }),
      aFee("inspection", { amount: 2_500, per: "inspection", included: 1 }),
    ];
    const file = aFile({ authority: anAuthority({ fees }), permits: [PERMIT], inspections });
    expect(feesOf(file, PERMIT, 1).total).toBe(total);
  },
);

// https://codelibrary.amlegal.com/codes/memphis/latest/memphis_mi/0-0-0-911, § 52.15(B): $1,000 a
// dwelling unit; two houses of one unit each, and a neighbor that is not served.
test("Memphis, Michigan: two houses on one sewer pay $1,000 each, the neighbor nothing", () => {
  const fees = [aFee("unit", { amount: 100_000, per: "structure" })];
  const file = aFile({
    authority: anAuthority({ fees }),
    permits: [PERMIT],
    properties: [
      aProperty("12", { stake: "connected" }),
      aProperty("14", { stake: "connected" }),
      aProperty("16", { stake: "neighbour" }),
    ],
  });
  expect(feesOf(file, PERMIT, 1).total).toBe(200_000);
});
