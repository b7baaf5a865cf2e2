import { expect, test } from "vitest";
import { readCell } from "#app/lines/[lineId]/bring-in/_read-cell.ts";
import {
  readingAt,
  readingOf,
  sheetRows,
  withMeaning,
} from "#app/lines/[lineId]/bring-in/_sort-rows.ts";
import { OBSERVATION_COLUMNS } from "#app/lines/[lineId]/camera/_columns.ts";
import { entryColumns } from "#app/lines/[lineId]/record/_columns.ts";
import { aProperty } from "../../../support/file.ts";

const COLUMNS = entryColumns({ properties: ["4", "12", "14", "112"].map((id) => aProperty(id)) });

const SHEET = [
  ["Card 1184 of 1958"],
  [],
  ["House", "Footage (ft)", "Inspector", "Side", "Dia"],
  ["House 12", "18.0", "K. Mori", "L", "4"],
  ["", "", "", "", ""],
  ["House 14", "about 30", "", "left", '6"'],
];

function column(key: string, columns = COLUMNS) {
  const found = columns.find((each) => each.key === key);
  if (found === undefined) throw new Error(`No column ${key}`);
  return found;
}

test("readingOf() finds the headings under a title, by title and by other names", () => {
  expect(readingOf(SHEET, COLUMNS)).toMatchObject({
    head: 2,
    match: ["label", "distance", null, "side", "diameter"],
  });
});

test("readingOf() matches nothing where no row names our columns", () => {
  const rows = [
    ["12", "18.0"],
    ["14", "34.0"],
  ];
  expect(readingOf(rows, COLUMNS)).toMatchObject({ head: null, match: [null, null] });
});

test("readingAt() reads the headings of the row that a person chose", () => {
  const rows = [["x"], ["Name", "?", "Distance", "Feet"]];
  expect(readingAt(rows, COLUMNS, 1).match).toEqual(["label", null, "distance", null]);
  expect(readingAt(rows, COLUMNS, null).match).toEqual([null, null, null, null]);
});

test("withMeaning() lets no two columns of the file be the same column of ours", () => {
  expect(withMeaning(["label", "distance", null], 2, "distance")).toEqual([
    "label",
    null,
    "distance",
  ]);
  expect(withMeaning(["label", null], 0, null)).toEqual([null, null]);
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
      problems: { distance: "write feet, such as 26.5" },
    },
  ]);
  expect(rows[1]?.texts["distance"]).toBe("about 30");
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

test("readCell() takes a choice by its words, or by the part or short form that means one thing", () => {
  const read = (key: string, text: string) => readCell(column(key), text);
  expect(read("side", "R")).toEqual({ ok: true, value: "right" });
  expect(read("material", "Clay")).toEqual({ ok: true, value: "vitrified-clay" });
  expect(read("material", "cast")).toEqual({ ok: true, value: "cast-iron" });
  expect(read("propertyId", "12 Fennel")).toEqual({ ok: true, value: "12" });
  expect(read("propertyId", "")).toEqual({ ok: true, value: null });
  expect(readCell(column("kind", [...OBSERVATION_COLUMNS]), "Tap")).toEqual({
    ok: true,
    value: "tie-in",
  });
});

test("readCell() never picks what the words do not mean", () => {
  const read = (key: string, text: string) => readCell(column(key), text);
  expect(read("propertyId", "2")).toMatchObject({ ok: false });
  expect(read("propertyId", "Fennel")).toEqual({
    ok: false,
    error: "choose 4 Fennel Row, 12 Fennel Row, 14 Fennel Row, 112 Fennel Row",
  });
  expect(read("propertyId", "4")).toEqual({ ok: true, value: "4" });
  expect(read("side", "up")).toMatchObject({ ok: false });
  expect(read("material", "c")).toMatchObject({ ok: false });
});
