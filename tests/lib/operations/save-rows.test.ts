import { expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { insertRow, ROW_LISTS } from "#db/queries/row.ts";
import { ROW_TABLES } from "#lib/domain/facts/row-table.ts";
import { ROW_SHAPES } from "#lib/exchange/rows.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import {
  anAddress,
  anAnchor,
  anObservation,
  aParty,
  aProperty,
  aRole,
  aRun,
  aTieIn,
  aUnit,
  aWaiver,
} from "../../support/file.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";

/** Every list of a line's file that has no grid of its own. */
const OTHER_LISTS = ROW_LISTS.filter((list) => !ROW_TABLES.some((table) => table === list));

test("saveRows() writes the tables that are its own, and no other list of the file", () => {
  const { act, lineId } = aDesk();
  expect(OTHER_LISTS).toEqual(
    expect.arrayContaining(["consents", "signatures", "ledger", "notices", "splits", "waivers"]),
  );
  expect(Object.keys(ROW_SHAPES).sort()).toEqual([...ROW_TABLES].sort());
  const before = fileOf(act, lineId);
  const names = [...OTHER_LISTS, "history", "line", "__proto__", "constructor", "", null, 7];
  for (const table of names)
    for (const base of [undefined, 0, 1])
      expect(saveRows(act, { lineId, table, base, rows: [] }), String(table)).toMatchObject({
        error: { reason: "bad-value" },
      });
  const waiver = aWaiver("some-hold", { by: "The Owner Himself" });
  expect(saveRows(act, { lineId, table: "waivers", base: undefined, rows: [waiver] }).ok).toBe(
    false,
  );
  expect(fileOf(act, lineId)).toEqual(before);
});

test("saveRows() takes a whole number as the revision, and rows as rows", () => {
  const { act, lineId } = aDesk();
  const rows = [aProperty("a")];
  for (const base of [undefined, null, "0", Number.NaN, 0.5, {}])
    expect(saveRows(act, { lineId, table: "properties", base, rows })).toMatchObject({
      error: { reason: "bad-value" },
    });
  for (const bad of [null, undefined, "rows", 3, { length: 1 }])
    expect(saveRows(act, { lineId, table: "properties", base: 0, rows: bad })).toMatchObject({
      error: { reason: "bad-value" },
    });
  expect(saveRows(act, { lineId, table: "properties", base: 0, rows: [null, 7] })).toMatchObject({
    error: { reason: "bad-rows" },
  });
  expect(fileOf(act, lineId).properties).toEqual([]);
});

function aDesk() {
  const act = anAct(aDb());
  return { act, lineId: anOpenLine(act) };
}

test("saveRows() adds, changes, removes and orders rows by their ids", () => {
  const { act, lineId } = aDesk();
  const [a, b, c] = [aProperty("a"), aProperty("b"), aProperty("c")];
  addRows(act, { lineId, table: "properties" }, [a, b, c]);
  const changed = { ...a, parcel: "QH-1" };
  const saved = saveRows(act, { lineId, table: "properties", base: 1, rows: [c, changed] });
  expect(saved).toEqual({ ok: true, value: { revision: 2, otherwise: [] } });
  expect(fileOf(act, lineId).properties).toEqual([c, changed]);
});

test("saveRows() takes the rows that changed and the order of all, and keeps the rest as it is", () => {
  const { act, lineId } = aDesk();
  const [a, b, c, d] = ["a", "b", "c", "d"].map((id) => aProperty(id)) as [
    ReturnType<typeof aProperty>,
    ReturnType<typeof aProperty>,
    ReturnType<typeof aProperty>,
    ReturnType<typeof aProperty>,
  ];
  addRows(act, { lineId, table: "properties" }, [a, b, c]);
  const changed = { ...a, parcel: "QH-1" };
  const part = { lineId, table: "properties", base: 1, rows: [changed, d] };
  expect(saveRows(act, { ...part, order: ["c", "a", "d"] })).toEqual({
    ok: true,
    value: { revision: 2, otherwise: [] },
  });
  expect(fileOf(act, lineId).properties).toEqual([c, changed, d]);
});

