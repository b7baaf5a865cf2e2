import { expect, test } from "vitest";
import type { LineTable } from "#lib/domain/packet/line-table.ts";
import { lineTableCsv, lineTableXlsx } from "#lib/exchange/line-table.ts";
import { readWorkbook } from "#lib/exchange/table-file/read-workbook.ts";

const TABLE: LineTable = {
  title: "Schedule of connections",
  head: ["Tie-in", "Station, ft"],
  rows: [
    ["=T1", 31.5],
    ["T2", ""],
  ],
  wide: new Set(),
  notes: ["The card reads 2.4 ft longer throughout."],
};
const MADE = { line: "Cinder Alley", on: "2026-11-25", by: "Dana Okafor", office: "Alder Drain" };

test("as CSV a formula is text, and each row says its day and who made it", () => {
  expect(lineTableCsv(TABLE, MADE)).toBe(
    '\uFEFFTie-in,"Station, ft",As of,Made by\r\n\'=T1,31.5,2026-11-25,Dana Okafor\r\nT2,,2026-11-25,Dana Okafor\r\n',
  );
});

test("as XLSX words are text, numbers add up, and a second sheet says what it is", async () => {
  const read = await readWorkbook(await lineTableXlsx(TABLE, MADE));
  const sheets = read.ok ? read.value : [];
  expect(sheets.map(({ name }) => name)).toEqual(["Schedule of connections", "About"]);
  expect(sheets[0]?.rows.slice(0, 2)).toEqual([
    ["Tie-in", "Station, ft"],
    ["=T1", "31.5"],
  ]);
  expect(sheets[1]?.rows).toContainEqual(["Line", "Cinder Alley"]);
  expect(sheets[1]?.rows).toContainEqual(["Note", "The card reads 2.4 ft longer throughout."]);
});
