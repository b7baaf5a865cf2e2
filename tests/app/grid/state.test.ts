import { describe, expect, test } from "vitest";
import type { GridColumn, GridRow } from "#app/_components/grid/column.ts";
import type { GridAction, GridSpec, GridState } from "#app/_components/grid/grid-state.ts";
import { blankKey } from "#app/_components/grid/paste-rows.ts";
import { problemIn, unreadPlaces } from "#app/_components/grid/problems.ts";
import { allRows, isDirty, reduceGrid, startGrid } from "#app/_components/grid/state.ts";

const LABEL: GridColumn = { key: "label", title: "Label", kind: "text", required: true };
const DISTANCE: GridColumn = { key: "distance", title: "Distance", kind: "feet" };
const SPEC: GridSpec = {
  columns: [LABEL, DISTANCE],
  blank: { recordId: "card-1", side: "unknown" },
  where: {},
};
const ROWS: GridRow[] = [
  { id: "a", recordId: "card-1", label: "House 12", distance: 1550, side: "left" },
  { id: "b", recordId: "card-1", label: "House 14", distance: 2350, side: "left" },
];

function gridAfter(...actions: GridAction[]): GridState {
  return from(startGrid(ROWS, 4, SPEC), ...actions);
}

function from(state: GridState, ...actions: GridAction[]): GridState {
  return actions.reduce((now, action) => reduceGrid(now, action, SPEC), state);
}

function type(key: string, column: GridColumn, text: string, newId = "new-1"): GridAction {
  return { do: "type", key, column, text, newId };
}

function distances(state: GridState): unknown[] {
  return state.lines.map((line) => line.values["distance"]);
}

describe("reduceGrid() while typing", () => {
  test("takes the letters typed in one cell as one step to undo", () => {
    const typed = gridAfter(
      type("a", DISTANCE, "1"),
      type("a", DISTANCE, "16"),
      type("a", DISTANCE, "16.5"),
      { do: "leave" },
    );
    expect(distances(typed)).toEqual([1650, 2350]);
    expect(isDirty(typed)).toBe(true);
    const undone = from(typed, { do: "undo" });
    expect(distances(undone)).toEqual([1550, 2350]);
    expect(distances(from(undone, { do: "redo" }))).toEqual([1650, 2350]);
  });

  test("takes a reading that is about right, or a range, with how far off it is", () => {
    const rough: GridColumn = { ...DISTANCE, unsure: "uncertainty" };
    const typed = gridAfter(
      type("a", rough, "about 3"),
      type("a", rough, "about 31"),
      type("b", rough, "31–33"),
      { do: "leave" },
    );
    expect(distances(typed)).toEqual([3100, 3200]);
    expect(typed.lines.map((line) => line.values["uncertainty"])).toEqual([100, 100]);
    const exact = gridAfter(type("a", rough, "31?"), type("a", rough, "31"));
    expect(exact.lines[0]?.values["uncertainty"]).toBeUndefined();
    const undone = from(typed, { do: "undo" }, { do: "undo" });
    expect(distances(undone)).toEqual([1550, 2350]);
    expect(undone.lines.map((line) => line.values["uncertainty"])).toEqual([undefined, undefined]);
    // A column that has no place for it takes none.
    expect(distances(gridAfter(type("a", DISTANCE, "about 31")))).toEqual([1550, 2350]);
  });

  test("takes a second visit to the same cell as another step", () => {
    const typed = gridAfter(type("a", DISTANCE, "16"), { do: "leave" }, type("a", DISTANCE, "17"), {
      do: "leave",
    });
    expect(distances(from(typed, { do: "undo" }))).toEqual([1600, 2350]);
  });

  test("keeps what cannot be read as it was typed, says what is wanted, and keeps the old value", () => {
    const typed = gridAfter(type("a", DISTANCE, "about 16"));
    const [line] = typed.lines;
    expect(line?.raw["distance"]).toBe("about 16");
    expect(line === undefined ? null : problemIn(line, DISTANCE)).toBe("enter feet, e.g. 26.5");
    expect(line?.values["distance"]).toBe(1550);
    const mended = from(typed, type("a", DISTANCE, "16"));
    expect(mended.lines[0]?.raw).toEqual({});
    expect(mended.lines[0]?.values["distance"]).toBe(1600);
  });

  test("turns the blank line into a row with the hidden fields, under the key it had", () => {
    const blank = blankKey(gridAfter());
    const typed = gridAfter(type(blank, LABEL, "House 16"));
    expect(typed.lines[2]).toMatchObject({
      key: blank,
      id: "new-1",
      values: {
        id: "new-1",
        recordId: "card-1",
        side: "unknown",
        label: "House 16",
        distance: null,
      },
    });
    expect(blankKey(typed)).not.toBe(blank);
    expect(from(typed, { do: "undo" }).lines).toHaveLength(2);
  });

  test("adds no row when nothing is typed into the blank line", () => {
    expect(gridAfter(type("blank-0", LABEL, "  ")).lines).toHaveLength(2);
  });

  test("brings a removed row back in its place", () => {
    const removed = gridAfter({ do: "remove", key: "a" });
    expect(removed.lines.map((line) => line.id)).toEqual(["b"]);
    expect(from(removed, { do: "undo" }).lines.map((line) => line.id)).toEqual(["a", "b"]);
  });

  test("misses a value that is needed", () => {
    const [line] = gridAfter(type("a", LABEL, "")).lines;
    expect(line === undefined ? null : problemIn(line, LABEL)).toBe("needed");
  });
});