test("saveRows() refuses an order that does not fit the rows and the table", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "properties" }, [aProperty("a"), aProperty("b")]);
  const part = { lineId, table: "properties", base: 1, rows: [aProperty("a", { parcel: "9" })] };
  for (const order of [["a", "x"], ["b"], ["a", "a", "b"], "ab", [7], null, {}])
    expect(saveRows(act, { ...part, order }), JSON.stringify(order)).toMatchObject({
      error: { reason: "bad-value" },
    });
  expect(fileOf(act, lineId).properties).toEqual([aProperty("a"), aProperty("b")]);
});

test("saveRows() says in the order of all rows which cell is wrong, where one of them was sent", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "properties" }, [aProperty("a"), aProperty("b")]);
  const wrong = { ...aProperty("b"), stake: "landlord" };
  expect(
    saveRows(act, { lineId, table: "properties", base: 1, rows: [wrong], order: ["a", "b"] }),
  ).toMatchObject({ error: { reason: "bad-rows", cells: [{ row: 1, column: "stake" }] } });
});

test("saveRows() keeps before and after of what changed in the history", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "properties" }, [aProperty("a"), aProperty("b")]);
  must(
    saveRows(act, {
      lineId,
      table: "properties",
      base: 1,
      rows: [aProperty("a", { parcel: "QH-1" })],
    }),
  );
  const entry = fileOf(act, lineId).history.at(-1);
  expect(entry).toMatchObject({
    by: "Dana Okafor",
    at: act.now,
    action: "save-rows",
    sentence: "Changed property: a Fennel Row. Removed property: b Fennel Row.",
  });
  expect(JSON.parse(entry?.detail ?? "")).toEqual({
    properties: {
      added: [],
      removed: [aProperty("b")],
      changed: [{ id: "a", before: { parcel: "" }, after: { parcel: "QH-1" } }],
    },
  });
});

test("saveRows() tells nothing and counts nothing when nothing changed", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "properties" }, [aProperty("a")]);
  const told = fileOf(act, lineId).history.length;
  const saved = saveRows(act, { lineId, table: "properties", base: 1, rows: [aProperty("a")] });
  expect(saved).toEqual({ ok: true, value: { revision: 1, otherwise: [] } });
  expect(fileOf(act, lineId).history).toHaveLength(told);
});

test("saveRows() refuses a second person's rows and says who was first", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "properties" }, [aProperty("a")]);
  const saved = saveRows(act, { lineId, table: "properties", base: 0, rows: [aProperty("b")] });
  expect(saved).toEqual({
    ok: false,
    error: { reason: "changed-meanwhile", cells: [], by: "Dana Okafor", at: act.now },
  });
  expect(fileOf(act, lineId).properties).toEqual([aProperty("a")]);
});

test("saveRows() names every bad cell in words and writes none of the rows", () => {
  const { act, lineId } = aDesk();
  const rows = [
    aRun("r1"),
    { ...aRun("r2"), ranOn: "2026-02-30", looks: "sideways" },
    { ...aRun("r1"), fromCounter: 5_000, toCounter: 4_000 },
  ];
  const first = saveRows(act, { lineId, table: "runs", base: 0, rows });
  expect(first).toMatchObject({
    error: {
      reason: "bad-rows",
      cells: [
        { row: 1, column: "ranOn", message: "Enter a date that exists, e.g. 11/25/2026" },
        { row: 1, column: "looks", message: "Choose one of: upstream, downstream" },
      ],
    },
  });
  const second = saveRows(act, { lineId, table: "runs", base: 0, rows: [rows[0], rows[2]] });
  expect(second).toMatchObject({
    error: {
      reason: "bad-rows",
      cells: [
        { row: 1, column: "id" },
        {
          row: 1,
          column: "toCounter",
          message: "Ends at 40.0 ft, before it begins at 50.0 ft; write the smaller reading first",
        },
      ],
    },
  });
  expect(fileOf(act, lineId).runs).toEqual([]);
});

