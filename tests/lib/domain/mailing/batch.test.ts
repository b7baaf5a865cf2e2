import { expect, test } from "vitest";
import { batchOf, countBatch, noMailTo } from "#lib/domain/mailing/batch.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { mailingListCsv, mailingListXlsx } from "#lib/exchange/mailing-list.ts";
import { readTableFile } from "#lib/exchange/table-file/read-table-file.ts";
import {
  aDelivery,
  aFile,
  aNotice,
  anOffice,
  aParty,
  aProperty,
  aRole,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";
const OFFICE = anOffice();

const FILE = aFile({
  properties: [aProperty("14"), aProperty("12"), aProperty("2")],
  parties: [
    aParty("ottilie", { name: "Ottilie Brandvold", email: "ottilie@example.org" }),
    aParty("firm", { name: "=Larkspur Holdings", email: "not an address" }),
    aParty("away", {
      name: "Noor Haddad",
      email: "",
      mailing: { street: "", unit: "", city: "", state: "", zip: "" },
    }),
  ],
  roles: [aRole("ottilie", "12"), aRole("firm", "14"), aRole("away", "2")],
  notices: [
    aNotice("n1", { kind: "finding", partyId: "ottilie", propertyId: "12", state: "sent" }),
    aNotice("n2", { kind: "finding", partyId: "firm", propertyId: "14", state: "draft" }),
  ],
});

function rows(file = FILE) {
  return batchOf({ file, report: reportOn(file, TODAY), office: OFFICE }, "finding");
}

test("everyone who gets the letter is in the batch once, in mailing order, with how far it is", () => {
  expect(rows().map(({ recipient, standing }) => [recipient.partyId, standing])).toEqual([
    ["ottilie", "sent"],
    ["firm", "draft"],
    ["away", "none"],
  ]);
  expect(countBatch(rows())).toMatchObject({
    ...{ all: 3, toWrite: 1, drafts: 1, sent: 1, arrived: 0, unreached: 1 },
  });
});

test("who can't be reached is said, with why", () => {
  const reach = rows().map(({ noMail, noEmail }) => [noMail, noEmail]);
  expect(reach).toEqual([
    [null, null],
    [null, "the email address is not valid"],
    ["no mailing address on file", "no email address on file"],
  ]);
});

test.each([
  [{ zip: "" }, "the mailing address has no ZIP code"],
  [{ zip: "9800" }, "the ZIP code is not valid"],
  [{ state: "ZZ" }, "the state is not valid"],
  [{ city: "" }, "the mailing address has no city"],
  [{ city: "Québec QC G1R 2B5, CANADA", state: "", zip: "" }, null],
])("an address with %o: %s", (wrong, words) => {
  const mailing = { street: "1 A St", unit: "", city: "Q", state: "WA", zip: "98000", ...wrong };
  const file = { ...FILE, parties: [aParty("ottilie", { mailing })] };
  expect(noMailTo(file, { partyId: "ottilie", propertyId: "12" })).toBe(words);
});

test("one whom the office added stays in the batch, and a second draft is the newest", () => {
  const file = {
    ...FILE,
    parties: [...FILE.parties, aParty("tenant", { name: "Teo Marsh" })],
    notices: [
      ...FILE.notices,
      aNotice("n3", { kind: "finding", partyId: "tenant", propertyId: "12", state: "draft" }),
      aNotice("n4", { kind: "finding", partyId: "ottilie", propertyId: "12", state: "draft" }),
    ],
  };
  const found = rows(file);
  expect(found).toHaveLength(4);
  expect(found.find(({ recipient }) => recipient.partyId === "tenant")).toMatchObject({
    isProposed: false,
  });
  expect(found.find(({ recipient }) => recipient.partyId === "ottilie")).toMatchObject({
    ...{ standing: "draft", notice: { id: "n4" } },
  });
});

test("the mailing list is read back as it is, with no cell that is a formula", async () => {
  const csv = mailingListCsv(FILE, FILE.notices);
  expect(csv.startsWith("\ufeff")).toBe(true);
  expect(csv).toContain("'=Larkspur Holdings");
  const bytes = await mailingListXlsx(FILE, FILE.notices);
  const read = await readTableFile(new Uint8Array(bytes));
  expect(JSON.stringify(read)).toContain("=Larkspur Holdings");
  // A day as an office writes it.
  const [notice] = FILE.notices;
  if (notice === undefined) throw new Error("No letter");
  const sent = { ...FILE, deliveries: [aDelivery("d", notice.id, { sentOn: "2026-11-24" })] };
  expect(mailingListCsv(sent, FILE.notices)).toContain('"November 24, 2026"');
});
