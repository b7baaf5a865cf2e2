import { expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { bringInRows } from "#lib/operations/bring-in-rows.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { anAnchor, anEntry, anObservation, aProperty, aRecord, aRun } from "../../support/file.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";

function aDesk() {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "properties" }, [aProperty("14")]);
  addRows(act, { lineId, table: "records" }, [aRecord("card"), aRecord("permit")]);
  addRows(act, { lineId, table: "runs" }, [aRun("run")]);
  addRows(act, { lineId, table: "anchors" }, [anAnchor("run")]);
  return { act, lineId };
}

const ENTRIES = { table: "entries", to: "card", doubles: false } as const;
const SEEN = { table: "observations", to: "run", doubles: false } as const;

test("bringInRows() adds the good rows and names what is wrong with the others", () => {
  const { act, lineId } = aDesk();
  const rows = [
    { label: "House 12", distance: 1_800, side: "left" },
    { label: "House 14", distance: -5 },
    { label: "House 16", distance: 5_000, propertyId: "14" },
    { label: "House 18", distance: 6_000, propertyId: "nowhere" },
  ];
  const brought = must(bringInRows(act, { ...ENTRIES, lineId, rows }));
  expect(brought).toEqual({
    added: [0, 2],
    left: [
      {
        row: 1,
        column: "distance",
        message: "Enter a length in feet from 0 to 100,000, with at most two decimals",
      },
      {
        row: 3,
        column: "propertyId",
        message: 'There is no property with the id "nowhere" in the file; choose one that is there',
      },
    ],
    doubles: [],
  });
  expect(fileOf(act, lineId).entries.map(({ label, recordId }) => [label, recordId])).toEqual([
    ["House 12", "card"],
    ["House 16", "card"],
  ]);
});

test("bringInRows() leaves out what is there already, in the file or in an earlier row, unless asked", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "entries" }, [
    anEntry("a", { distance: 1_800, side: "left" }),
    anEntry("b", { label: "House 20", distance: null }),
  ]);
  const rows = [
    { label: "12", distance: 1_800, side: "unknown" },
    { label: "12 rear", distance: 1_800, side: "right" },
    { label: "house 20 ", distance: null },
    { label: "Shop", distance: 4_000, side: "left" },
    { label: "Shop", distance: 4_000, side: "left" },
  ];
  const first = must(bringInRows(act, { ...ENTRIES, lineId, rows }));
  expect(first).toMatchObject({ added: [1, 3], doubles: [0, 2, 4] });
  const elsewhere = must(
    bringInRows(act, { ...ENTRIES, to: "permit", lineId, rows: [rows[0] ?? {}] }),
  );
  expect(elsewhere).toMatchObject({ added: [0], doubles: [] });
  const asked = must(bringInRows(act, { ...ENTRIES, lineId, rows, doubles: true }));
  expect(asked).toMatchObject({ added: [0, 1, 2, 3, 4], doubles: [] });
});

test("bringInRows() gives tie-ins that were seen their tie-in, and counts so that open tables are told", () => {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "observations" }, [anObservation("o", { counter: 2_000 })]);
  const before = getRevisions(act.db, lineId);
  const rows = [
    { kind: "tie-in", counter: 4_000, clock: 3, tieInId: "no-such", quote: "not said" },
    { kind: "fault", counter: 4_500, toCounter: 4_400, fault: "roots" },
    { kind: "tie-in", counter: 2_000, clock: null },
    { kind: "fault", counter: 2_000, fault: "crack" },
  ];
  const brought = must(bringInRows(act, { ...SEEN, lineId, rows }));
  expect(brought).toMatchObject({
    added: [0, 3],
    doubles: [2],
    left: [{ row: 1, column: "toCounter" }],
  });
  const file = fileOf(act, lineId);
  expect(file.tieIns.map(({ label }) => label)).toEqual(["T1", "T2"]);
  expect(file.observations[1]).toMatchObject({ tieInId: file.tieIns[1]?.id, quote: "" });
  expect(getRevisions(act.db, lineId)).toMatchObject({
    observations: before.observations + 1,
    tieIns: before.tieIns + 1,
  });
  const stale = { lineId, table: "observations", base: before.observations, rows: [] } as const;
  expect(saveRows(act, stale)).toMatchObject({ error: { reason: "changed-meanwhile" } });
});