test("saveRows() finds the cell of an address and of a member of a list", () => {
  const { act, lineId } = aDesk();
  const blank = { ...aProperty("a"), address: { street: " " } };
  expect(saveRows(act, { lineId, table: "properties", base: 0, rows: [blank] })).toMatchObject({
    error: {
      cells: [{ row: 0, column: "address.street", message: "Enter the street and number" }],
    },
  });
  const agreement = { id: "g", title: "Deed", shares: [{ propertyId: "a", parts: -1 }] };
  expect(saveRows(act, { lineId, table: "agreements", base: 0, rows: [agreement] })).toMatchObject({
    error: { cells: [{ row: 0, column: "shares[propertyId=a].parts" }] },
  });
});

test("saveRows() refuses a row that names what is not in the file", () => {
  const { act, lineId } = aDesk();
  const saved = saveRows(act, {
    lineId,
    table: "units",
    base: 0,
    rows: [aUnit("u", "nowhere")],
  });
  expect(saved).toMatchObject({
    error: { reason: "bad-rows", cells: [{ row: 0, column: "propertyId" }] },
  });
});

test("saveRows() refuses to remove what others name, and says who names it", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "properties" }, [aProperty("12")]);
  addRows(act, { lineId, table: "parties" }, [aParty("p", { name: "Jesús Peña" })]);
  addRows(act, { lineId, table: "roles" }, [aRole("p", "12")]);
  const saved = saveRows(act, { lineId, table: "properties", base: 1, rows: [] });
  expect(saved).toMatchObject({
    error: {
      reason: "in-use",
      by: "property 12 Fennel Row is named by role of Jesús Peña",
    },
  });
  expect(fileOf(act, lineId).properties).toHaveLength(1);
});

test("saveRows() keeps one line's rows apart from another's, whatever their ids", () => {
  const { act, lineId } = aDesk();
  const other = anOpenLine(act);
  addRows(act, { lineId, table: "properties" }, [aProperty("a")]);
  addRows(act, { lineId: other, table: "properties" }, [aProperty("a", { parcel: "other" })]);
  expect(fileOf(act, lineId).properties).toEqual([aProperty("a")]);
  const saved = saveRows(act, {
    lineId: other,
    table: "units",
    base: 0,
    rows: [aUnit("u", "only-on-the-first")],
  });
  expect(saved.ok).toBe(false);
});

test("saveRows() lets the field save what it records, and nothing else; a viewer nothing", () => {
  const { act, lineId } = aDesk();
  const field = anAct(act.db, { role: "field" });
  const viewer = anAct(act.db, { role: "viewer" });
  const runs = { lineId, table: "runs", base: 0, rows: [aRun("r")] } as const;
  expect(saveRows(viewer, runs)).toMatchObject({ error: { reason: "not-allowed" } });
  expect(saveRows(field, runs)).toMatchObject({ ok: true });
  const properties = { lineId, table: "properties", base: 0, rows: [aProperty("a")] } as const;
  expect(saveRows(field, properties)).toMatchObject({ error: { reason: "not-allowed" } });
});

test("saveRows() gives new sightings a tie-in, the one that is known or a new one", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "runs" }, [aRun("run-1"), aRun("run-2")]);
  addRows(act, { lineId, table: "anchors" }, [anAnchor("run-1"), anAnchor("run-2")]);
  addRows(act, { lineId, table: "observations" }, [
    anObservation("o1", { runId: "run-1", counter: 4_000 }),
    anObservation("o2", { runId: "run-1", counter: 2_000 }),
    anObservation("o3", { runId: "run-2", counter: 2_050 }),
  ]);
  const { tieIns, observations } = fileOf(act, lineId);
  expect(tieIns.map(({ label }) => label)).toEqual(["T1", "T2"]);
  const tieInOf = (id: string) => observations.find((seen) => seen.id === id)?.tieInId;
  expect(tieInOf("o3")).toBe(tieInOf("o2"));
  expect(tieInOf("o2")).toBe(tieIns[0]?.id);
  expect(getRevisions(act.db, lineId)).toMatchObject({ observations: 1, tieIns: 1 });
});

