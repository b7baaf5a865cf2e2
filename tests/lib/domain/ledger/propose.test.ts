import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LedgerEntry } from "#lib/domain/facts/ledger-entry.ts";
import type { SplitVersion } from "#lib/domain/facts/split.ts";
import { nextNumber } from "#lib/domain/ledger/balance.ts";
import { billedTo } from "#lib/domain/ledger/billed-to.ts";
import { csvRows } from "#lib/domain/ledger/csv.ts";
import { foundOwner } from "#lib/domain/ledger/found-owner.ts";
import {
  BILLINGS,
  type Billing,
  invoicedUnderSplit,
  type Proposal,
  proposalsKey,
  proposedEntries,
} from "#lib/domain/ledger/propose.ts";
import { ledgerCsv } from "#lib/exchange/ledger-csv.ts";
import { aFinding } from "#tests/support/answers.ts";
import { aFile, aParty, aProperty, aRole, aTieIn } from "#tests/support/file.ts";
import { aLedgerEntry, aReversal, aVersion } from "#tests/support/ledger.ts";

const HOUSES = ["12", "14", "16"];
const NOTHING = { tieIns: [], holds: [] };

function aBook(splits: readonly SplitVersion[], ledger: readonly LedgerEntry[] = []) {
  return aFile({
    splits,
    ledger,
    properties: HOUSES.map((house) => aProperty(house)),
    parties: [...HOUSES.map((house) => aParty(`owner-${house}`)), aParty("spouse-12")],
    roles: [...HOUSES.map((house) => aRole(`owner-${house}`, house)), aRole("spouse-12", "12")],
  });
}

type Book = ReturnType<typeof aBook>;

function proposals(file: Book, billing: Billing = "one-invoice"): readonly Proposal[] {
  return proposedEntries(file, NOTHING, billing)?.proposals ?? [];
}

/** The book after the proposals were entered. */
function entered(file: Book, billing: Billing = "one-invoice"): Book {
  const ledger = [...file.ledger];
  const splitId = file.splits.at(-1)?.id ?? null;
  for (const proposal of proposals(file, billing))
    ledger.push(aLedgerEntry(nextNumber(ledger), { ...proposal, splitId }));
  return { ...file, ledger };
}

const amounts = fc.record({
  "12": fc.integer({ min: 0, max: 2_000_000 }),
  "14": fc.integer({ min: 0, max: 2_000_000 }),
  "16": fc.integer({ min: 0, max: 2_000_000 }),
});
const billings = fc.constantFrom(...BILLINGS);

