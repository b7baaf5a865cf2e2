import { expect, test } from "vitest";
import { feeThings } from "#lib/domain/desk/fee-things.ts";
import type { PermitStep } from "#lib/domain/facts/permit.ts";
import { feeSentences, feesOf } from "#lib/domain/permit/fees.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFee,
  aFile,
  anAuthority,
  anInspection,
  aPermit,
  aPermitStep,
  aProperty,
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