test("saveRows() says which rows are kept otherwise than they were sent", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "runs" }, [aRun("run")]);
  addRows(act, { lineId, table: "anchors" }, [anAnchor("run")]);
  const rows = [anObservation("seen"), anObservation("crack", { kind: "fault", fault: "crack" })];
  const saved = must(saveRows(act, { lineId, table: "observations", base: 0, rows }));
  const [seen] = fileOf(act, lineId).observations;
  expect(seen?.tieInId).not.toBeNull();
  expect(saved.otherwise).toEqual([seen]);
  const again = { lineId, table: "observations", base: saved.revision, rows: [seen, rows[1]] };
  expect(must(saveRows(act, { ...again, table: "observations" })).otherwise).toEqual([]);
});

test("saveRows() lets go of a tie-in that only a removed sighting had made", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "runs" }, [aRun("run")]);
  addRows(act, { lineId, table: "anchors" }, [anAnchor("run")]);
  addRows(act, { lineId, table: "observations" }, [
    anObservation("o1"),
    anObservation("o2", { counter: 900 }),
  ]);
  const kept = fileOf(act, lineId).observations.filter(({ id }) => id === "o2");
  must(saveRows(act, { lineId, table: "observations", base: 1, rows: kept }));
  expect(fileOf(act, lineId).tieIns).toHaveLength(1);
});

test("saveRows() refuses to settle a tie-in without a name and a reason", () => {
  const { act, lineId } = aDesk();
  const settled = aTieIn("t", { kind: "unknown", inactive: true });
  const saved = saveRows(act, { lineId, table: "tieIns", base: 0, rows: [settled] });
  expect(saved).toMatchObject({
    error: { reason: "bad-rows", cells: [{ row: 0, column: "inactive" }] },
  });
});

test("saveRows() refuses tie-ins that join one another in a ring", () => {
  const { act, lineId } = aDesk();
  const rows = [
    aTieIn("a", { kind: "unknown", parentId: "b" }),
    aTieIn("b", { kind: "unknown", parentId: "a" }),
  ];
  const saved = saveRows(act, { lineId, table: "tieIns", base: 0, rows });
  expect(saved).toMatchObject({ error: { reason: "bad-rows" } });
  expect(saved.ok ? [] : saved.error.cells.map(({ column }) => column)).toContain("parentId");
});

test("saveRows() refuses a line that is not there", () => {
  const { act } = aDesk();
  expect(saveRows(act, { lineId: "none", table: "runs", base: 0, rows: [] })).toMatchObject({
    error: { reason: "not-found" },
  });
});

test("saveRows() says how to write a state and a ZIP code, and leaves alone what stood there", () => {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  const odd = aProperty("12", { address: anAddress("12 Fennel Row", { state: "Oregn" }) });
  expect(saveRows(act, { lineId, table: "properties", base: 0, rows: [odd] })).toMatchObject({
    error: {
      cells: [{ row: 0, column: "address.state", message: expect.stringContaining("Washington") }],
    },
  });
  insertRow(act.db, "properties", { lineId, row: odd });
  const noted = { ...odd, note: "Corner house" };
  expect(saveRows(act, { lineId, table: "properties", base: 0, rows: [noted] }).ok).toBe(true);
});

test("saveRows() keeps a state in its two letters, and says so; one that stood there stays", () => {
  const { act, lineId } = aDesk();
  const base = getRevisions(act.db, lineId).properties;
  const old = aProperty("14", { address: anAddress("14 Fennel Row", { state: "wa" }) });
  insertRow(act.db, "properties", { lineId, row: old });
  const typed = aProperty("12", { address: anAddress("12 Fennel Row", { state: "or" }) });
  const before = fileOf(act, lineId).properties;
  const rows = [...before, typed];
  const saved = must(saveRows(act, { lineId, table: "properties", base, rows }));
  expect(saved.otherwise).toMatchObject([{ id: "12", address: { state: "OR" } }]);
  const states = new Map(fileOf(act, lineId).properties.map((one) => [one.id, one.address.state]));
  expect([states.get("12"), states.get("14")]).toEqual(["OR", "wa"]);
});

test("saveRows() takes a property that nobody said more of as perhaps connected, never as a payer", () => {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  const { stake: _stake, ...unsaid } = aProperty("12");
  expect(saveRows(act, { lineId, table: "properties", base: 0, rows: [unsaid] }).ok).toBe(true);
  expect(fileOf(act, lineId).properties[0]?.stake).toBe("candidate");
});
