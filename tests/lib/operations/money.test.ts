import { describe, expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import type { HoldCause } from "#lib/domain/facts/hold.ts";
import { accountsIn } from "#lib/domain/ledger/accounts.ts";
import { balanceOf } from "#lib/domain/ledger/balance.ts";
import { foundOwner } from "#lib/domain/ledger/found-owner.ts";
import { ledgerProblems } from "#lib/domain/ledger/problems.ts";
import { proposalsKey, proposedEntries } from "#lib/domain/ledger/propose.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Act } from "#lib/operations/act.ts";
import { chooseSplit } from "#lib/operations/choose-split.ts";
import { enterMoney, type MoneyWord } from "#lib/operations/enter-money.ts";
import { invoiceSplit } from "#lib/operations/invoice-split.ts";
import { reverseEntry } from "#lib/operations/reverse-entry.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { settleTieIn } from "#lib/operations/settle-tie-in.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { aParty, aProperty, aRole, aScopeItem } from "#tests/support/file.ts";
import { aDesk, addRows, anAct, closeAnyhow, fileOf, must } from "#tests/support/office.ts";

/** A desk whose line is priced at $1,000.00 and split in equal shares. */
function aPricedDesk(options: Parameters<typeof aDesk>[0] = {}) {
  const desk = aDesk(options);
  addRows(desk.act, { lineId: desk.lineId, table: "scope" }, [aScopeItem("dig")]);
  choose(desk);
  waiveUnclear(desk);
  return desk;
}

/** Nothing is written on who answers for the pipe; the owners agreed all the same. */
function waiveUnclear(desk: Desk): void {
  waiveAll(desk, ["responsibility-unclear"]);
}

function waiveAll({ act, lineId }: Desk, causes: readonly HoldCause[] | null = null): void {
  const { holds } = reportOn(fileOf(act, lineId), act.today);
  const open = holds.filter(
    ({ cause, waiver }) => waiver === null && (causes?.includes(cause) ?? true),
  );
  for (const { key } of open)
    must(waiveHold(act, { lineId, holdKey: key, reason: "All owners asked for it" }));
}

/** Prices the dig anew, in cents a foot. */
function price({ act, lineId }: Desk, rate: number): void {
  const base = getRevisions(act.db, lineId).scope;
  must(saveRows(act, { lineId, table: "scope", base, rows: [aScopeItem("dig", { rate })] }));
}

interface Desk {
  readonly act: Act;
  readonly lineId: string;
}

function choose({ act, lineId }: Desk): void {
  const choice = {
    rule: "equal",
    faultStation: null,
    payerId: null,
    unknownShares: "carried",
  } as const;
  must(chooseSplit(act, { lineId, choice, reason: "All owners asked for it" }));
}

function seenBy({ act, lineId }: Desk): string {
  const file = fileOf(act, lineId);
  const proposed = proposedEntries(file, reportOn(file, act.today), "one-invoice");
  return proposalsKey(proposed?.proposals ?? []);
}

function invoiceAll(desk: Desk, overrides: Partial<Parameters<typeof invoiceSplit>[1]> = {}) {
  return invoiceSplit(desk.act, {
    lineId: desk.lineId,
    billing: "one-invoice",
    dueOn: "2026-12-25",
    seen: seenBy(desk),
    propertyIds: null,
    ...overrides,
  });
}

function aWord(overrides: Partial<MoneyWord> = {}): MoneyWord {
  return {
    kind: "payment",
    partyId: "owner-12",
    propertyId: "12",
    amount: 10_000,
    on: "2026-11-24",
    method: "check",
    reference: "1042",
    uploadId: null,
    note: "",
    beyond: false,
    ...overrides,
  };
}

function enter({ act, lineId }: Desk, overrides: Partial<MoneyWord> = {}) {
  return enterMoney(act, { lineId, ...aWord(overrides) });
}

describe("entering money", () => {
  test("numbers entries without a gap and tells the history each", () => {
    const desk = aPricedDesk();
    expect(must(enter(desk)).number).toBe(1);
    expect(
      must(enter(desk, { kind: "deposit", propertyId: "14", partyId: "owner-14" })).number,
    ).toBe(2);
    const { ledger, history } = fileOf(desk.act, desk.lineId);
    expect(ledgerProblems(ledger)).toEqual([]);
    expect(ledger[0]).toMatchObject({ enteredBy: "Dana Okafor", enteredAt: desk.act.now });
    expect(history.map(({ sentence }) => sentence)).toContain(
      "Posted No. 1: payment of $100.00 by Ottilie Brandvold for 12 Fennel Row.",
    );
  });

  test.each([
    ["nothing", { amount: 0 }, "amount"],
    ["less than nothing", { amount: -1 }, "amount"],
    ["half a cent", { amount: 0.5 }, "amount"],
    ["a day to come", { on: "2026-11-26" }, "on"],
    ["no day", { on: "yesterday" }, "on"],
    ["somebody without a role there", { propertyId: "14" }, "account"],
    ["a payment in no way", { method: null }, "method"],
    ["a credit for nothing said", { kind: "credit", method: null }, "note"],
    ["a refund of what is not held", { kind: "refund" }, "amount"],
    ["a refund beyond without a word", { kind: "refund", beyond: true }, "note"],
  ] as const)("refuses %s", (_what, overrides, path) => {
    const desk = aPricedDesk();
    expect(enter(desk, overrides)).toMatchObject({ ok: false, error: { path } });
    expect(fileOf(desk.act, desk.lineId).ledger).toEqual([]);
  });

  test("is paid in full only while the balance is what the person saw", () => {
    const desk = aPricedDesk();
    const asked = must(invoiceAll(desk));
    const owed = accountsIn(fileOf(desk.act, desk.lineId)).find(
      ({ propertyId }) => propertyId === "12",
    );
    const inFull = { amount: owed?.open ?? 0, inFull: true } as const;
    expect(asked.invoiceIds).toHaveLength(asked.entryIds.length);
    expect(must(enter(desk, inFull)).number).toBe(asked.entryIds.length + 1);
    expect(enter(desk, { ...inFull, reference: "1043" })).toMatchObject({
      ok: false,
      error: { reason: "changed-meanwhile" },
    });
    expect(balanceOf(fileOf(desk.act, desk.lineId).ledger).received).toBe(inFull.amount);
  });

  test("gives back what is held, and more only with a word", () => {
    const desk = aPricedDesk();
    must(enter(desk, { kind: "deposit", amount: 5_000 }));
    expect(enter(desk, { kind: "refund", amount: 5_001 }).ok).toBe(false);
    must(enter(desk, { kind: "refund", amount: 5_000 }));
    must(enter(desk, { kind: "refund", amount: 100, beyond: true, note: "Goodwill" }));
    expect(balanceOf(fileOf(desk.act, desk.lineId).ledger).open).toBe(100);
  });

  test("takes the same check once, and again after it was taken back", () => {
    const desk = aPricedDesk();
    const { entryId } = must(enter(desk));
    expect(enter(desk)).toMatchObject({ error: { reason: "already-there" } });
    must(enter(desk, { reference: "1043" }));
    const back = { lineId: desk.lineId, entryId, reason: "Check came back" };
    must(reverseEntry(desk.act, back));
    must(enter(desk));
  });

  test("is for the office alone, and for an open file", () => {
    const desk = aPricedDesk();
    const field = { ...desk, act: anAct(desk.act.db, { role: "field" }) };
    expect(enter(field)).toMatchObject({ error: { reason: "not-allowed" } });
    must(closeAnyhow(desk.act, desk.lineId));
    expect(enter(desk)).toMatchObject({ error: { reason: "not-in-this-state" } });
  });
});

describe("taking an entry back", () => {
  test("needs a reason, is done once, and is not taken back itself", () => {
    const desk = aPricedDesk();
    const { entryId } = must(enter(desk));
    const back = (id: string, reason = "Wrong house") =>
      reverseEntry(desk.act, { lineId: desk.lineId, entryId: id, reason });
    expect(back(entryId, " ")).toMatchObject({ error: { path: "reason" } });
    const reversal = must(back(entryId));
    expect(reversal.number).toBe(2);
    expect(back(entryId)).toMatchObject({ error: { reason: "not-in-this-state" } });
    expect(back(reversal.entryId)).toMatchObject({ error: { reason: "not-in-this-state" } });
    const { ledger } = fileOf(desk.act, desk.lineId);
    expect(ledgerProblems(ledger)).toEqual([]);
    expect(balanceOf(ledger).open).toBe(0);
  });
});

describe("invoicing the split", () => {
  test("asks each property for its share, once", () => {
    const desk = aPricedDesk();
    must(invoiceAll(desk));
    const { ledger } = fileOf(desk.act, desk.lineId);
    expect(
      ledger.map(({ kind, propertyId, amount, dueOn }) => [kind, propertyId, amount, dueOn]),
    ).toEqual([
      ["invoice", "12", 33_333, "2026-12-25"],
      ["invoice", "14", 33_333, "2026-12-25"],
      ["invoice", "16", 33_334, "2026-12-25"],
    ]);
    expect(invoiceAll(desk)).toMatchObject({ error: { reason: "missing-value" } });
  });

  test("credits and invoices the difference after a new split, to the cent", () => {
    const desk = aPricedDesk();
    must(invoiceAll(desk));
    price(desk, 9_000);
    expect(invoiceAll(desk)).toMatchObject({ error: { reason: "not-in-this-state" } });
    choose(desk);
    must(invoiceAll(desk));
    const { ledger } = fileOf(desk.act, desk.lineId);
    expect(ledger.slice(3).map(({ kind, amount }) => [kind, amount])).toEqual([
      ["credit", 3_333],
      ["credit", 3_333],
      ["credit", 3_334],
    ]);
    expect(balanceOf(ledger).open).toBe(90_000);
  });

  test("may ask some properties and not yet the others", () => {
    const desk = aPricedDesk();
    must(invoiceAll(desk, { propertyIds: ["14"] }));
    expect(fileOf(desk.act, desk.lineId).ledger.map(({ propertyId }) => propertyId)).toEqual([
      "14",
    ]);
  });

  test("enters only what was seen", () => {
    const desk = aPricedDesk();
    const seen = seenBy(desk);
    must(invoiceAll(desk, { propertyIds: ["14"] }));
    expect(invoiceAll(desk, { seen })).toMatchObject({ error: { reason: "changed-meanwhile" } });
  });

  test("waits for a day that is still to come, and for every hold on the final split", () => {
    expect(invoiceAll(aPricedDesk(), { dueOn: "2026-11-24" })).toMatchObject({
      error: { path: "dueOn" },
    });
    expect(invoiceAll(aPricedDesk({ undocumented: true }))).toMatchObject({
      error: { reason: "held" },
    });
  });
});

describe("an owner who is found later", () => {
  test("is invoiced, to the cent, what the others are credited", () => {
    const desk = aPricedDesk({ undocumented: true });
    const { act, lineId } = desk;
    waiveAll(desk);
    must(invoiceAll(desk));
    expect(balanceOf(fileOf(act, lineId).ledger).open).toBe(100_000);

    addRows(act, { lineId, table: "properties" }, [aProperty("18")]);
    addRows(act, { lineId, table: "parties" }, [aParty("owner-18")]);
    addRows(act, { lineId, table: "roles" }, [aRole("owner-18", "18")]);
    const tieInId =
      fileOf(act, lineId).observations.find(({ id }) => id === "extra")?.tieInId ?? "";
    const reason = "The owner wrote that it is theirs";
    const settled = { kind: "building", propertyId: "18", inactive: false } as const;
    must(settleTieIn(act, { lineId, tieInId, ...settled, ownerAccepted: true, reason }));
    choose(desk);
    waiveAll(desk);
    must(invoiceAll(desk));

    const { ledger, ...file } = fileOf(act, lineId);
    const found = foundOwner(file);
    expect(found?.found).toEqual([{ propertyId: "18", owes: 25_000 }]);
    expect(found?.back.map(({ back }) => back)).toEqual([8_333, 8_333, 8_334]);
    const fresh = ledger.slice(3).map(({ kind, propertyId, amount }) => [kind, propertyId, amount]);
    expect(fresh).toEqual([
      ["credit", "12", 8_333],
      ["credit", "14", 8_333],
      ["invoice", "18", 25_000],
      ["credit", "16", 8_334],
    ]);
    expect(balanceOf(ledger).open).toBe(100_000);
  });
});

test("a check of either owner pays an invoice to both, and a wrong entry leaves no account behind", () => {
  const desk = aPricedDesk();
  const { act, lineId } = desk;
  addRows(act, { lineId, table: "parties" }, [aParty("paul", { name: "Paul Brandvold" })]);
  addRows(act, { lineId, table: "roles" }, [aRole("paul", "12")]);
  const seen = () =>
    proposalsKey(
      proposedEntries(fileOf(act, lineId), reportOn(fileOf(act, lineId), act.today), "one-invoice")
        ?.proposals ?? [],
    );
  const order = {
    lineId,
    billing: "one-invoice",
    dueOn: "2026-12-15",
    propertyIds: ["12"],
  } as const;
  must(invoiceSplit(act, { ...order, seen: seen() }));
  const [invoice] = fileOf(act, lineId).ledger;
  const check = {
    ...({ lineId, kind: "payment", partyId: "paul", propertyId: "12", method: "check" } as const),
    ...{ amount: invoice?.amount ?? 0, on: act.today, reference: "88", uploadId: null },
    ...{ note: "", beyond: false },
  };
  const { entryId } = must(enterMoney(act, check));
  const accounts = () =>
    accountsIn(fileOf(act, lineId)).filter(({ propertyId }) => propertyId === "12");
  expect(accounts()).toMatchObject([{ partyId: "owner-12", open: 0 }]);
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toContain(
    "by Ottilie Brandvold and Paul Brandvold for 12 Fennel Row",
  );
  must(reverseEntry(act, { lineId, entryId, reason: "It was for another job" }));
  expect(accounts()).toMatchObject([{ partyId: "owner-12", open: invoice?.amount }]);
});
