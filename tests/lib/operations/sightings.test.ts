import { describe, expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { undoableMove } from "#lib/domain/run/sighting-moves.ts";
import { mergeTieIns } from "#lib/operations/merge-tie-ins.ts";
import { moveSighting } from "#lib/operations/move-sighting.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { undoSightings } from "#lib/operations/undo-sightings.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

const RUN_1 = { id: "r1", name: "Run 1", ranOn: "2026-11-03", looks: "upstream" };
const RUN_2 = { ...RUN_1, id: "r2", name: "Run 2" };

describe("saveRows() of what places sightings", () => {
  test("saveRows() lets a tie-in follow what is typed later of its sighting", () => {
    const act = anAct(aDb());
    const lineId = anOpenLine(act);
    addRows(act, { lineId, table: "runs" }, [RUN_1]);
    const seen = { id: "o1", runId: "r1", kind: "tie-in", counter: 2_410 };
    addRows(act, { lineId, table: "observations" }, [seen]);
    const tieInId = fileOf(act, lineId).observations[0]?.tieInId;
    const base = getRevisions(act.db, lineId).observations;
    const rows = [{ ...seen, tieInId, clock: 9, diameter: 4, material: "pvc" }];
    must(saveRows(act, { lineId, table: "observations", base, rows }));
    expect(fileOf(act, lineId).tieIns).toMatchObject([
      { id: tieInId, label: "T1", side: "left", diameter: 4, material: "pvc" },
    ]);
  });

  test("saveRows() lets places and sides follow how a run is said to have been made", () => {
    const act = anAct(aDb());
    const lineId = anOpenLine(act);
    const said = (rest: object) => {
      const base = getRevisions(act.db, lineId).runs;
      must(saveRows(act, { lineId, table: "runs", base, rows: [{ ...RUN_1, ...rest }] }));
      const file = fileOf(act, lineId);
      const { stations, tieIns } = reportOn(file, "2026-11-25");
      return [stations[0]?.station, tieIns[0]?.side, file.tieIns[0]?.side];
    };
    said({ looks: "downstream" });
    const seen = { id: "o1", runId: "r1", kind: "tie-in", counter: 3_150, clock: 9 };
    addRows(act, { lineId, table: "observations" }, [seen]);
    expect(said({ looks: "downstream" })).toEqual([null, "right", "right"]);
    const back = { looks: "downstream", measuredFrom: "main" };
    expect(said(back)).toEqual([3_150, "right", "right"]);
    expect(said({ ...back, looks: "upstream" })).toEqual([3_150, "left", "left"]);
    expect(said({ ...back, selfLeveling: "no" })).toEqual([3_150, "unknown", "unknown"]);
    expect(said({ ...back, selfLeveling: "yes" })).toEqual([3_150, "right", "right"]);
  });

  test("saveRows() of anchors makes one tie-in of what two runs saw", () => {
    const act = anAct(aDb());
    const lineId = anOpenLine(act);
    addRows(act, { lineId, table: "runs" }, [RUN_1, RUN_2]);
    addRows(act, { lineId, table: "observations" }, [
      { id: "o1", runId: "r1", kind: "tie-in", counter: 3_000, clock: 3 },
      { id: "o2", runId: "r2", kind: "tie-in", counter: 1_000, clock: 3 },
    ]);
    expect(fileOf(act, lineId).tieIns.map(({ label }) => label)).toEqual(["T1", "T2"]);
    addRows(act, { lineId, table: "anchors" }, [
      { id: "a1", runId: "r1", kind: "main-connection", counter: 0, station: 0 },
      { id: "a2", runId: "r2", kind: "cleanout", counter: 0, station: 2_000 },
    ]);
    const { tieIns, observations } = fileOf(act, lineId);
    expect(tieIns.map(({ label }) => label)).toEqual(["T1"]);
    expect(observations.map(({ tieInId }) => tieInId)).toEqual([tieIns[0]?.id, tieIns[0]?.id]);
  });
});

const ANCHORS = [
  { id: "a1", runId: "r1", kind: "main-connection", counter: 0, station: 0 },
  { id: "a2", runId: "r2", kind: "main-connection", counter: 0, station: 0 },
];

/** Two runs that saw one branch half a foot apart, and another 20 ft farther upstream. */
function twoRuns() {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "runs" }, [RUN_1, RUN_2]);
  addRows(act, { lineId, table: "anchors" }, ANCHORS);
  addRows(act, { lineId, table: "observations" }, [
    { id: "o1", runId: "r1", kind: "tie-in", counter: 3_000, clock: 3 },
    { id: "o2", runId: "r2", kind: "tie-in", counter: 3_050, clock: 3 },
    { id: "o3", runId: "r2", kind: "tie-in", counter: 5_000, clock: 3 },
  ]);
  const labels = () => {
    const { tieIns, observations } = fileOf(act, lineId);
    return observations.map(
      ({ tieInId }) => tieIns.find(({ id }) => id === tieInId)?.label ?? "none",
    );
  };
  const idOf = (label: string) =>
    fileOf(act, lineId).tieIns.find((tieIn) => tieIn.label === label)?.id ?? "";
  const last = () => fileOf(act, lineId).history.at(-1);
  const moveAnchor = (station: number) => {
    const base = getRevisions(act.db, lineId).anchors;
    const rows = ANCHORS.map((anchor) => (anchor.id === "a2" ? { ...anchor, station } : anchor));
    must(saveRows(act, { lineId, table: "anchors", base, rows }));
  };
  return { act, lineId, labels, idOf, last, moveAnchor };
}

