import { expect, test } from "vitest";
import type { GridColumn } from "#app/_components/grid/column.ts";
import {
  readingAt,
  readingOf,
  sheetRows,
  UNSAID,
  unsaidIn,
  withMeaning,
} from "#app/lines/[lineId]/bring-in/sort-rows.ts";
import { OBSERVATION_COLUMNS } from "#app/lines/[lineId]/camera/observation-columns.ts";
import { entryColumns } from "#app/lines/[lineId]/record/columns.ts";
import { aProperty } from "../../../support/file.ts";

const COLUMNS = entryColumns({ properties: ["4", "12", "14", "112"].map((id) => aProperty(id)) });

const SHEET = [
  ["Card 1184 of 1958"],
  [],
  ["House", "Footage (ft)", "Inspector", "Side", "Dia"],
  ["House 12", "18.0", "K. Mori", "L", "4"],
  ["", "", "", "", ""],
  ["House 14", "by the oak", "", "left", '6"'],
];

test("readingOf() finds the headings under a title, by title and by other names", () => {
  expect(readingOf(SHEET, COLUMNS)).toMatchObject({
    head: 2,
    match: ["label", "distance", UNSAID, "side", "diameter"],
  });
});

test("readingOf() matches nothing where no row names our columns", () => {
  const rows = [
    ["12", "18.0"],
    ["14", "34.0"],
  ];
  expect(readingOf(rows, COLUMNS)).toMatchObject({ head: null, match: [UNSAID, UNSAID] });
});

test("readingAt() reads the headings of the row that a person chose, and asks of the others that hold something", () => {
  const rows = [
    ["x"],
    ["Name", "?", "Distance", "Feet", "Side"],
    ["House 12", "x", "18", "18", ""],
  ];
  expect(readingAt(rows, COLUMNS, 1).match).toEqual(["label", UNSAID, "distance", UNSAID, "side"]);
  expect(readingAt(rows, COLUMNS, null).match).toEqual([UNSAID, UNSAID, UNSAID, UNSAID, UNSAID]);
  expect(unsaidIn([UNSAID, null, "label", UNSAID])).toEqual([0, 3]);
});

test("readingAt() asks nothing of a column in which nothing stands", () => {
  const rows = [
    ["Name", "Inspector"],
    ["House 12", ""],
  ];
  expect(readingAt(rows, COLUMNS, 0).match).toEqual(["label", null]);
});

test("withMeaning() lets no two columns of the file be the same column of ours", () => {
  expect(withMeaning(["label", "distance", null], 2, "distance")).toEqual([
    "label",
    UNSAID,
    "distance",
  ]);
  expect(withMeaning(["label", null], 0, null)).toEqual([null, null]);
  expect(withMeaning(["label", UNSAID, UNSAID], 1, null)).toEqual(["label", null, UNSAID]);
});

test("sheetRows() counts rows as the file does, passes empty ones over, and says what is wrong where", () => {
  const rows = sheetRows(SHEET, readingOf(SHEET, COLUMNS), { columns: COLUMNS, edits: {} });
  expect(rows.map(({ number, fields, problems }) => ({ number, fields, problems }))).toEqual([
    {
      number: 4,
      fields: { label: "House 12", distance: 1_800, side: "left", diameter: 4 },
      problems: {},
    },
    {
      number: 6,
      fields: { label: "House 14", side: "left", diameter: 6 },
      problems: { distance: "enter feet, e.g. 26.5" },
    },
  ]);
  expect(rows[1]?.texts["distance"]).toBe("by the oak");
});

test("sheetRows() keeps how far off a record's distance is, given as about or as a range", () => {
  for (const [distance, fields] of [
    ["about 30", { distance: 3_000, uncertainty: 100 }],
    ["20–22", { distance: 2_100, uncertainty: 100 }],
  ] as const) {
    const rows = sheetRows(SHEET, readingOf(SHEET, COLUMNS), {
      columns: COLUMNS,
      edits: { 6: { distance } },
    });
    expect(rows[1]).toMatchObject({ fields, problems: {} });
  }
});

test("sheetRows() takes what a person typed in place of what the file says", () => {
  const edits = { 6: { distance: "30", note: "about" } };
  const rows = sheetRows(SHEET, readingOf(SHEET, COLUMNS), { columns: COLUMNS, edits });
  expect(rows[1]).toMatchObject({ fields: { distance: 3_000, note: "about" }, problems: {} });
});

test("sheetRows() wants what a row means nothing without", () => {
  const sheet = [
    ["Counter", "Clock"],
    ["24.1", "9"],
    ["", "3"],
  ];
  const columns = OBSERVATION_COLUMNS;
  const rows = sheetRows(sheet, readingOf(sheet, columns), { columns, edits: {} });
  expect(rows.map(({ problems }) => Object.keys(problems))).toEqual([
    ["kind"],
    ["counter", "kind"],
  ]);
});

test("sheetRows() takes a choice by its words, or by the beginning or short form that means one thing", () => {
  expect(read("side", "R")).toEqual({ side: "right" });
  expect(read("material", "Clay")).toEqual({ material: "vitrified-clay" });
  expect(read("material", "VCP")).toEqual({ material: "vitrified-clay" });
  expect(read("material", "cast")).toEqual({ material: "cast-iron" });
  expect(read("propertyId", "12 Fennel")).toEqual({ propertyId: "12" });
  expect(read("propertyId", "4 Fennel Row")).toEqual({ propertyId: "4" });
  expect(read("kind", "Tap", OBSERVATION_COLUMNS)).toEqual({ kind: "tie-in" });
});

test("sheetRows() never picks what the words do not mean", () => {
  expect(read("propertyId", "2")).toMatch(/^choose /);
  expect(read("propertyId", "Fennel")).toBe(
    "choose 4 Fennel Row, 12 Fennel Row, 14 Fennel Row, 112 Fennel Row",
  );
  expect(read("side", "up")).toMatch(/^choose /);
  expect(read("material", "c")).toBe("which one: concrete, cast iron, cured-in-place liner?");
});

/** One cell of a sheet, as it would come in, or what is wrong with it. */
function read(key: string, text: string, columns: readonly GridColumn[] = COLUMNS): unknown {
  const only = columns.filter((each) => each.key === key);
  const reading = { head: 0, match: [key], everywhere: {} };
  const [row] = sheetRows([["heading"], [text]], reading, { columns: only, edits: {} });
  return row?.problems[key] ?? row?.fields;
}
