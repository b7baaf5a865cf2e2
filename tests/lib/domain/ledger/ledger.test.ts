import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LedgerEntry } from "#lib/domain/facts/ledger-entry.ts";
import { accountsIn } from "#lib/domain/ledger/accounts.ts";
import { ageOf, agingOf } from "#lib/domain/ledger/aging.ts";
import { balanceOf, effectOf, nextNumber, standingEntries } from "#lib/domain/ledger/balance.ts";
import { ledgerProblems } from "#lib/domain/ledger/problems.ts";
import { statementRows } from "#lib/domain/ledger/statement-of-account.ts";
import { nonsenseIn } from "#lib/domain/report/sense.ts";
import { aFile, aParty, aProperty } from "#tests/support/file.ts";
import { aLedgerEntry, aReversal } from "#tests/support/ledger.ts";

/** A book of which nobody says who holds title: each party is an account of its own. */
function fileWith(ledger: readonly LedgerEntry[]) {
  return { ledger, splits: [], roles: [], parties: [] };
}

/** What an office might do next: enter money on one of three accounts, or take an entry back. */
const steps = fc.array(
  fc.record({
    kind: fc.constantFrom("invoice", "deposit", "payment", "credit", "refund", "reversal"),
    house: fc.constantFrom("12", "14", "16"),
    amount: fc.integer({ min: 1, max: 5_000_000 }),
    which: fc.nat(),
    due: fc.integer({ min: 0, max: 27 }),
  }),
  { maxLength: 40 },
);

type Step = typeof steps extends fc.Arbitrary<infer T> ? T : never;

/** A book from the steps; what cannot be taken back is left out. */
function bookOf(all: Step): LedgerEntry[] {
  const ledger: LedgerEntry[] = [];
  for (const { kind, house, amount, which, due } of all) {
    const number = nextNumber(ledger);
    if (kind === "reversal") {
      const standing = standingEntries(ledger);
      const undone = standing[which % Math.max(standing.length, 1)];
      if (undone !== undefined) ledger.push(aReversal(number, undone));
      continue;
    }
    const dueOn = kind === "invoice" ? `2026-11-${String(due + 1).padStart(2, "0")}` : null;
    ledger.push(
      aLedgerEntry(number, { kind, amount, propertyId: house, partyId: `owner-${house}`, dueOn }),
    );
  }
  return ledger;
}

describe("any book that an office can write", () => {
  const run = (check: (ledger: LedgerEntry[]) => void) =>
    fc.assert(fc.property(steps.map(bookOf), check));

  test("has no problem, and adds up the same by account, by entry and over the line", () => {
    run((ledger) => {
      expect(ledgerProblems(ledger)).toEqual([]);
      const byEntry = ledger.reduce((sum, entry) => sum + effectOf(ledger, entry), 0);
      const byAccount = accountsIn(fileWith(ledger)).reduce((sum, { open }) => sum + open, 0);
      expect(byAccount).toBe(byEntry);
      expect(balanceOf(ledger).open).toBe(byEntry);
    });
  });

  test("does not mind in which order its entries are read", () => {
    run((ledger) => {
      const turned = ledger.toReversed();
      expect(balanceOf(turned)).toEqual(balanceOf(ledger));
      expect(accountsIn(fileWith(turned))).toEqual(accountsIn(fileWith(ledger)));
    });
  });

  test("comes to nothing when everything is taken back", () => {
    run((ledger) => {
      const undone = [...ledger];
      for (const entry of standingEntries(ledger))
        undone.push(aReversal(nextNumber(undone), entry));
      expect(ledgerProblems(undone)).toEqual([]);
      expect(balanceOf(undone)).toEqual({
        invoiced: 0,
        received: 0,
        credited: 0,
        refunded: 0,
        open: 0,
      });
      for (const account of accountsIn(fileWith(undone))) expect(account.open).toBe(0);
    });
  });

  test("ages to what is open on each account", () => {
    run((ledger) => {
      for (const account of accountsIn(fileWith(ledger))) {
        const own = ledger.filter(({ propertyId }) => propertyId === account.propertyId);
        const { ages, ahead, invoices } = agingOf(own, "2026-11-25");
        const sum = Object.values(ages).reduce((all, each) => all + each, 0);
        expect(sum - ahead).toBe(account.open);
        expect(invoices.reduce((all, { open }) => all + open, 0)).toBe(sum);
        expect(Math.min(sum, ahead)).toBe(0);
      }
    });
  });

  test("reads as a statement whose last balance is what is open", () => {
    run((ledger) => {
      for (const account of accountsIn(fileWith(ledger))) {
        const rows = statementRows(fileWith(ledger), account, "en");
        expect(rows.at(-1)?.balance).toBe(account.open);
        const moved = rows.reduce((sum, row) => sum + (row.charged ?? 0) - (row.settled ?? 0), 0);
        expect(moved).toBe(account.open);
      }
    });
  });
});

describe("a balance", () => {
  test("is what was invoiced and refunded less what came in and was credited", () => {
    const ledger = [
      aLedgerEntry(1, { kind: "deposit", amount: 20_000 }),
      aLedgerEntry(2, { amount: 119_000 }),
      aLedgerEntry(3, { kind: "payment", amount: 100_000 }),
      aLedgerEntry(4, { kind: "credit", amount: 4_000 }),
      aLedgerEntry(5, { kind: "refund", amount: 5_000 }),
    ];
    expect(balanceOf(ledger)).toEqual({
      invoiced: 119_000,
      received: 120_000,
      credited: 4_000,
      refunded: 5_000,
      open: 0,
    });
  });

  test("forgets what was taken back, on both sides", () => {
    const invoice = aLedgerEntry(1);
    const payment = aLedgerEntry(2, { kind: "payment", amount: 4_000 });
    const ledger = [invoice, payment, aReversal(3, payment)];
    expect(balanceOf(ledger)).toMatchObject({ invoiced: 10_000, received: 0, open: 10_000 });
  });
});

