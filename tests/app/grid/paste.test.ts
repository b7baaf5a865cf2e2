import { describe, expect, test } from "vitest";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { letterOf, readPasted } from "#app/_components/grid/paste.ts";

const COLUMNS: GridColumn[] = [
  { key: "label", title: "Entry", kind: "text" },
  { key: "distance", title: "Distance", kind: "feet" },
  { key: "note", title: "Note", kind: "text" },
];

function keysOf(cells: readonly (readonly string[])[], from = 0) {
  const { into, open } = readPasted(cells, COLUMNS, { from });
  return { into: into.map((column) => column?.key ?? null), open };
}

describe("readPasted()", () => {
  test("leaves a column open whose heading nobody knows, and one that has no heading", () => {
    expect(
      keysOf([
        ["Entry", "Distance", "Inspector", ""],
        ["House 12", "18", "K. Mori", "left"],
      ]),
    ).toEqual({ into: ["label", "distance", null, null], open: [2, 3] });
  });

  test("asks nothing of a column in which nothing stands", () => {
    expect(
      keysOf([
        ["Entry", "Distance", "Inspector"],
        ["House 12", "18", ""],
      ]).open,
    ).toEqual([]);
  });

  test("leaves open what reaches beyond the last column, or beyond the headings", () => {
    expect(keysOf([["18", "near the curb", "left"]], 1)).toEqual({
      into: ["distance", "note", null],
      open: [2],
    });
    expect(
      keysOf([
        ["Entry", "Distance"],
        ["House 12", "18", "left"],
      ]).open,
    ).toEqual([2]);
  });

  test("can be told that the first row is no row of headings", () => {
    const cells = [
      ["Entry", "Distance"],
      ["House 12", "18"],
    ];
    const read = readPasted(cells, COLUMNS, { from: 0, heads: false });
    expect(read.body).toEqual(cells);
    expect(read.headings).toBeNull();
  });
});

test("letterOf() counts columns as sheets do", () => {
  expect([0, 25, 26, 51, 52].map(letterOf)).toEqual([
    "Column A",
    "Column Z",
    "Column AA",
    "Column AZ",
    "Column BA",
  ]);
});
