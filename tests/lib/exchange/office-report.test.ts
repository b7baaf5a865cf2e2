import { expect, test } from "vitest";
import { OFFICE_REPORTS, REPORT_KINDS } from "#lib/domain/desk/office-reports.ts";
import { reportCsv, reportXlsx } from "#lib/exchange/office-report.ts";
import { readWorkbook } from "#lib/exchange/table-file/read-workbook.ts";
import {
  aFile,
  aNotice,
  anAddress,
  aParty,
  aPermit,
  aPermitStep,
  aProperty,
  aReply,
  aRole,
} from "#tests/support/file.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";

const TODAY = "2026-11-25";
const MADE = { on: TODAY, by: "Dana Okafor", office: "Alder Drain" };
const sent = (id: string, replyBy: string) =>
  aNotice(id, {
    partyId: "ada",
    propertyId: "p",
    state: "sent",
    sentAt: "2026-11-01T00:00:00Z",
    replyBy,
  });

const FILE = aFile({
  line: { name: "Cinder Alley", town: "Quillhaven" },
  properties: [aProperty("p", { address: anAddress("14 Fennel Row") })],
  parties: [aParty("ada", { name: "=Ada Winfield" })],
  roles: [aRole("ada", "p")],
  permits: [aPermit("a", { number: "SS-1", expiresOn: "2027-01-01" }), aPermit("b")],
  permitSteps: [
    aPermitStep("1", "a", { on: "2026-11-01" }),
    aPermitStep("2", "a", { state: "submitted", on: "2026-11-15" }),
  ],
  notices: [sent("n1", "2026-11-20")],
  ledger: [
    aLedgerEntry(1, { partyId: "ada", propertyId: "p", amount: 100_050, dueOn: "2026-10-01" }),
    aLedgerEntry(2, { kind: "payment", partyId: "ada", propertyId: "p", amount: 50 }),
  ],
});

async function* linesOf<T>(...rows: T[]): AsyncGenerator<T> {
  for (const row of rows) yield await Promise.resolve(row);
}

test("each report has a cell for each column", () => {
  for (const kind of OFFICE_REPORTS) {
    const { head, rows } = REPORT_KINDS[kind];
    expect(rows(FILE, TODAY).length, kind).toBeGreaterThan(0);
    for (const row of rows(FILE, TODAY)) expect(row, kind).toHaveLength(head.length);
    expect(rows(aFile(), TODAY), kind).toEqual([]);
  }
});

test("permits are told with their status, its age and whose move it is", () => {
  const [first, second] = REPORT_KINDS.permits.rows(FILE, TODAY);
  expect(first?.slice(5)).toEqual([
    ...["submitted", "2026-11-15", 10, "2026-11-01", 24, "2027-01-01", "the authority"],
  ]);
  expect(second?.slice(6)).toEqual(["", "", "", "", "", "our office"]);
});

test("money is told by party with its age; an account on which nothing is open has no row", () => {
  expect(REPORT_KINDS.money.rows(FILE, TODAY)).toEqual([
    [
      ...["Cinder Alley", "Quillhaven", "14 Fennel Row", "=Ada Winfield"],
      ...[1000.5, 0.5, 0, 0, 1000],
      ...[0, 0, 1000, 0, 0],
      ...[1000, "2026-10-01"],
    ],
  ]);
  const paid = aLedgerEntry(3, {
    kind: "payment",
    partyId: "ada",
    propertyId: "p",
    amount: 100_000,
  });
  expect(REPORT_KINDS.money.rows({ ...FILE, ledger: [...FILE.ledger, paid] }, TODAY)).toEqual([]);
});

test("replies are told whoever owes them", () => {
  const late = REPORT_KINDS.replies.rows(FILE, TODAY);
  expect(late.map((row) => row.slice(5))).toEqual([
    ["reply overdue", "2026-11-20", 5, "the reader"],
  ]);
  const replies = [aReply("r", "n1", { receivedOn: "2026-11-24" })];
  const ours = REPORT_KINDS.replies.rows({ ...FILE, replies }, TODAY);
  expect(ours.map((row) => row.slice(5))).toEqual([
    ["our answer to their reply", "2026-11-24", 1, "our office"],
  ]);
  const billed = [aReply("r", null, { entryId: "entry-1", receivedOn: "2026-11-24" })];
  expect(REPORT_KINDS.replies.rows({ ...FILE, notices: [], replies: billed }, TODAY)).toEqual([
    [
      ...["Cinder Alley", "Quillhaven", "=Ada Winfield", "14 Fennel Row", "invoice No. 1"],
      ...["our answer to their reply", "2026-11-24", 1, "our office"],
    ],
  ]);
});

test("as CSV a formula is text, and each row says its day and who made it", async () => {
  const rows = REPORT_KINDS.money.rows(FILE, TODAY);
  const parts: string[] = [];
  for await (const part of reportCsv("money", linesOf(rows, []), MADE)) parts.push(part);
  expect(parts).toHaveLength(2);
  expect(parts[0]?.startsWith("\uFEFFLine,Town,")).toBe(true);
  expect(parts[1]).toBe(
    "Cinder Alley,Quillhaven,14 Fennel Row,'=Ada Winfield,1000.5,0.5,0,0,1000,0,0,1000,0,0,1000,2026-10-01,2026-11-25,Dana Okafor\r\n",
  );
});

test("as XLSX words are text, numbers add up, and a second sheet tells day and person", async () => {
  const rows = REPORT_KINDS.money.rows(FILE, TODAY);
  const read = await readWorkbook(await reportXlsx("money", linesOf(rows), MADE));
  const sheets = read.ok ? read.value : [];
  expect(sheets.map(({ name }) => name)).toEqual(["Report", "About"]);
  expect(sheets[0]?.rows[0]).toEqual(REPORT_KINDS.money.head);
  expect(sheets[0]?.rows[1]).toEqual(rows[0]?.map(String));
  expect(sheets[1]?.rows).toContainEqual(["Made by", "Dana Okafor"]);
});