describe("what cannot be in a book", () => {
  const invoice = aLedgerEntry(1);
  const back = aReversal(2, invoice);

  test.each([
    ["a number twice", [invoice, aLedgerEntry(1, { id: "other" })], "number"],
    ["a gap in the numbers", [invoice, aLedgerEntry(3)], "number"],
    ["an amount of nothing", [aLedgerEntry(1, { amount: 0 })], "amount"],
    ["an amount below nothing", [aLedgerEntry(1, { amount: -5 })], "amount"],
    ["half a cent", [aLedgerEntry(1, { amount: 0.5 })], "amount"],
    ["a reversal of nothing", [aLedgerEntry(1, { kind: "reversal" })], "reversesId"],
    ["a reversal of a reversal", [invoice, back, aReversal(3, back)], "reversesId"],
    ["a second reversal", [invoice, back, aReversal(3, invoice)], "reversesId"],
    ["a reversal of a part", [invoice, { ...back, amount: 1 }], "reversesId"],
    ["a reversal on another account", [invoice, { ...back, propertyId: "14" }], "reversesId"],
    ["a payment that takes back", [invoice, { ...back, kind: "payment" as const }], "reversesId"],
  ])("%s", (_what, ledger, path) => {
    expect(ledgerProblems(ledger).map((problem) => problem.path)).toContain(path);
  });
});

describe("aging", () => {
  test.each([
    [-3, "not-due"],
    [0, "not-due"],
    [1, "to-30"],
    [30, "to-30"],
    [31, "to-60"],
    [60, "to-60"],
    [61, "to-90"],
    [90, "to-90"],
    [91, "over-90"],
  ] as const)("%i days after its day is %s", (days, age) => {
    expect(ageOf(days)).toBe(age);
  });

  test("puts what came in to the invoice due first, whichever was written first", () => {
    const ledger = [
      aLedgerEntry(1, { dueOn: "2026-12-15", amount: 10_000 }),
      aLedgerEntry(2, { dueOn: "2026-10-01", amount: 6_000 }),
      aLedgerEntry(3, { kind: "payment", amount: 7_000 }),
    ];
    const { ages, overdue, oldestDue, invoices } = agingOf(ledger, "2026-11-25");
    expect(ages["not-due"]).toBe(9_000);
    expect(overdue).toBe(0);
    expect(oldestDue).toBe("2026-12-15");
    expect(invoices.map(({ entry, open }) => [entry.number, open])).toEqual([[1, 9_000]]);
  });

  test("counts from the due day", () => {
    const { ages, overdue } = agingOf([aLedgerEntry(1, { dueOn: "2026-10-25" })], "2026-11-25");
    expect(ages["to-60"]).toBe(10_000);
    expect(overdue).toBe(10_000);
  });

  test("takes a refund off what came in", () => {
    const ledger = [
      aLedgerEntry(1, { dueOn: "2026-11-01" }),
      aLedgerEntry(2, { kind: "payment", amount: 10_000 }),
      aLedgerEntry(3, { kind: "refund", amount: 2_500 }),
    ];
    expect(agingOf(ledger, "2026-11-25").overdue).toBe(2_500);
  });

  test("tells what the office holds", () => {
    const aging = agingOf([aLedgerEntry(1, { kind: "deposit" })], "2026-11-25");
    expect(aging.ahead).toBe(10_000);
    expect(aging.oldestDue).toBeNull();
  });
});

describe("a statement", () => {
  const invoice = aLedgerEntry(1, { dueOn: "2026-12-01" });
  const payment = aLedgerEntry(2, {
    kind: "payment",
    amount: 4_000,
    method: "check",
    reference: "1042",
  });
  const ledger = [invoice, payment, { ...aReversal(3, payment), note: "check came back" }];
  const account = { propertyId: "12", partyId: "owner-12" };

  test("says in words what each entry was, with the balance after it", () => {
    expect(statementRows(fileWith(ledger), account, "en")).toMatchObject([
      { words: "Invoice No. 1, due December 1, 2026", charged: 10_000, balance: 10_000 },
      {
        words: "Payment No. 2, by check, reference 1042, later reversed",
        settled: 4_000,
        balance: 6_000,
      },
      { words: "Reversal of payment No. 2: check came back", charged: 4_000, balance: 10_000 },
    ]);
  });

  test("reads in Spanish", () => {
    const [first] = statementRows(fileWith(ledger), account, "es");
    expect(first?.words).toBe("Factura núm. 1, vence el 1 de diciembre de 2026");
  });
});

test("a file whose money book does not balance makes no sense", () => {
  const book = [aLedgerEntry(1), aLedgerEntry(3)];
  const file = aFile({
    ledger: book,
    properties: [aProperty("12")],
    parties: [aParty("owner-12")],
  });
  expect(nonsenseIn(file)).toEqual([
    {
      list: "ledger",
      row: 1,
      path: "number",
      message: "No. 2 is missing; numbers must be consecutive",
    },
  ]);
});
