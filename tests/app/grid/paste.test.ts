import { describe, expect, test } from "vitest";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { headingsOf, readClipboard } from "#app/_components/grid/paste.ts";

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
});

describe("headingsOf()", () => {
  const columns: GridColumn[] = [
    { key: "label", title: "As on the record", kind: "text", pasteHeadings: ["house"] },
    { key: "distance", title: "Distance", kind: "feet", pasteHeadings: ["station"] },
    { key: "note", title: "Note", kind: "text" },
  ];

  test("knows titles, keys and other headings, without regard to units and capitals", () => {
    expect(
      headingsOf(["Station (ft)", "HOUSE", "whatever"], columns)?.map((one) => one?.key),
    ).toEqual(["distance", "label", undefined]);
  });

  test("knows a heading whose unit stands behind it without brackets", () => {
    for (const heading of ["Station ft", "Station, feet", "station in."])
      expect(headingsOf([heading, "HOUSE", ""], columns)?.map((one) => one?.key)).toEqual([
        "distance",
        "label",
        undefined,
      ]);
  });

  test("takes rows of values for what they are", () => {
    expect(headingsOf(["House 14", "26.0", ""], columns)).toBeNull();
    expect(headingsOf(["Note", "26.0", "clay"], columns)).toBeNull();
    expect(headingsOf(["", ""], columns)).toBeNull();
  });
});
