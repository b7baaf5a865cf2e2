import { expect, test } from "vitest";
import { sheetRows } from "#app/lines/[lineId]/bring-in/sort-rows.ts";
import {
  heapsOf,
  onSheet,
  rowsIn,
  typedIn,
  withReading,
  workOn,
} from "#app/lines/[lineId]/bring-in/work.ts";
import { OBSERVATION_COLUMNS } from "#app/lines/[lineId]/camera/observation-columns.ts";
import { entryColumns } from "#app/lines/[lineId]/record/columns.ts";
import { anEntry, anObservation } from "../../../support/file.ts";

const COLUMNS = entryColumns({ properties: [] });

const FILE = {
  guessed: false,
  sheets: [
    {
      name: "Card",
      rows: [
        ["Entry", "Distance", "Side"],
        ["House 12", "18.0", "left"],
        ["House 14", "by the oak", "left"],
        ["House 16", "52.5", ""],
        ["House 16", "52.5", "right"],
        ["House 18", "70", "left"],
      ],
    },
    {
      name: "Other",
      rows: [
        ["Entry", "Distance"],
        ["Shop", "9"],
      ],
    },
  ],
};

const TO_CARD = { table: "entries", to: "card", there: [] } as const;

function numbers(heaps: ReturnType<typeof heapsOf>) {
  return {
    ready: heaps.ready.map(({ number }) => number),
    mend: heaps.mend.map(({ number }) => number),
    doubles: heaps.doubles.map(({ number }) => number),
  };
}

test("heapsOf() sorts rows into ready, to mend, and there already", () => {
  const work = workOn(FILE, "card.csv", COLUMNS);
  const there = [anEntry("x", { distance: 7_000, side: "left" })];
  expect(numbers(heapsOf(work, COLUMNS, { ...TO_CARD, there }))).toEqual({
    ready: [2, 4],
    mend: [3],
    doubles: [5, 6],
  });
});

test("typedIn() mends a row in its place: it stays among those to mend, without its problem", () => {
  const work = workOn(FILE, "card.csv", COLUMNS);
  const mended = typedIn(work, [{ key: "3", column: "distance", text: "30" }]);
  const heaps = heapsOf(mended, COLUMNS, TO_CARD);
  expect(numbers(heaps).mend).toEqual([3]);
  expect(heaps.mend[0]).toMatchObject({ fields: { distance: 3_000 }, problems: {} });
});

test("typedIn() takes away what saving found wrong in that cell, and only there", () => {
  const work = {
    ...workOn(FILE, "card.csv", COLUMNS),
    found: { 2: { distance: "too long", side: "no such side" } },
  };
  const mended = typedIn(work, [{ key: "2", column: "distance", text: "19" }]);
  expect(rowsIn(mended, COLUMNS)[0]?.problems).toEqual({ side: "no such side" });
});

test("rowsIn() leaves out the rows that came in", () => {
  const work = { ...workOn(FILE, "card.csv", COLUMNS), gone: [2, 4, 5] };
  expect(rowsIn(work, COLUMNS).map(({ number }) => number)).toEqual([3, 6]);
});

test("onSheet() begins anew with the other sheet's headings", () => {
  const work = typedIn(workOn(FILE, "card.xlsx", COLUMNS), [
    { key: "3", column: "distance", text: "30" },
  ]);
  const other = onSheet(work, 1, COLUMNS);
  expect(other).toMatchObject({ sheet: 1, edits: {}, mend: [] });
  expect(rowsIn(other, COLUMNS)).toMatchObject([{ number: 2, fields: { label: "Shop" } }]);
});

test("withReading() judges anew what is to be mended: a word for every row mends them all", () => {
  const columns = OBSERVATION_COLUMNS;
  const rows = [
    ["Counter", "Clock"],
    ["24.1", "9"],
    ["30", "3"],
  ];
  const work = workOn({ guessed: false, sheets: [{ name: "", rows }] }, "run.csv", columns);
  expect(work.mend).toEqual([2, 3]);
  const reading = { ...work.reading, everywhere: { kind: "tie-in" } };
  const mended = withReading(work, reading, columns);
  expect(mended.mend).toEqual([]);
  const there = [anObservation("o", { counter: 3_000, clock: null })];
  const heaps = heapsOf(mended, columns, { table: "observations", to: "run", there });
  expect(numbers(heaps)).toEqual({ ready: [2], mend: [], doubles: [3] });
  expect(sheetRows(rows, reading, { columns, edits: {} })[0]?.fields).toMatchObject({
    kind: "tie-in",
  });
});

test("heapsOf() brings in how far off a reading may be, in feet, under the names that sheets give it", () => {
  for (const heading of ["Give or take (ft)", "Plus or minus", "Tolerance", "uncertainty"]) {
    const rows = [
      ["Footage", "What", heading],
      ["31.5", "tie-in", "4"],
      ["52", "tie-in", ""],
    ];
    const file = { guessed: false, sheets: [{ name: "Log", rows }] };
    const work = workOn(file, "log.csv", OBSERVATION_COLUMNS);
    const { ready } = heapsOf(work, OBSERVATION_COLUMNS, {
      table: "observations",
      to: "run",
      there: [],
    });
    expect(ready.map(({ fields }) => [fields["counter"], fields["uncertainty"]])).toEqual([
      [3_150, 400],
      [5_200, undefined],
    ]);
  }
});
