import { expect, test } from "vitest";
import { feeSentences, feesOf } from "#lib/domain/application/fees.ts";
import { feeThings } from "#lib/domain/desk/fee-things.ts";
import type { Fee } from "#lib/domain/facts/authority.ts";
import type { PermitStep } from "#lib/domain/facts/permit.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { anApplication, aSurfaceCut } from "#tests/support/application.ts";
import {
  aFee,
  aFile,
  anAuthority,
  anInspection,
  aPermit,
  aPermitStep,
  aProperty,
  aScopeItem,
} from "#tests/support/file.ts";
import { aFeeEntry } from "#tests/support/permit.ts";

const PERMIT = aPermit("permit", { number: "SS-1" });

const SCHEDULE = anAuthority({
  fees: [
    aFee("base", { title: "Repair", amount: 28_000 }),
    aFee("connection", { title: "Each connection", amount: 6_000, per: "connection", included: 1 }),
    aFee("house", { title: "Each building", amount: 1_000, per: "structure" }),
    aFee("hour", { title: "Inspector", amount: 9_550, per: "hour" }),
    aFee("again", { title: "Reinspection", amount: 12_000, per: "reinspection" }),
    aFee("deposit", { title: "Street deposit", amount: 50_000, per: "deposit" }),
    aFee("street", { title: "Street use", amount: 9_900, permitKind: "street-use" }),
  ],
});

const FILE = aFile({
  authority: SCHEDULE,
  permits: [PERMIT],
  properties: [
    aProperty("12", { stake: "connected" }),
    aProperty("14", { stake: "connected" }),
    aProperty("16", { stake: "neighbour" }),
  ],
  inspections: [
    anInspection("a", "permit", { bookedFor: "2026-11-10", result: "failed", hours: 150 }),
    anInspection("b", "permit", { bookedFor: "2026-11-12", result: "passed", hours: 75 }),
    anInspection("c", "permit", { bookedFor: "2026-11-11", result: "cancelled", hours: 900 }),
    anInspection("d", "permit", { title: "Test", bookedFor: "2026-11-13", result: "passed" }),
  ],
});

test("feesOf() works out each fee of the permit's kind by what it is counted by", () => {
  const { lines, total, deposit, due } = feesOf(FILE, PERMIT, 3);
  expect(lines.map(({ fee, sum, amount }) => [fee.id, sum, amount])).toEqual([
    ["base", "1 permit: 1 × $280.00", 28_000],
    ["connection", "3 connections, 1 included: 2 × $60.00", 12_000],
    ["house", "2 properties served: 2 × $10.00", 2_000],
    // 2.25 hours at $95.50 are $214.875.
    ["hour", "2.25 hours: 2.25 × $95.50", 21_488],
    ["again", "1 reinspection: 1 × $120.00", 12_000],
    ["deposit", "returned with the final", 50_000],
  ]);
  expect(total).toBe(28_000 + 12_000 + 2_000 + 21_488 + 12_000 + 50_000);
  expect(deposit).toBe(50_000);
  expect(due).toBe(total);
});

test("feesOf() charges nothing below what is included, and expects one inspection", () => {
  const fees = [
    aFee("connection", { amount: 6_000, per: "connection", included: 4 }),
    aFee("inspection", { amount: 9_500, per: "inspection" }),
  ];
  const file = aFile({ authority: anAuthority({ fees }), permits: [PERMIT] });
  expect(feesOf(file, PERMIT, 2).lines.map(({ amount }) => amount)).toEqual([0, 9_500]);
});

const PLAIN = anAuthority({
  fees: [
    aFee("base", { amount: 28_000 }),
    aFee("connection", { amount: 3_000, per: "connection" }),
    aFee("deposit", { amount: 50_000, per: "deposit" }),
  ],
});

function said(connections: number, more: Partial<typeof FILE>) {
  const file = aFile({ authority: PLAIN, permits: [PERMIT], ...more });
  const isFinal = (more.permitSteps ?? []).some(({ state }) => state === "final");
  return feeSentences(feesOf(file, PERMIT, connections), isFinal);
}

