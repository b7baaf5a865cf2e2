import { expect, test } from "vitest";
import { renderAccounts } from "#lib/documents/account-document.tsx";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import { aFile, anOffice, aParty, aProperty, aRole } from "#tests/support/file.ts";
import { aLedgerEntry, aVersion } from "#tests/support/ledger.ts";
import { readPdf } from "#tests/support/pdf.ts";

const FILE = aFile({
  properties: [aProperty("12"), aProperty("14")],
  parties: [
    aParty("owner-12", { name: "Ottilie Brandvold" }),
    aParty("spouse-12", { name: "Nils Brandvold" }),
    aParty("owner-14", { name: "Jesús Peña", language: "es" }),
  ],
  roles: [aRole("owner-12", "12"), aRole("spouse-12", "12"), aRole("owner-14", "14")],
  splits: [aVersion(1, { "12": 119_000, "14": 777_700 })],
  ledger: [
    aLedgerEntry(1, { amount: 119_000, dueOn: "2026-10-25", splitId: "split-1" }),
    aLedgerEntry(2, { kind: "payment", amount: 100_000, method: "check", reference: "1042" }),
    aLedgerEntry(3, {
      amount: 777_700,
      partyId: "owner-14",
      propertyId: "14",
      dueOn: "2026-12-25",
      splitId: "split-1",
    }),
  ],
});
const INPUT = { file: FILE, office: anOffice(), today: "2026-11-25" };

async function printed(...subjectIds: string[]): Promise<string> {
  const { bytes } = await renderAccounts(accountPapers(INPUT, subjectIds));
  return readPdf(bytes).text().replaceAll(/\s+/g, " ");
}

test("a statement prints every entry of its account, what is open, and nobody else’s money", async () => {
  const text = await printed("12");
  expect(text).toContain("Statement of account for 12 Fennel Row");
  expect(text).toContain("$190.00");
  expect(text).toContain("Payment No. 2, by check");
  expect(text).toContain("31 to 60 days");
  expect(text).not.toContain("777");
  expect(text).not.toContain("Peña");
});

test("an invoice prints number, due day, what it is for, the sum, how to pay and the license", async () => {
  const text = await printed("entry-1");
  expect(text).toContain("Invoice No. 1 for 12 Fennel Row");
  expect(text).toContain("October 25, 2026");
  expect(text).toContain("split No. 1");
  expect(text).toContain("$1,190.00");
  expect(text).toContain("By check payable to");
  expect(text).toContain("to Ottilie Brandvold and Nils Brandvold jointly");
  expect(text).toContain(INPUT.office.license);
});

test("an account in Spanish prints in Spanish", async () => {
  const text = await printed("14", "entry-3");
  expect(text).toContain("Estado de cuenta de 14 Fennel Row");
  expect(text).toContain("Factura núm. 3");
  expect(text).not.toContain("Statement");
});

test("what is no longer in the file prints nothing", () => {
  expect(accountPapers(INPUT, ["99", "entry-2"])).toEqual([]);
});