test("bringInRows() is one entry of the history, and none where nothing came in", () => {
  const { act, lineId } = aDesk();
  const rows = [
    { label: "A", distance: 100 },
    { label: "B", distance: 900 },
  ];
  must(bringInRows(act, { ...ENTRIES, lineId, rows }));
  const { history } = fileOf(act, lineId);
  expect(history.at(-1)).toMatchObject({
    action: "bring-in-rows",
    sentence: "Imported from a file: Added 2 × record entry: A, B.",
  });
  must(bringInRows(act, { ...ENTRIES, lineId, rows }));
  expect(fileOf(act, lineId).history).toHaveLength(history.length);
});

test("bringInRows() settles nothing in passing", () => {
  const { act, lineId } = aDesk();
  const rows = [{ label: "A", explanation: "never built", explainedBy: "somebody" }];
  must(bringInRows(act, { ...ENTRIES, lineId, rows }));
  expect(fileOf(act, lineId).entries[0]).toMatchObject({ explanation: "", explainedBy: "" });
});

test("bringInRows() refuses a record that is not there, too many rows, and whoever may not", () => {
  const { act, lineId } = aDesk();
  const field = anAct(act.db, { role: "field" });
  const rows = [{ label: "A" }];
  expect(bringInRows(act, { ...ENTRIES, to: "gone", lineId, rows })).toMatchObject({
    error: { reason: "not-found", detail: "the record" },
  });
  expect(bringInRows(act, { ...SEEN, to: "gone", lineId, rows })).toMatchObject({
    error: { reason: "not-found", detail: "the run" },
  });
  const many = Array.from({ length: 5_001 }, () => ({ label: "A" }));
  expect(bringInRows(act, { ...ENTRIES, lineId, rows: many })).toMatchObject({
    error: { reason: "bad-value" },
  });
  expect(bringInRows(field, { ...ENTRIES, lineId, rows })).toMatchObject({
    error: { reason: "not-allowed" },
  });
  expect(bringInRows(field, { ...SEEN, lineId, rows: [{ kind: "bend", counter: 5 }] }).ok).toBe(
    true,
  );
  expect(fileOf(act, lineId).entries).toEqual([]);
});

test("bringInRows() takes runs from a file, then their observations, each with its run", () => {
  const { act, lineId } = aDesk();
  const runs = [
    { name: "Run 2", ranOn: "2026-11-03", looks: "downstream", fromCounter: 0, toCounter: 9_000 },
    { name: "run 2 ", ranOn: "2026-11-03", looks: "downstream" },
    { name: "Run 3", ranOn: "2026-11-31", looks: "downstream" },
  ];
  const came = must(
    bringInRows(act, { table: "runs", to: "", doubles: false, lineId, rows: runs }),
  );
  expect(came).toMatchObject({ added: [0], doubles: [1], left: [{ row: 2, column: "ranOn" }] });
  const second = fileOf(act, lineId).runs.find(({ name }) => name === "Run 2");
  const rows = [
    { runId: "run", kind: "tie-in", counter: 2_000 },
    { runId: second?.id, kind: "tie-in", counter: 2_000 },
    { runId: "nowhere", kind: "tie-in", counter: 3_000 },
    { kind: "tie-in", counter: 4_000 },
  ];
  const seen = must(bringInRows(act, { ...SEEN, to: "", lineId, rows }));
  expect(seen.added).toEqual([0, 1]);
  expect(seen.left.map(({ row, column }) => [row, column])).toEqual([
    [3, "runId"],
    [2, "runId"],
  ]);
  expect(fileOf(act, lineId).observations.map(({ runId }) => runId)).toEqual(["run", second?.id]);
  expect(bringInRows(act, { ...ENTRIES, to: "", lineId, rows: [] })).toMatchObject({ ok: false });
});
