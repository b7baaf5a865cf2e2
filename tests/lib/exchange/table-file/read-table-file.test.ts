import { readFileSync } from "node:fs";
import { stringify } from "csv-stringify/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { readTableFile } from "#lib/exchange/table-file/read-table-file.ts";

function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

async function rowsOf(bytes: Uint8Array): Promise<readonly (readonly string[])[]> {
  const read = await readTableFile(bytes);
  if (!read.ok) throw new Error(read.error);
  return read.value.sheets[0]?.rows ?? [];
}

async function refusalOf(bytes: Uint8Array): Promise<string> {
  const read = await readTableFile(bytes);
  return read.ok ? "" : read.error;
}

test.each([
  ["comma", ","],
  ["semicolon", ";"],
  ["tab", "\t"],
  ["bar", "|"],
])("readTableFile() finds the separator by itself: %s", async (_name, separator) => {
  const text = `Entry${separator}Distance${separator}Note\nHouse 12${separator}18.0${separator}\nHouse 14${separator}34.0${separator}by hand`;
  expect(await rowsOf(bytesOf(text))).toEqual([
    ["Entry", "Distance", "Note"],
    ["House 12", "18.0"],
    ["House 14", "34.0", "by hand"],
  ]);
});

test("readTableFile() takes the semicolon where commas are inside the cells", async () => {
  const text = "Entry;Distance;Note\nHouse 12;18,0;wye, clay\nHouse 14;34,0;wye\n";
  expect(await rowsOf(bytesOf(text))).toEqual([
    ["Entry", "Distance", "Note"],
    ["House 12", "18,0", "wye, clay"],
    ["House 14", "34,0", "wye"],
  ]);
});

test("readTableFile() obeys a first line that names the separator, and counts rows as the sheet does", async () => {
  expect(await rowsOf(bytesOf("sep=;\r\nEntry;Distance\r\nA;1\r\n"))).toEqual([
    [],
    ["Entry", "Distance"],
    ["A", "1"],
  ]);
});

test("readTableFile() keeps quoted cells, inch marks, empty rows, ragged rows and leading zeros", async () => {
  const text = 'Entry,Size,Note\r\n"House 12, rear",4",007\r\n\r\nB\r\nC,6,"two\nlines",extra\r\n';
  expect(await rowsOf(bytesOf(text))).toEqual([
    ["Entry", "Size", "Note"],
    ["House 12, rear", '4"', "007"],
    [],
    ["B"],
    ["C", "6", "two\nlines", "extra"],
  ]);
});

test("readTableFile() reads old Windows letters, and says that it guessed", async () => {
  const bytes = Uint8Array.from([...bytesOf("Entry,Note\nPe"), 0xf1, ...bytesOf("a,caf"), 0xe9]);
  const read = await readTableFile(bytes);
  expect(read).toMatchObject({ ok: true, value: { guessed: true } });
  expect((await rowsOf(bytes))[1]).toEqual(["Peña", "café"]);
});

test("readTableFile() drops the mark in front, in UTF-8 and in UTF-16", async () => {
  const marked = bytesOf("\uFEFFEntry,At\nA,1");
  const wide = new Uint8Array(Buffer.from("\uFEFFEntry\tAt\nPeña\t1", "utf16le"));
  expect((await rowsOf(marked))[0]).toEqual(["Entry", "At"]);
  expect(await rowsOf(wide)).toEqual([
    ["Entry", "At"],
    ["Peña", "1"],
  ]);
});

test("readTableFile() reads every sheet of a workbook as it shows", async () => {
  const workbook = await writeWorkbook([
    {
      sheet: "Card 1184",
      data: [
        [{ value: "Card 1184 of 1958" }],
        [],
        [{ value: "Entry" }, { value: "Station" }, { value: "Day" }, { value: "Video" }],
        [
          { value: "007" },
          { value: 0.1 + 0.2 },
          { value: new Date(Date.UTC(2026, 10, 3)), type: Date, format: "mm/dd/yyyy" },
          { value: 178 / 86_400, format: "h:mm:ss" },
        ],
        [
          { value: true, type: Boolean },
          { value: 26 },
          { value: "B2*2", type: "Formula" },
          { value: 178 / 1_440, format: "h:mm" },
        ],
      ],
    },
    { sheet: "Empty", data: [[]] },
    { sheet: "Run 1", data: [[{ value: "At" }], [{ value: 24.1 }]] },
  ]);
  const read = await readTableFile(new Uint8Array(await workbook.toBuffer()));
  expect(read).toEqual({
    ok: true,
    value: {
      guessed: false,
      sheets: [
        {
          name: "Card 1184",
          rows: [
            ["Card 1184 of 1958"],
            [],
            ["Entry", "Station", "Day", "Video"],
            ["007", "0.3", "2026-11-03", "2:58"],
            ["yes", "26", "", "2:58"],
          ],
        },
        { name: "Run 1", rows: [["At"], ["24.1"]] },
      ],
    },
  });
});

test("readTableFile() says what is wrong with a file that is no table, and what to do", async () => {
  const old = Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  const damaged = Uint8Array.from([0x50, 0x4b, 3, 4, 1, 2, 3, 4, 5, 6]);
  const film = new Uint8Array(readFileSync("tests/support/run.webm"));
  expect(await refusalOf(new Uint8Array())).toMatch(/empty/);
  expect(await refusalOf(bytesOf(" \n\n ,, \n"))).toMatch(/^The file has no data/);
  expect(await refusalOf(old)).toMatch(/save it as XLSX or CSV/);
  expect(await refusalOf(damaged)).toMatch(/can’t be opened/);
  expect(await refusalOf(bytesOf("%PDF-1.7"))).toMatch(/PDF/);
  expect(await refusalOf(film)).toMatch(/not a table/);
  expect(await refusalOf(bytesOf('Entry,At\n"House 12,18\nB,2\n'))).toMatch(/never closes/);
});

test("readTableFile() refuses more than 2,000 rows, 100 columns and 4 MB in words", async () => {
  const long = `Entry,At\n${"A,1\n".repeat(2_000)}`;
  expect(await refusalOf(bytesOf(long))).toMatch(/^The file has 2,001 rows/);
  expect(await refusalOf(bytesOf(`${"x,".repeat(101)}x\n1,2`))).toMatch(/100 columns/);
  expect(await refusalOf(new Uint8Array(4_000_001).fill(65))).toMatch(/4 MB/);
});

test("readTableFile() refuses a workbook that would unpack to more than memory holds", async () => {
  const workbook = await writeWorkbook([{ sheet: "A", data: [[{ value: "x" }]] }]);
  const bytes = new Uint8Array(await workbook.toBuffer());
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const first = view.getUint32(bytes.byteLength - 22 + 16, true);
  view.setUint32(first + 24, 2_000_000_000, true);
  expect(await refusalOf(bytes)).toMatch(/too large when unpacked/);
});

test("readTableFile() gives back whatever rows were written, with any separator", async () => {
  const cell = fc.stringMatching(/^[A-Za-z0-9 ,;"'.-]{1,12}$/).map((text) => `x${text.trim()}`);
  const rows = fc.integer({ min: 2, max: 5 }).chain((width) =>
    fc.array(fc.array(cell, { minLength: width, maxLength: width }), {
      minLength: 2,
      maxLength: 8,
    }),
  );
  await fc.assert(
    fc.asyncProperty(rows, async (written) => {
      const text = stringify(written, { delimiter: "\t", quoted: true });
      expect(await rowsOf(bytesOf(text))).toEqual(written);
    }),
    { numRuns: 50 },
  );
});
