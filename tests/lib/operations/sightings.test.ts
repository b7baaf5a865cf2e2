import { describe, expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

const RUN_1 = { id: "r1", name: "Run 1", ranOn: "2026-11-03", direction: "upstream" };
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