describe("reduceGrid() when rows are pasted", () => {
  const paste = (cells: string[][], at = 1, column = 0): GridAction => ({
    do: "paste",
    at,
    column,
    cells,
    newIds: cells.map((_, index) => `new-${index}`),
  });

  test("overwrites from the cell on and adds the rows that are missing", () => {
    const pasted = gridAfter(
      paste([
        ["House 14", "24"],
        ["House 16", "39"],
      ]),
    );
    expect(allRows(pasted).map((row) => [row["id"], row["label"], row["distance"]])).toEqual([
      ["a", "House 12", 1550],
      ["b", "House 14", 2400],
      ["new-1", "House 16", 3900],
    ]);
    expect(from(pasted, { do: "undo" }).lines.map((line) => line.values)).toEqual(ROWS);
  });

  test("goes by the headings, in whatever order they come", () => {
    const pasted = gridAfter(
      paste(
        [
          ["Distance (ft)", "Label"],
          ["39", "House 16"],
        ],
        2,
        1,
      ),
    );
    expect(pasted.lines[2]?.values).toMatchObject({ label: "House 16", distance: 3900 });
    expect(pasted.note).toBe("1 row pasted; the first row was treated as headings.");
  });

  test("leaves a new row its usual value where the sheet has nothing, and empties a row that is there", () => {
    const spec = { ...SPEC, blank: { distance: 100 } };
    const pasted = reduceGrid(
      startGrid(ROWS, 4, spec),
      paste([
        ["House 14", ""],
        ["House 16", ""],
      ]),
      spec,
    );
    expect(distances(pasted)).toEqual([1550, null, 100]);
  });

  test("leaves columns alone that are not to be typed in", () => {
    const spec = { ...SPEC, columns: [LABEL, { ...DISTANCE, readOnly: true }] };
    const pasted = reduceGrid(startGrid(ROWS, 4, spec), paste([["House 14", "24"]]), spec);
    expect(distances(pasted)).toEqual([1550, 2350]);
  });

  const NOTE: GridColumn = { key: "note", title: "Note", kind: "text" };
  const NOTED: GridSpec = { ...SPEC, columns: [LABEL, DISTANCE, NOTE] };
  const withUnknown = [
    ["Distance (ft)", "Inspector", "Label"],
    ["39", "K. Mori", "House 16"],
  ];

  test("asks where a column goes whose heading is not known, and puts nothing in before", () => {
    const asked = gridAfter(paste(withUnknown, 2));
    expect(asked.asked?.pasted.open).toEqual([1]);
    expect(asked.lines).toHaveLength(2);
    expect(isDirty(asked)).toBe(false);
    expect(from(asked, { do: "drop-paste" })).toMatchObject({ asked: null, edits: 0 });
  });

  test("puts it where a person says, as one step to undo", () => {
    const state = [
      paste(withUnknown, 2),
      { do: "place-paste", into: { 1: "note" } } as const,
    ].reduce(
      (now: GridState, action: GridAction) => reduceGrid(now, action, NOTED),
      startGrid(ROWS, 4, NOTED),
    );
    expect(state.lines[2]?.values).toMatchObject({
      label: "House 16",
      distance: 3900,
      note: "K. Mori",
    });
    expect(state.asked).toBeNull();
    expect(reduceGrid(state, { do: "undo" }, NOTED).lines).toHaveLength(2);
  });

  test("leaves it out where a person says so", () => {
    const placed = gridAfter(paste(withUnknown, 2), { do: "place-paste", into: { 1: null } });
    expect(placed.lines[2]?.values).toMatchObject({ label: "House 16", distance: 3900 });
  });

  test("reads the first row as values where a person says so", () => {
    const again = gridAfter(paste(withUnknown, 2), { do: "read-paste", heads: false });
    expect(again.asked?.pasted.body).toHaveLength(2);
    const placed = from(again, { do: "place-paste", into: { 2: null } });
    expect(placed.lines.map(({ values }) => values["label"])).toEqual([
      "House 12",
      "House 14",
      "Distance (ft)",
      "39",
    ]);
  });

  test("does not lose rows that still wait when others are pasted", () => {
    const asked = gridAfter(paste(withUnknown, 2));
    const again = from(asked, paste([["House 18", "52"]], 2));
    expect(again.asked).toBe(asked.asked);
    expect(again.note).toMatch(/^First choose/);
  });

  test("says what it passed over because the program works it out", () => {
    const amount: GridColumn = {
      key: "amount",
      title: "Amount",
      kind: "cents",
      computed: "item-amount",
    };
    const spec = { ...SPEC, columns: [LABEL, DISTANCE, amount] };
    const pasted = reduceGrid(
      startGrid(ROWS, 4, spec),
      paste([["House 16", "39", "1,200.00"]], 2),
      spec,
    );
    expect(pasted.note).toBe("1 row pasted. Amount is calculated here and was not pasted.");
  });

  test("says that rows without headings went in by the order of the columns", () => {
    const note: GridColumn = { key: "note", title: "Note", kind: "text" };
    const spec = { ...SPEC, columns: [LABEL, DISTANCE, note] };
    const put = (cells: string[][]) =>
      reduceGrid(startGrid(ROWS, 4, spec), paste(cells, 2), spec).note;
    expect(
      put([
        ["House 16", "39", "a"],
        ["House 18", "52", "b"],
      ]),
    ).toMatch(/^2 rows pasted in the order of the columns here\. With headings/);
    expect(put([["House 16", "39", "a"]])).toBe("1 row pasted.");
  });
});