test("a change of facts says that the fee is another one than was billed and paid", () => {
  const permitFees = [
    aFeeEntry("bill", { kind: "billed", amount: 81_000 }),
    aFeeEntry("check", { amount: 81_000 }),
  ];
  expect(said(1, { permitFees })).toEqual([]);
  expect(said(3, { permitFees })).toEqual([
    "Billed $810.00; by the schedule and the facts as they are now it is $870.00. Check what is counted, or ask the authority.",
    "Paid $810.00. The schedule now comes to $870.00: $60.00 left to pay.",
  ]);
});

test("a deposit comes back with the final, and not before", () => {
  const permitFees = [aFeeEntry("check", { amount: 81_000 })];
  const permitSteps: PermitStep[] = [aPermitStep("s", "permit", { state: "final" })];
  expect(said(1, { permitFees })).toEqual([]);
  expect(said(1, { permitFees, permitSteps })).toEqual([
    "The permit is final: $500.00 of the deposit has to come back.",
  ]);
  const back = aFeeEntry("back", { kind: "refunded", amount: 50_000 });
  expect(said(1, { permitFees: [...permitFees, back], permitSteps })).toEqual([]);
});

test("feeThings() presses for what is left to pay once something was paid, and for nothing before", () => {
  const base = aFile({ authority: PLAIN, permits: [PERMIT] });
  const things = (file: typeof base) =>
    feeThings(file, reportOn(file, "2026-11-25")).map(({ kind, sentence }) => [kind, sentence]);
  expect(things(base)).toEqual([]);
  expect(things({ ...base, permitFees: [aFeeEntry("check", { amount: 70_000 })] })).toEqual([
    ["due", "Fees of side sewer permit SS-1: $80.00 left to pay"],
  ]);
  const withdrawn = [aPermitStep("s", "permit", { state: "withdrawn" })];
  expect(things({ ...base, permitFees: [aFeeEntry("c")], permitSteps: withdrawn })).toEqual([]);
});

const VALUED = (more: Partial<Fee>, valuation: number | null) =>
  feesOf(
    aFile({
      authority: anAuthority({ fees: [aFee("share", { per: "cost", amount: 100, ...more })] }),
      permits: [PERMIT],
      applications: [anApplication({ valuation })],
    }),
    PERMIT,
    1,
  );

test.each<[Partial<Fee>, number, string, number]>([
  [{ step: 100 }, 124_000, "valuation $1,240.00: 13 × $1.00 for each $100.00 or part of it", 1_300],
  [{ step: 100 }, 120_000, "valuation $1,200.00: 12 × $1.00 for each $100.00 or part of it", 1_200],
  [
    { step: 100, partCounts: "share" },
    124_050,
    "valuation $1,240.50: 12.405 × $1.00 for each $100.00",
    1_241,
  ],
  [
    { step: 1_000, included: 1_000, amount: 500 },
    250_000,
    "valuation $2,500.00, $1,000.00 included: 2 × $5.00 for each $1,000.00 or part of it",
    1_000,
  ],
  [
    { step: 100, least: 500, most: 2_500 },
    20_000,
    "valuation $200.00: 2 × $1.00 for each $100.00 or part of it, at least $5.00",
    500,
  ],
  [
    { step: 100, least: 500, most: 2_500 },
    900_000,
    "valuation $9,000.00: 90 × $1.00 for each $100.00 or part of it, at most $25.00",
    2_500,
  ],
])(
  "a fee by the cost of the work goes in its steps, between its least and its most (%#)",
  (fee, value, words, amount) => {
    const { lines, total, due } = VALUED(fee, value);
    expect(lines.map((line) => [line.sum, line.amount])).toEqual([[words, amount]]);
    expect([total, due]).toEqual([amount, amount]);
  },
);

test("a fee by a cost that nobody entered is not known, and never nothing", () => {
  const fees = VALUED({ step: 100, least: 500 }, null);
  expect(fees.lines.map(({ sum, amount }) => [sum, amount])).toEqual([
    ["not known: no valuation and no priced work is entered", null],
  ]);
  expect(fees).toMatchObject({ total: null, known: 0, due: null, dueAtLeast: 0 });
  expect(feeSentences(fees, false)).toEqual([
    "What “Side sewer permit” comes to is not known yet; see below for what to enter. The other fees come to $0.00.",
  ]);
  expect(VALUED({ step: null }, 100_000).lines[0]).toMatchObject({
    amount: null,
    sum: "not known: the schedule does not say for how many dollars of cost the amount is",
  });
});

