import { expect, test } from "vitest";
import { costAnswer } from "#lib/domain/desk/cost-answer.ts";
import { dueThings } from "#lib/domain/desk/due.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  aConsent,
  aFile,
  anAddress,
  aParty,
  aProperty,
  aRole,
  aScopeItem,
} from "#tests/support/file.ts";
import { aLedgerEntry, aReversal, aVersion } from "#tests/support/ledger.ts";
import { aHold, anOutcome, aReport } from "#tests/support/report.ts";

const TODAY = "2026-11-25";
const VERSION = aVersion(1, { "12": 119_000, "14": 119_000 });
const REPORT = aReport({
  today: TODAY,
  splits: [anOutcome(aFile({ splits: [VERSION] }))],
});

function aLine(overrides: Partial<LineFile> = {}): LineFile {
  const { line: _, ...rest } = overrides;
  return aFile({
    properties: [
      aProperty("12", { address: anAddress("12 Fennel Row") }),
      aProperty("14", { address: anAddress("14 Fennel Row") }),
    ],
    parties: [aParty("owner-12"), aParty("owner-14")],
    roles: [aRole("owner-12", "12"), aRole("owner-14", "14")],
    scope: [aScopeItem("dig")],
    splits: [VERSION],
    ...rest,
  });
}

function moneyDue(file: LineFile, report = REPORT): string[] {
  return dueThings(file, report)
    .map(({ kind, sentence }) => `${kind}: ${sentence}`)
    .filter((line) => /invoiced|Credit not yet|was due/.test(line));
}

const INVOICE = aLedgerEntry(1, { amount: 119_000, dueOn: "2026-10-25", splitId: VERSION.id });
const PAYMENT = aLedgerEntry(2, { kind: "payment", amount: 100_000 });

test("money past its day is late, with whose and since when, until it comes in", () => {
  const file = aLine({ ledger: [INVOICE, PAYMENT] });
  expect(moneyDue(file)).toContain("late: $190.00 from 12 Fennel Row was due Sunday, October 25");
  const paid = aLedgerEntry(3, { kind: "payment", amount: 19_000 });
  expect(moneyDue(aLine({ ledger: [INVOICE, PAYMENT, paid] })).join()).not.toContain("was due");
});

test("a share is to be invoiced once its owners agreed, or once invoicing has begun", () => {
  expect(moneyDue(aLine())).toEqual([]);
  const agreed = aConsent("c", {
    kind: "pay",
    state: "given",
    partyId: "owner-14",
    propertyId: "14",
    splitId: VERSION.id,
    amount: 119_000,
  });
  expect(moneyDue(aLine({ consents: [agreed] }))).toEqual([
    "due: Not yet invoiced: $1,190.00, 14 Fennel Row",
  ]);
  const begun = aLine({ ledger: [{ ...INVOICE, dueOn: "2026-12-25" }] });
  expect(moneyDue(begun)).toEqual(["due: Not yet invoiced: $1,190.00, 14 Fennel Row"]);
});

test("nothing is to be invoiced while a hold keeps the split from being final", () => {
  const file = aLine({ ledger: [{ ...INVOICE, dueOn: "2026-12-25" }] });
  const held = { ...REPORT, holds: [aHold("tie-in-owner-unknown", "T3", ["final-split"])] };
  expect(moneyDue(file, held)).toEqual([]);
});

test("a new split that asks less is to be credited", () => {
  const second = aVersion(2, { "12": 100_000, "14": 119_000 });
  const ledger = [
    { ...INVOICE, dueOn: "2026-12-25" },
    aLedgerEntry(2, {
      amount: 119_000,
      propertyId: "14",
      partyId: "owner-14",
      dueOn: "2026-12-25",
      splitId: VERSION.id,
    }),
  ];
  expect(moneyDue(aLine({ splits: [VERSION, second], ledger }))).toEqual([
    "due: Credit not yet issued after the new split: $190.00, 12 Fennel Row",
  ]);
});

test("the answer on the cost tells what came in, and presses for what is past its day", () => {
  expect(costAnswer(aLine(), REPORT).sentence).not.toContain("received");
  const { sentence, closes } = costAnswer(aLine({ ledger: [INVOICE, PAYMENT] }), REPORT);
  expect(sentence).toContain("$1,000.00 of $2,380.00 received");
  expect(closes).toBe("Collect $190.00 past due: 12 Fennel Row");
  const undone = aLine({ ledger: [INVOICE, PAYMENT, aReversal(3, PAYMENT)] });
  expect(costAnswer(undone, REPORT).sentence).not.toContain("received");
});

test("what is due leads to the page where it is done", () => {
  const whereOf = (file: LineFile) =>
    dueThings(file, REPORT).map(({ sentence, where }) => [sentence.slice(0, 12), where]);
  expect(whereOf(aLine({ ledger: [INVOICE, PAYMENT] }))).toContainEqual([
    "$190.00 from",
    "cost/money",
  ]);
  expect(whereOf(aLine({ ledger: [INVOICE] }))).toContainEqual([
    "Not yet invo",
    "cost/money#invoice",
  ]);
  expect(costAnswer(aLine({ ledger: [INVOICE, PAYMENT] }), REPORT).where).toBe("cost/money");
});
