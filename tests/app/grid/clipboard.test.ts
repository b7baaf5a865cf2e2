import { describe, expect, test } from "vitest";
import { readClipboard } from "#app/_components/grid/clipboard.ts";

describe("readClipboard()", () => {
  test("reads rows of a sheet, with quoted cells that hold tabs, line ends and quotes", () => {
    const text = '12 Fennel Row\t"a\tb"\r\n14 Fennel Row\t"two\nlines"\r\n"a ""wye"""\tc\r\n';
    expect(readClipboard(text)).toEqual([
      ["12 Fennel Row", "a\tb"],
      ["14 Fennel Row", "two\nlines"],
      ['a "wye"', "c"],
    ]);
  });

  test("keeps empty cells in their place", () => {
    expect(readClipboard("a\t\tc\n\t\t")).toEqual([
      ["a", "", "c"],
      ["", "", ""],
    ]);
  });

  test("reads commas and semicolons only where they cut every line alike", () => {
    expect(readClipboard("a,1\nb,2")).toEqual([
      ["a", "1"],
      ["b", "2"],
    ]);
    expect(readClipboard("a;1,5\nb;2")).toEqual([
      ["a", "1,5"],
      ["b", "2"],
    ]);
    expect(readClipboard("roots, heavy\nbelly")).toEqual([["roots, heavy"], ["belly"]]);
  });

  test("takes one cell as one cell, whatever stands in it", () => {
    expect(readClipboard("Harrow, Teal; and more")).toEqual([["Harrow, Teal; and more"]]);
    expect(readClipboard('pipe 6" wide')).toEqual([['pipe 6" wide']]);
  });

  test("drops the mark that some programs put before the text", () => {
    expect(readClipboard("\uFEFFa\tb")).toEqual([["a", "b"]]);
  });

  test("reads quoted cells of a text with commas, with commas and line ends in them", () => {
    expect(readClipboard('Entry,Note\nHouse 14,"left, at the ""wye""\nnear the curb"\n')).toEqual([
      ["Entry", "Note"],
      ["House 14", 'left, at the "wye"\nnear the curb'],
    ]);
  });

  test("keeps a quotation mark that never closes as a letter", () => {
    expect(readClipboard('"open\tb\nc\td')).toEqual([
      ['"open', "b"],
      ["c", "d"],
    ]);
  });
});
