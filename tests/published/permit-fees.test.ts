import { expect, test } from "vitest";
import { feesOf } from "#lib/domain/permit/fees.ts";
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
