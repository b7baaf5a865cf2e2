import { describe, expect, test } from "vitest";
import type { LedgerEntry } from "#lib/domain/facts/ledger-entry.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { accountEntries, accountOf, accountsIn } from "#lib/domain/ledger/accounts.ts";
import { overdueAccounts } from "#lib/domain/ledger/sentence.ts";
import { aFile, aParty, aProperty, aRole } from "#tests/support/file.ts";

const TODAY = "2026-12-20";
const PEOPLE = {
  properties: [aProperty("305")],
  parties: ["ingrid", "paul", "renter"].map((name) => aParty(name)),
  roles: [
    aRole("ingrid", "305"),
    aRole("paul", "305"),
    aRole("renter", "305", { role: "occupant" }),
  ],
};

function entry(number: number, rest: Partial<LedgerEntry>): LedgerEntry {
  return {
    id: `e${number}`,
    number,
    kind: "payment",
    partyId: "ingrid",
    propertyId: "305",
    amount: 500_654,
    on: "2026-12-01",
    dueOn: null,
    splitId: null,
    reversesId: null,
    method: null,
    reference: "",
    uploadId: null,
    note: "",
    enteredBy: "Dana Okafor",
    enteredAt: "2026-12-01T17:00:00.000Z",
    ...rest,
  };
}

const INVOICE = entry(1, { kind: "invoice", dueOn: "2026-12-15", splitId: "s" });
const BY_PAUL = entry(2, { partyId: "paul", reference: "Check 88" });

function books(...ledger: LedgerEntry[]): LineFile {
  return aFile({ ...PEOPLE, ledger });
}

describe("an invoice to all owners of a property together", () => {
  test("is paid by either of them", () => {
    const file = books(INVOICE, BY_PAUL);
    expect(accountsIn(file)).toMatchObject([
      { propertyId: "305", partyId: "ingrid", invoiced: 500_654, received: 500_654, open: 0 },
    ]);
    expect(accountEntries(file, { propertyId: "305", partyId: "paul" })).toEqual([
      INVOICE,
      BY_PAUL,
    ]);
    expect(overdueAccounts(file, TODAY)).toEqual([]);
  });

  test("counts a deposit that the other one paid before it", () => {
    const deposit = { ...BY_PAUL, number: 1, kind: "deposit" as const, amount: 100_000 };
    const file = books(deposit, { ...INVOICE, number: 2 });
    expect(accountsIn(file)).toMatchObject([{ partyId: "ingrid", open: 400_654 }]);
  });

  test("leaves no account behind when a wrong entry is taken back", () => {
    const back = entry(3, { kind: "reversal", partyId: "paul", reversesId: "e2" });
    expect(accountsIn(books(INVOICE, BY_PAUL, back))).toMatchObject([
      { partyId: "ingrid", open: 500_654 },
    ]);
    expect(accountsIn(books({ ...BY_PAUL, number: 1, id: "e2" }, { ...back, number: 2 }))).toEqual(
      [],
    );
  });

  test("is not paid by somebody who holds no title there", () => {
    const file = books(INVOICE, { ...BY_PAUL, partyId: "renter" });
    expect(accountsIn(file).map(({ partyId, open }) => [partyId, open])).toEqual([
      ["ingrid", 500_654],
      ["renter", -500_654],
    ]);
  });
});

test("owners who were each invoiced their part have accounts of their own", () => {
  const file = books(
    { ...INVOICE, amount: 250_327 },
    entry(2, { kind: "invoice", partyId: "paul", amount: 250_327, dueOn: "2026-12-15" }),
    { ...BY_PAUL, number: 3, id: "e3", amount: 250_327 },
  );
  expect(accountsIn(file).map(({ partyId, open }) => [partyId, open])).toEqual([
    ["ingrid", 250_327],
    ["paul", 0],
  ]);
  expect(accountOf(file, { propertyId: "305", partyId: "paul" })).toEqual({
    propertyId: "305",
    partyId: "paul",
  });
});