describe("reduceGrid() when others saved", () => {
  const theirs = (rows: GridRow[], by = "R. Lindqvist"): GridAction => ({
    do: "theirs",
    rows,
    base: 5,
    by,
    at: "2026-11-25T18:29:00.000Z",
  });
  const [A, B] = ROWS as [GridRow, GridRow];

  test("takes their rows over while nothing is typed here", () => {
    const met = gridAfter(theirs([{ ...A, distance: 1600 }, B]));
    expect(distances(met)).toEqual([1600, 2350]);
    expect(met.base).toBe(5);
    expect(isDirty(met)).toBe(false);
  });

  test("puts both together where they touch different cells, and says so", () => {
    const met = gridAfter(type("b", DISTANCE, "24"), theirs([{ ...A, distance: 1600 }, B]));
    expect(distances(met)).toEqual([1600, 2400]);
    expect(met.conflict).toBeNull();
    expect(met.note).toContain("R. Lindqvist saved other changes");
    expect(isDirty(met)).toBe(true);
  });

  test("asks where they touch the same cell, and follows the answer", () => {
    const met = gridAfter(type("a", DISTANCE, "15"), theirs([{ ...A, distance: 1600 }, B]));
    expect(met.conflict?.by).toBe("R. Lindqvist");
    expect(distances(met)).toEqual([1500, 2350]);
    const kept = from(met, { do: "keep-mine" });
    expect(distances(kept)).toEqual([1500, 2350]);
    expect([kept.base, kept.conflict, isDirty(kept)]).toEqual([5, null, true]);
    const taken = from(met, { do: "take-theirs" });
    expect(distances(taken)).toEqual([1600, 2350]);
  });

  test("undoes typing after a save without undoing what the file filled in meanwhile", () => {
    const met = gridAfter(
      type("a", DISTANCE, "15"),
      { do: "leave" },
      { do: "saved", rows: [{ ...A, distance: 1500 }, B], base: 5, edits: 1 },
      theirs([{ ...A, distance: 1500, side: "right" }, B], ""),
      { do: "undo" },
    );
    expect(met.lines[0]?.values).toMatchObject({ distance: 1550, side: "right" });
  });
});

describe("reduceGrid() with a part of a table", () => {
  const other: GridRow = { id: "z", recordId: "card-2", label: "House 9", distance: 900 };
  const spec: GridSpec = { ...SPEC, where: { recordId: "card-1" } };

  test("shows the rows asked for and saves the others along", () => {
    const state = startGrid([other, ...ROWS], 4, spec);
    expect(state.lines.map((line) => line.id)).toEqual(["a", "b"]);
    expect(allRows(state)).toEqual([other, ...ROWS]);
  });

  test("gives new rows the values that are shown", () => {
    const typed = reduceGrid(startGrid([other], 4, spec), type("blank-0", LABEL, "House 16"), spec);
    expect(typed.lines[0]?.values["recordId"]).toBe("card-1");
  });
});