describe("proposals", () => {
  test("bring what is invoiced to the split, whatever was invoiced, credited or taken back", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(amounts, billings, fc.nat()), { minLength: 1, maxLength: 5 }),
        (rounds) => {
          let file = aBook([]);
          for (const [shares, billing, undo] of rounds) {
            const version = aVersion(file.splits.length + 1, shares);
            file = entered({ ...file, splits: [...file.splits, version] }, billing);
            for (const house of HOUSES)
              expect(invoicedUnderSplit(file.ledger, house)).toBe(
                shares[house as keyof typeof shares],
              );
            expect(proposals(file)).toEqual([]);
            const open = file.ledger.filter(
              ({ id, kind }) =>
                kind !== "reversal" && !file.ledger.some((each) => each.reversesId === id),
            );
            const undone = open[undo % (open.length + 1)];
            if (undone !== undefined)
              file = {
                ...file,
                ledger: [...file.ledger, aReversal(nextNumber(file.ledger), undone)],
              };
          }
          const last = rounds.at(-1)?.[0];
          file = entered(file);
          for (const house of HOUSES)
            expect(invoicedUnderSplit(file.ledger, house)).toBe(last?.[house as keyof typeof last]);
        },
      ),
    );
  });

  test("give an invoice for more and a credit for less after a new split", () => {
    const first = aVersion(1, { "12": 30_000, "14": 30_000 });
    const file = entered(aBook([first]));
    const again = {
      ...file,
      splits: [first, aVersion(2, { "12": 20_000, "14": 30_001, "16": 5 })],
    };
    expect(proposals(again)).toEqual([
      { kind: "credit", propertyId: "12", partyId: "owner-12", amount: 10_000 },
      { kind: "invoice", propertyId: "14", partyId: "owner-14", amount: 1 },
      { kind: "invoice", propertyId: "16", partyId: "owner-16", amount: 5 },
    ]);
  });

  test("do not ask again for what was let off for another reason", () => {
    const file = entered(aBook([aVersion(1, { "12": 30_000 })]));
    const credit = aLedgerEntry(2, { kind: "credit", amount: 5_000 });
    expect(proposals({ ...file, ledger: [...file.ledger, credit] })).toEqual([]);
  });

  test("go in equal parts to each owner where the office wants it so, to the cent", () => {
    const file = aBook([aVersion(1, { "12": 30_001 })]);
    expect(proposals(file, "each-owner")).toMatchObject([
      { partyId: "owner-12", amount: 15_001 },
      { partyId: "spouse-12", amount: 15_000 },
    ]);
  });

  test("credit those who were invoiced, in proportion", () => {
    const first = aVersion(1, { "12": 30_001 });
    const file = entered(aBook([first]), "each-owner");
    const again = { ...file, splits: [first, aVersion(2, { "12": 0 })] };
    expect(proposals(again)).toMatchObject([
      { kind: "credit", partyId: "owner-12", amount: 15_001 },
      { kind: "credit", partyId: "spouse-12", amount: 15_000 },
    ]);
  });

  test("ask nobody for a share without an owner, held apart, or not shown to be theirs", () => {
    const version = aVersion(1, { "12": 100, "14": 200, "99": 300 });
    const apart = { propertyId: null, tieInId: "T3", amount: 400, recoverable: 0 };
    const file = aBook([{ ...version, shares: [...version.shares, apart] }]);
    const weak = aFinding(aTieIn("T2", { propertyId: "14" }), {
      standing: "undocumented",
      level: 2,
    });
    const proposed = proposedEntries(file, { tieIns: [weak], holds: [] }, "one-invoice");
    expect(proposed?.proposals.map(({ propertyId }) => propertyId)).toEqual(["12"]);
    expect(proposed?.blocked).toEqual([
      { propertyId: "14", amount: 200, why: "not-shown" },
      { propertyId: "99", amount: 300, why: "no-owner" },
    ]);
    expect(proposed?.heldApart).toEqual([{ tieInId: "T3", amount: 400 }]);
  });

  test("are none before a rule is chosen", () => {
    expect(proposedEntries(aBook([]), NOTHING, "one-invoice")).toBeNull();
  });

  test("have a key that changes with any amount", () => {
    const one = proposals(aBook([aVersion(1, { "12": 100 })]));
    const other = proposals(aBook([aVersion(1, { "12": 101 })]));
    expect(proposalsKey(one)).not.toBe(proposalsKey(other));
  });
});

describe("who an invoice is to", () => {
  test("all title holders, while one account stands for the property", () => {
    const file = entered(aBook([aVersion(1, { "12": 100 })]));
    expect(billedTo(file, { propertyId: "12", partyId: "owner-12" })).toEqual([
      "owner-12",
      "spouse-12",
    ]);
  });

  test("each alone, where each has an invoice", () => {
    const file = entered(aBook([aVersion(1, { "12": 100 })]), "each-owner");
    expect(billedTo(file, { propertyId: "12", partyId: "owner-12" })).toEqual(["owner-12"]);
  });
});