test("while a fee is not known, what is paid over the others is not asked back, and what is short is", () => {
  const fees = [aFee("base", { amount: 28_000 }), aFee("share", { per: "cost", step: 100 })];
  const file = (amount: number) =>
    aFile({
      authority: anAuthority({ fees }),
      permits: [PERMIT],
      permitFees: [aFeeEntry("check", { amount }), aFeeEntry("bill", { kind: "billed", amount })],
    });
  const things = (amount: number) =>
    feeThings(file(amount), reportOn(file(amount), "2026-11-25")).map(({ sentence }) => sentence);
  expect(feeSentences(feesOf(file(40_000), PERMIT, 1), false)).toHaveLength(1);
  expect(things(40_000)).toEqual([]);
  expect(feeSentences(feesOf(file(20_000), PERMIT, 1), false)[1]).toBe(
    "Paid $200.00. The schedule now comes to at least $280.00: at least $80.00 left to pay.",
  );
  expect(things(20_000)).toEqual(["Fees of side sewer permit SS-1: at least $80.00 left to pay"]);
});

const CUT = aSurfaceCut({ from: 0, to: 2_000, trenchWidth: 300 });

function bySurface(more: Partial<Fee>, file: Partial<typeof FILE>) {
  const fees = [aFee("cut", { per: "square-foot", amount: 5, ...more })];
  const { lines } = feesOf(
    aFile({ authority: anAuthority({ fees }), permits: [PERMIT], ...file }),
    PERMIT,
    1,
  );
  return lines.map(({ sum, amount }) => [sum, amount])[0];
}

test("a fee by square foot counts the surfaces to cut, of one kind or of all", () => {
  const surfaceCuts = [CUT, aSurfaceCut({ id: "lawn", surface: "lawn", to: 500 })];
  expect(bySurface({}, { surfaceCuts })).toEqual(["75 sq ft of surface cut: 75 × $0.05", 375]);
  expect(bySurface({ surface: "asphalt" }, { surfaceCuts })).toEqual([
    "60 sq ft of asphalt cut: 60 × $0.05",
    300,
  ]);
  expect(bySurface({ surface: "concrete", least: 3_000 }, { surfaceCuts })).toEqual([
    "0 sq ft of concrete cut: 0 × $0.05",
    0,
  ]);
  expect(bySurface({ step: 50, included: 5, amount: 10_000 }, { surfaceCuts })).toEqual([
    "75 sq ft of surface cut, 5 sq ft included: 2 × $100.00 for each 50 sq ft or part of it",
    20_000,
  ]);
  expect(bySurface({ least: 3_000 }, { surfaceCuts })?.[1]).toBe(3_000);
});

test("a fee by square foot is not known until every surface is", () => {
  const unset = aSurfaceCut({ id: "other", from: 3_000, to: 4_000, surface: "not-set" });
  const bare = aSurfaceCut({ id: "bare", trenchWidth: null, restoration: "" });
  expect(bySurface({}, {})).toEqual([
    "not known: no surface to cut is entered under Application",
    null,
  ]);
  expect(bySurface({ surface: "asphalt" }, { surfaceCuts: [CUT, unset] })).toEqual([
    "not known: the cut at 30.0 ft lacks: surface",
    null,
  ]);
  expect(bySurface({}, { surfaceCuts: [CUT, bare] })).toEqual([
    "not known: the cut at 0.0 ft lacks: width of the trench",
    null,
  ]);
});

test("a fee by square foot is nothing only where the work that is entered digs nothing", () => {
  const lined = aScopeItem("lining", { kind: "line" });
  const dug = aScopeItem("dig", { kind: "dig-and-replace" });
  const permitOnly = aScopeItem("fee", { kind: "permit-fee" });
  expect(bySurface({ least: 3_000 }, { scope: [lined] })).toEqual(["nothing is dug: 0 × $0.05", 0]);
  expect(bySurface({}, { scope: [lined, dug] })?.[1]).toBe(null);
  expect(bySurface({}, { scope: [permitOnly] })?.[1]).toBe(null);
});