test("reduceGrid() leaves a time that nobody typed empty, as the file has it", () => {
  const spec: GridSpec = { ...SPEC, columns: [LABEL, { key: "at", title: "At", kind: "time" }] };
  const typed = reduceGrid(startGrid([], 4, spec), type("blank-0", LABEL, "House 16"), spec);
  expect(typed.lines[0]?.values["at"]).toBe("");
});

describe("reduceGrid() on what saving found wrong", () => {
  const cells = [{ id: "a", column: "distance", message: "lies beyond the upper end" }];
  const wrongAt = (state: GridState) => {
    const [line] = state.lines;
    return line === undefined ? null : problemIn(line, DISTANCE);
  };

  test("stands it beside its cell until its row is typed in again", () => {
    const refused = gridAfter({ do: "refused", rows: ROWS, cells });
    expect(wrongAt(refused)).toBe("lies beyond the upper end");
    expect(wrongAt(from(refused, type("a", DISTANCE, "15")))).toBeNull();
    expect(wrongAt(from(refused, type("a", LABEL, "House 12, as moved")))).toBeNull();
    expect(wrongAt(from(refused, type("b", LABEL, "House 14")))).toBe("lies beyond the upper end");
  });

  test("says nothing of a row that was typed in meanwhile, which is saved again", () => {
    const late = from(gridAfter(type("a", DISTANCE, "15")), { do: "refused", rows: ROWS, cells });
    expect(wrongAt(late)).toBeNull();
    expect(isDirty(late)).toBe(true);
  });
});

test("reduceGrid() brings back what was kept in the browser, unread cells included", () => {
  const [A, B] = ROWS as [GridRow, GridRow];
  const back = gridAfter({
    do: "restore",
    draft: {
      base: 3,
      baseRows: ROWS,
      rows: [{ ...A, distance: 1600 }, B],
      raw: { b: { distance: "about 24" } },
    },
  });
  expect(distances(back)).toEqual([1600, 2350]);
  expect(back.lines[1]?.raw).toEqual({ distance: "about 24" });
  expect([back.base, isDirty(back)]).toEqual([3, true]);
});

describe("reduceGrid() with rows that come from elsewhere on the page", () => {
  const READ: GridColumn = { ...DISTANCE, settles: { reading: "read" } };
  const added: GridAction = {
    do: "add",
    newId: "new-1",
    values: { distance: 1_200, reading: "between", id: "not-this" },
  };

  test("adds a row at the end, with the usual values, as one step to undo", () => {
    const grown = gridAfter(added);
    expect(grown.lines.at(-1)?.values).toEqual({
      id: "new-1",
      recordId: "card-1",
      label: "",
      distance: 1_200,
      side: "unknown",
      reading: "between",
    });
    expect(isDirty(grown)).toBe(true);
    expect(from(grown, { do: "undo" }).lines).toHaveLength(2);
  });

  test("settles other fields along with the cell that is typed in, and undoes both", () => {
    const typed = from(gridAfter(added), type("new-1", READ, "1"), type("new-1", READ, "13"));
    expect(typed.lines.at(-1)?.values).toMatchObject({ distance: 1_300, reading: "read" });
    const undone = from(typed, { do: "undo" });
    expect(undone.lines.at(-1)?.values).toMatchObject({ distance: 1_200, reading: "between" });
  });

  test("sets a field that no cell shows, and passes over a row that is gone", () => {
    const set: GridAction = { do: "set", id: "a", field: "pictureId", value: "u1" };
    expect(gridAfter(set).lines[0]?.values).toMatchObject({ pictureId: "u1", distance: 1_550 });
    expect(from(gridAfter(set), { do: "undo" }).lines[0]?.values["pictureId"]).toBeUndefined();
    expect(isDirty(gridAfter({ ...set, id: "gone" }))).toBe(false);
  });
});

describe("unreadPlaces()", () => {
  test("names the cells whose words could not be read, so that nothing is saved in their place", () => {
    const typed = gridAfter(type("b", DISTANCE, "about there"));
    expect(unreadPlaces(typed, SPEC.columns)).toEqual([{ row: 1, column: 1 }]);
    expect(unreadPlaces(from(typed, type("b", DISTANCE, "24")), SPEC.columns)).toEqual([]);
  });

  test("leaves out what saving found wrong: it can be sent again once another table is in order", () => {
    const rows = [...ROWS];
    const refused = gridAfter({
      do: "refused",
      rows,
      cells: [{ id: "a", column: "distance", message: "beyond the end" }],
    });
    expect(problemIn(refused.lines[0] as never, DISTANCE)).toBe("beyond the end");
    expect(unreadPlaces(refused, SPEC.columns)).toEqual([]);
  });
});
