import { expect, test, vi } from "vitest";
import { renderAccounts } from "#lib/documents/account-document.tsx";
import { NUMBER_NINE, SLIP, visibleBox } from "#lib/documents/window.ts";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import { aFile, anOffice, aParty, aProperty, aRole } from "#tests/support/file.ts";
import { aLedgerEntry, aVersion } from "#tests/support/ledger.ts";
import { readPdf } from "#tests/support/pdf.ts";

/** Rendering is slow where other work runs beside it. */
vi.setConfig({ testTimeout: 600_000 });

const FILE = aFile({
  properties: [aProperty("12")],
  parties: [
    aParty("ottilie", { name: "Ottilie Brandvold" }),
    aParty("nils", { name: "Nils Brandvold", language: "es" }),
  ],
  roles: [aRole("ottilie", "12"), aRole("nils", "12")],
  splits: [aVersion(1, { "12": 119_000 })],
  ledger: [
    aLedgerEntry(1, {
      amount: 119_000,
      partyId: "ottilie",
      dueOn: "2026-12-25",
      splitId: "split-1",
    }),
  ],
});
const OFFICE = anOffice({ payee: "Bellwether Trust Account" });

function invoiceOf(file = FILE, office = OFFICE) {
  const [invoice] = accountPapers({ file, office, today: "2026-11-25" }, ["entry-1"]);
  if (invoice === undefined) throw new Error("no invoice");
  return invoice;
}

test("an invoice ends in a payment slip: account, amount and payee, the address in a #9’s window", async () => {
  const pdf = readPdf((await renderAccounts([invoiceOf()])).bytes);
  pdf.check();
  expect(pdf.info()["Pages"]).toBe("2");
  const first = pdf.text(1);
  expect(first).toContain("Payment slip");
  expect(first).toContain("Bellwether Trust Account");
  expect(first).toContain("Amount enclosed");
  expect(pdf.text(2)).not.toContain("Talón de pago");
  const edge = 792 - SLIP * 72;
  const box = visibleBox(NUMBER_NINE, SLIP);
  const words = pdf.words(1).filter(({ top }) => top > edge);
  const remit = words.filter(({ left, top }) => left < box.right && top > edge + box.top - 12);
  expect(remit.map(({ text }) => text).join(" ")).toBe(
    [
      OFFICE.name,
      OFFICE.address.street,
      `${OFFICE.address.city}, ${OFFICE.address.state} ${OFFICE.address.zip}`,
    ].join(" "),
  );
  for (const word of remit) {
    expect(word.left).toBeGreaterThanOrEqual(box.left - 0.01);
    expect(word.right).toBeLessThanOrEqual(box.right + 0.01);
    expect(word.top - edge).toBeGreaterThanOrEqual(box.top - 0.01);
    expect(word.bottom - edge).toBeLessThanOrEqual(box.bottom + 0.01);
  }
});

test("an invoice has no slip where nothing is open, or the office takes no checks", () => {
  expect(invoiceOf().slip?.amount[1]).toBe("$1,190.00");
  const paid = aLedgerEntry(2, {
    kind: "payment",
    amount: 119_000,
    partyId: "ottilie",
    method: "check",
  });
  expect(invoiceOf({ ...FILE, ledger: [...FILE.ledger, paid] }).slip).toBeUndefined();
  expect(invoiceOf(FILE, { ...OFFICE, payMethods: ["card"] }).slip).toBeUndefined();
});

test("an invoice too long for its slip prints without it, and that is said by name", async () => {
  const short = await renderAccounts([invoiceOf()]);
  expect(short.withoutSlip).toEqual([]);
  const [entry] = FILE.ledger;
  if (entry === undefined) throw new Error("no invoice");
  const note = "Paid in parts, as was agreed on the telephone. ".repeat(40);
  const long = invoiceOf({ ...FILE, ledger: [{ ...entry, note }] });
  const { bytes, withoutSlip } = await renderAccounts([long]);
  expect(withoutSlip).toEqual([expect.stringContaining("Invoice No. 1 for 12 Fennel Row")]);
  const text = readPdf(bytes).text();
  expect(text).not.toContain("Payment slip");
  expect(text).toContain("By check payable to");
});