describe("an owner who is found", () => {
  test("owes to the cent what the others carried for them", () => {
    // $100.01 by two, then by three: 5001 + 5000, then 3334 + 3334 + 3333.
    const file = aBook([
      aVersion(1, { "12": [5_001, 1_667], "14": [5_000, 1_667] }),
      aVersion(2, { "12": 3_334, "14": 3_334, "16": 3_333 }),
    ]);
    const found = foundOwner(file);
    expect(found?.found).toEqual([{ propertyId: "16", owes: 3_333 }]);
    expect(found?.back).toEqual([
      { propertyId: "12", was: 5_001, carried: 1_667, now: 3_334, back: 1_667 },
      { propertyId: "14", was: 5_000, carried: 1_667, now: 3_334, back: 1_666 },
    ]);
    expect(found?.sentence).toBe(
      "Since version 1 the owner at 16 Fennel Row was found. Under version 2 they owe $33.33: $33.33 is refunded to those who covered it.",
    );
  });

  test("gives nothing back where the share was held apart", () => {
    const before = aVersion(1, { "12": 5_000 });
    const apart = { propertyId: null, tieInId: "T3", amount: 5_000, recoverable: 0 };
    const file = aBook([
      { ...before, total: 10_000, shares: [...before.shares, apart] },
      aVersion(2, { "12": 5_000, "16": 5_000 }),
    ]);
    const found = foundOwner(file);
    expect(found?.released).toBe(5_000);
    expect(found?.back).toMatchObject([{ propertyId: "12", back: 0 }]);
  });

  test("adds up whatever the amounts, less the change of the cost", () => {
    const share = fc.integer({ min: 1, max: 1_000_000 });
    fc.assert(
      fc.property(share, share, share, share, share, (a, b, c, d, e) => {
        const file = aBook([
          aVersion(1, { "12": [a, 1], "14": [b, 1] }),
          aVersion(2, { "12": c, "14": d, "16": e }),
        ]);
        const found = foundOwner(file);
        const owes = found?.found.reduce((sum, each) => sum + each.owes, 0) ?? 0;
        const back = found?.back.reduce((sum, each) => sum + each.back, 0) ?? 0;
        expect(back + (found?.costChange ?? 0)).toBe(owes);
      }),
    );
  });

  test("may be an owner who was on the line already, by a tie-in settled since", () => {
    const file = {
      ...aBook([
        aVersion(1, { "12": [6_000, 2_000], "14": [4_000, 2_000] }),
        aVersion(2, { "12": 3_000, "14": 7_000 }),
      ]),
      tieIns: [aTieIn("T3", { propertyId: "14", settledOn: "2026-11-02" })],
    };
    expect(foundOwner(file)?.found).toEqual([{ propertyId: "14", owes: 3_000 }]);
  });

  test("is none where nobody was unknown", () => {
    expect(foundOwner(aBook([aVersion(1, { "12": 1 }), aVersion(2, { "16": 1 })]))).toBeNull();
  });
});

describe("the bookkeeper’s file", () => {
  const file = aBook(
    [],
    [
      aLedgerEntry(1, { amount: 123_456, dueOn: "2026-12-01", note: "=HYPERLINK(1)" }),
      aLedgerEntry(2, { kind: "payment", amount: 5, method: "check", reference: "+1042" }),
    ],
  );

  test("has dollars in the column of its side, and days as they are stored", () => {
    const book = {
      ...file,
      ledger: [...file.ledger, aReversal(3, aLedgerEntry(2, { amount: 5 }))],
    };
    expect(csvRows(book).map((row) => [row[0], row[1], row[5], row[6], row[9]])).toEqual([
      [1, "2026-11-01", "1234.56", "", ""],
      [2, "2026-11-01", "", "0.05", ""],
      [3, "2026-11-01", "0.05", "", 2],
    ]);
  });

  test("holds nothing that a spreadsheet would run", () => {
    const text = ledgerCsv(file);
    expect(text).toContain("'=HYPERLINK(1)");
    expect(text).toContain("'+1042");
    expect(text.startsWith("\uFEFFNumber,Date,Kind")).toBe(true);
  });
});
