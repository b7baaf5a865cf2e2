import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { readTableApart } from "#lib/exchange/table-file/read-table-apart.ts";
import { watchStretches } from "../../../support/effort.ts";

const SHEET = "xl/worksheets/sheet1.xml";

/** A small workbook whose sheet is changed by hand. */
async function aWorkbook(change: (xml: string) => string): Promise<Uint8Array> {
  const written = await writeWorkbook([
    {
      sheet: "Card",
      data: [
        [{ value: "Entry" }, { value: "At" }],
        [{ value: "A" }, { value: 18 }],
      ],
    },
  ]);
  const parts = unzipSync(new Uint8Array(await written.toBuffer()));
  const xml = strFromU8(parts[SHEET] ?? new Uint8Array());
  return zipSync({ ...parts, [SHEET]: strToU8(change(xml)) });
}

/** With more rows behind those that are there. */
function withRows(rows: string): Promise<Uint8Array> {
  return aWorkbook((xml) => xml.replace("</sheetData>", `${rows}</sheetData>`));
}

interface Read {
  readonly refusal: string;
  readonly rows: readonly (readonly string[])[];
  /** The longest that this process worked without turning to others, in milliseconds. */
  readonly stretch: number;
}

async function read(bytes: Uint8Array): Promise<Read> {
  const longest = watchStretches();
  const found = await readTableApart(bytes);
  const stretch = longest();
  const rows = found.ok ? (found.value.sheets[0]?.rows ?? []) : [];
  return { refusal: found.ok ? "" : found.error, rows, stretch };
}

/** Zeros, which pack to nearly nothing. */
function bomb(megabytes: number): Promise<Uint8Array> {
  return aWorkbook((xml) =>
    xml.replace("</sheetData>", `${"0".repeat(megabytes * 1_000_000)}</sheetData>`),
  );
}

test("readTableApart() reads as the reader itself", async () => {
  expect((await read(await aWorkbook((xml) => xml))).rows).toEqual([
    ["Entry", "At"],
    ["A", "18"],
  ]);
  expect((await read(strToU8("Entry,At\nA,18\n"))).rows).toEqual([
    ["Entry", "At"],
    ["A", "18"],
  ]);
});

test("readTableApart() leaves out far cells with nothing in them, as a colored column has", async () => {
  const far = await withRows(
    '<row r="3"><c r="ZZ3" s="1"/></row><row r="1048575" ht="20"/><row r="1048576"><c r="A1048576" s="1"></c></row>',
  );
  expect((await read(far)).rows).toEqual([
    ["Entry", "At"],
    ["A", "18"],
  ]);
});

const HOSTILE: Readonly<
  Record<string, readonly [file: () => Promise<Uint8Array> | Uint8Array, words: RegExp]>
> = {
  "a cell in the last corner": [
    () => withRows('<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'),
    /has a cell in row 1,048,576; at most 2,000 rows/,
  ],
  "a stray cell at the foot": [
    () => withRows('<row r="1048576"><c r="Z1048576"><v>1</v></c></row>'),
    /has a cell in row 1,048,576/,
  ],
  "a column that no sheet has": [
    () => withRows('<row r="3"><c r="ZZZZZZ3"><v>1</v></c></row>'),
    /has a cell in row|more than 100 columns/,
  ],
  "a column too far": [() => withRows('<row r="3"><c r="CX3"><v>1</v></c></row>'), /100 columns/],
  "3.9 MB of commas": [() => strToU8(",".repeat(3_900_000)), /100 columns/],
  "rows of commas": [() => strToU8(`${",".repeat(99_000)}\n`.repeat(39)), /100 columns|no data/],
  "1.9 million short rows": [
    () => strToU8("a\n".repeat(1_900_000)),
    /^The file has 1,900,000 rows/,
  ],
  "1.9 million empty rows": [() => strToU8(",\n".repeat(1_900_000)), /^The file has no data/],
  "quotes that never close": [
    () => strToU8('"'.repeat(3_900_001)),
    /longer than 100 columns allow/,
  ],
  "a workbook that unpacks to 100 MB": [() => bomb(100), /too large when unpacked/],
  "a workbook that says it is small and is not": [
    async () => {
      const bytes = await bomb(150);
      const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
      let at = view.getUint32(bytes.byteLength - 22 + 16, true);
      while (view.getUint32(at, true) === 0x02014b50) {
        if (view.getUint32(at + 24, true) > 1_000_000) view.setUint32(at + 24, 1_000_000, true);
        at += 46 + [28, 30, 32].reduce((sum, field) => sum + view.getUint16(at + field, true), 0);
      }
      return bytes;
    },
    /can’t be opened|too large|can’t be read/,
  ],
  "cells that never close": [
    () => withRows(`<row r="3">${'<c r="A3">'.repeat(200_000)}</row>`),
    /can’t be opened|too long|too large/,
  ],
};

test.each(Object.entries(HOSTILE))(
  "readTableApart() answers %s in words and in time, while others go on",
  async (_, [file, words]) => {
    const { refusal, stretch } = await read(await file());
    expect(refusal).toMatch(words);
    expect(stretch).toBeLessThan(1_500);
  },
);
