import { expect, test } from "vitest";
import type { GridRow } from "#app/_components/grid/column.ts";
import type { SaveRows } from "#app/_components/grid/use-rows.ts";
import { dropRow, keepRow } from "#app/lines/[lineId]/camera/plan/keep-row.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { aDb, anAct, anOpenLine, fileOf } from "../../../support/office.ts";
import { aShape } from "../../../support/plan.ts";

const SAID = { form: new FormData(), words: "Kept." };

/** The table of shapes in a real office, saved as the page's action saves it. */
function aTable() {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  const save: SaveRows = async (base, rows) => {
    const saved = saveRows(act, { lineId, table: "planShapes", base, rows });
    if (saved.ok) return { status: "saved", revision: saved.value.revision, at: act.now };
    const { reason, cells, by, at } = saved.error;
    if (reason !== "changed-meanwhile") return { status: "refused", message: by, cells };
    const { planShapes } = fileOf(act, lineId);
    const revision = getRevisions(act.db, lineId).planShapes;
    return {
      status: "changed-meanwhile",
      by,
      at,
      revision,
      rows: planShapes as unknown as GridRow[],
    };
  };
  const now = () => ({
    base: getRevisions(act.db, lineId).planShapes,
    rows: fileOf(act, lineId).planShapes as unknown as GridRow[],
  });
  return { save, now, names: () => fileOf(act, lineId).planShapes.map(({ name }) => name) };
}

function aRow(id: string, name: string, outline = "0,0; 10,0; 10,10"): GridRow {
  return { ...aShape(id, outline, { name }) };
}

test("keepRow() adds a row, and puts it in the place of the row with its id", async () => {
  const { save, now, names } = aTable();
  expect(await keepRow(save, now(), aRow("a", "12"), SAID)).toMatchObject({ message: "Kept." });
  await keepRow(save, now(), aRow("b", "Garage"), SAID);
  await keepRow(save, now(), aRow("a", "14"), SAID);
  expect(names()).toEqual(["14", "Garage"]);
});

test("keepRow() loses nothing of what others saved meanwhile", async () => {
  const { save, now, names } = aTable();
  const before = now();
  await keepRow(save, before, aRow("a", "theirs"), SAID);
  expect((await keepRow(save, before, aRow("b", "mine"), SAID)).status).toBe("done");
  expect(names()).toEqual(["theirs", "mine"]);
});

test("keepRow() says what the file did not take, and saves nothing", async () => {
  const { save, now, names } = aTable();
  const answer = await keepRow(save, now(), aRow("a", "12", ""), SAID);
  expect(answer).toMatchObject({ status: "refused", path: "outline" });
  expect(answer.message).toMatch(/at least two corners/);
  expect(names()).toEqual([]);
});

test("dropRow() takes out its row alone, also of what others saved meanwhile", async () => {
  const { save, now, names } = aTable();
  await keepRow(save, now(), aRow("a", "12"), SAID);
  const before = now();
  await keepRow(save, before, aRow("b", "theirs"), SAID);
  expect((await dropRow(save, before, "a", SAID)).status).toBe("done");
  expect(names()).toEqual(["theirs"]);
});
