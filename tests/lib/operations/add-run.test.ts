import { expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import { RUN } from "#lib/domain/facts/run.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { addRun } from "#lib/operations/add-run.ts";
import { aDb, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

/** As the form sends it: in at the upper cleanout, down to the main, 165.0 ft on the counter. */
const TOLD = {
  ...usualRow(RUN),
  ...{ name: "Run 1", ranOn: "2026-11-25", looks: "downstream", measuredFrom: "access" },
  ...{ toCounter: 16_500, ended: "reached-main" },
};

function desk() {
  const db = aDb();
  const lineId = anOpenLine(anAct(db));
  const act = anAct(db, { role: "field" });
  const add = (run: object = {}) => addRun(act, { lineId, run: { ...TOLD, ...run } });
  return { act, lineId, add, file: () => fileOf(act, lineId) };
}

test("addRun() ties a run that ended at the main to it, by its last reading", () => {
  const { act, lineId, add, file } = desk();
  const { runId } = must(add());
  expect(file().anchors).toMatchObject([
    { runId, kind: "main-connection", counter: 16_500, station: 0 },
  ]);
  expect(getRevisions(act.db, lineId)).toMatchObject({ runs: 1, anchors: 1 });
  const [seen] = reportOn(file(), "2026-11-25").runCoverage;
  expect(seen?.spans).toMatchObject([{ from: 0, to: 16_500 }]);
});

test.each([
  ["blocked", { ended: "blocked" }],
  ["without a reading at its end", { toCounter: null }],
  ["up from the main", { looks: "upstream" }],
  ["measured from the main", { measuredFrom: "main" }],
])("addRun() ties no run that is %s", (_how, rest) => {
  const { add, file } = desk();
  must(add(rest));
  expect([file().runs.length, file().anchors]).toEqual([1, []]);
});

test("addRun() says what makes no sense beside its field, and adds nothing", () => {
  const { add, file } = desk();
  expect(add({ ranOn: "2026-02-30" })).toMatchObject({ error: { path: "ranOn" } });
  expect(add({ toCounter: -1_000_000 })).toMatchObject({ ok: false });
  expect(file().runs).toEqual([]);
});
