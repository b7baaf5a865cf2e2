import { CsvError, parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readClipboard } from "#app/_components/grid/clipboard.ts";
import { cellsOf } from "#app/_components/grid/delimited.ts";

const RUNS = 1_000;

/** Letters that a reader of cells can stumble over, far more often than they come. */
const text = fc
  .array(
    fc.constantFrom(
      ...['"', '"', '""', '\t"', '"\t', "\t", "\t", "\n", "\r\n", "\r", ",", ";"],
      ...[" ", "a", "6", "é", "\u{1f6b0}", "\u00a0", "'", "\\"],
    ),
    { maxLength: 24 },
  )
  .map((letters) => letters.join(""));

const separator = fc.constantFrom("\t", ",", ";");

/** Rows as `csv-parse` reads them; null where it says that a quoted cell never closes. */
function parsed(from: string, delimiter: string, quote: '"' | null): string[][] | null {
  try {
    return parse(from, { delimiter, quote, relax_column_count: true, relax_quotes: true });
  } catch (problem) {
    if (problem instanceof CsvError && problem.code === "CSV_QUOTE_NOT_CLOSED") return null;
    throw problem;
  }
}

describe("cellsOf()", () => {
  test("reads any text letter for letter as csv-parse does", () => {
    fc.assert(
      fc.property(text, separator, (from, between) => {
        expect(cellsOf(from, { separator: between, quotes: true })).toEqual(
          parsed(from, between, '"'),
        );
        expect(cellsOf(from, { separator: between, quotes: false })).toEqual(
          parsed(from, between, null),
        );
      }),
      { numRuns: RUNS },
    );
  });

  test("gives back the cells that a sheet has quoted, whatever stands in them", () => {
    const cell = text.map((inside) => inside.replaceAll("\r", ""));
    const rows = fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(rows, (sheet) => {
        const copied = sheet
          .map((row) => row.map((each) => `"${each.replaceAll('"', '""')}"`).join("\t"))
          .join("\r\n");
        expect(cellsOf(copied, { separator: "\t", quotes: true })).toEqual(sheet);
      }),
      { numRuns: RUNS },
    );
  });
});

describe("readClipboard()", () => {
  test("loses no letter of what was copied but separators, quotes, line ends and margins", () => {
    const kept = (from: string) => [...from].filter((letter) => /[a6é\u{1f6b0}'\\]/u.test(letter));
    fc.assert(
      fc.property(text, (from) => {
        expect(kept(readClipboard(from).flat().join(""))).toEqual(kept(from));
      }),
      { numRuns: RUNS },
    );
  });
});