describe("what a person says of sightings", () => {
  test("moveSighting() splits a tie-in, told in the history, and one press undoes it", () => {
    const { act, lineId, labels, last } = twoRuns();
    expect(labels()).toEqual(["T1", "T1", "T2"]);
    must(moveSighting(act, { lineId, observationId: "o2", tieInId: null }));
    expect(labels()).toEqual(["T1", "T3", "T2"]);
    expect(last()?.sentence).toMatch(/^Moved observation .* to tie-in T3 \(was tie-in T1\)\.$/);
    expect(undoableMove(fileOf(act, lineId))).toEqual(last());
    must(undoSightings(act, { lineId, historyId: last()?.id ?? "" }));
    expect(labels()).toEqual(["T1", "T1", "T2"]);
    expect(fileOf(act, lineId).tieIns.map(({ label }) => label)).toEqual(["T1", "T2"]);
    expect(last()).toMatchObject({ action: "undo-sightings" });
    expect(undoableMove(fileOf(act, lineId))).toBeNull();
  });

  test("mergeTieIns() makes two one, told in the history, and undoing brings back the one that went", () => {
    const { act, lineId, labels, idOf, last } = twoRuns();
    const before = fileOf(act, lineId);
    must(mergeTieIns(act, { lineId, tieInId: idOf("T1"), intoId: idOf("T2") }));
    expect(labels()).toEqual(["T2", "T2", "T2"]);
    expect(last()?.sentence).toBe("Merged tie-in T1 into tie-in T2; 2 sightings moved.");
    must(undoSightings(act, { lineId, historyId: last()?.id ?? "" }));
    const after = fileOf(act, lineId);
    expect(after.tieIns).toEqual(before.tieIns);
    expect(after.observations).toEqual(before.observations);
  });

  test("mergeTieIns() keeps the one that something rests on, and says how", () => {
    const { act, lineId, idOf } = twoRuns();
    addRows(act, { lineId, table: "tests" }, [
      {
        id: "dye",
        tieInId: idOf("T1"),
        kind: "dye",
        performedOn: "2026-11-04",
        result: "positive",
      },
    ]);
    expect(mergeTieIns(act, { lineId, tieInId: idOf("T1"), intoId: idOf("T2") })).toMatchObject({
      ok: false,
      error: { reason: "in-use", detail: expect.stringContaining("merge T2 into T1 instead") },
    });
    must(mergeTieIns(act, { lineId, tieInId: idOf("T2"), intoId: idOf("T1") }));
    expect(mergeTieIns(act, { lineId, tieInId: idOf("T1"), intoId: idOf("T1") })).toMatchObject({
      ok: false,
      error: { reason: "bad-value" },
    });
  });

  test("undoSightings() is refused once the same sightings were moved again", () => {
    const { act, lineId, idOf, last } = twoRuns();
    must(moveSighting(act, { lineId, observationId: "o2", tieInId: null }));
    const historyId = last()?.id ?? "";
    must(moveSighting(act, { lineId, observationId: "o2", tieInId: idOf("T2") }));
    expect(undoSightings(act, { lineId, historyId })).toMatchObject({
      ok: false,
      error: { reason: "changed-meanwhile" },
    });
  });

  test("saveRows() never joins again what a person told apart, however the run is moved", () => {
    const { act, lineId, labels, moveAnchor } = twoRuns();
    must(moveSighting(act, { lineId, observationId: "o2", tieInId: null }));
    moveAnchor(20);
    expect(labels()).toEqual(["T1", "T3", "T2"]);
  });

  test("saveRows() never tells apart again what a person joined, however the run is moved", () => {
    const { act, lineId, labels, idOf, moveAnchor } = twoRuns();
    must(mergeTieIns(act, { lineId, tieInId: idOf("T2"), intoId: idOf("T1") }));
    moveAnchor(500);
    expect(labels()).toEqual(["T1", "T1", "T1"]);
  });

  test("without a person's word, a run that moves away takes its sighting along", () => {
    const { labels, moveAnchor } = twoRuns();
    moveAnchor(500);
    expect(labels()[1]).not.toBe("T1");
  });
});
