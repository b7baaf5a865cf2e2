import { expect, test } from "vitest";
import { addNarration } from "#lib/operations/add-narration.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { aRun } from "../../support/file.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";

function aDesk() {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "runs" }, [aRun("run"), aRun("other")]);
  return { act, lineId };
}

const TEXT = "  0:20 twenty four one, a tap at nine o'clock\n\n0:40 that's all\n";

test("addNarration() keeps the words as they are, with who brought them and when", () => {
  const { act, lineId } = aDesk();
  const { narrationId } = must(addNarration(act, { lineId, runId: "run", text: TEXT }));
  const { narrations, history } = fileOf(act, lineId);
  expect(narrations).toEqual([
    {
      id: narrationId,
      runId: "run",
      text: TEXT,
      addedBy: "Dana Okafor",
      addedAt: act.now,
      decided: [],
    },
  ]);
  expect(history.at(-1)).toMatchObject({
    action: "add-narration",
    sentence: "Added a transcript of run.",
  });
});

test("addNarration() takes words that say nothing of a distance: they are kept all the same", () => {
  const { act, lineId } = aDesk();
  expect(addNarration(act, { lineId, runId: "run", text: "testing, testing" }).ok).toBe(true);
});

test("addNarration() refuses no words, what is no text, and what is too long", () => {
  const { act, lineId } = aDesk();
  const add = (text: string) => addNarration(act, { lineId, runId: "run", text });
  expect(add(" \n\t ")).toMatchObject({ error: { reason: "missing-value", path: "text" } });
  expect(add("\u0000\u0001\u0002webm")).toMatchObject({
    error: { reason: "bad-value", path: "text" },
  });
  expect(add("a".repeat(100_001))).toMatchObject({ error: { reason: "bad-value", path: "text" } });
  expect(fileOf(act, lineId).narrations).toEqual([]);
});

test("addNarration() refuses the same words for the same run, and a run that is not there", () => {
  const { act, lineId } = aDesk();
  must(addNarration(act, { lineId, runId: "run", text: TEXT }));
  expect(addNarration(act, { lineId, runId: "run", text: `${TEXT}\n` })).toMatchObject({
    error: { reason: "already-there" },
  });
  expect(addNarration(act, { lineId, runId: "other", text: TEXT }).ok).toBe(true);
  expect(addNarration(act, { lineId, runId: "gone", text: TEXT })).toMatchObject({
    error: { reason: "not-found", detail: "the run" },
  });
});

test("addNarration() is for the field too, not for a viewer", () => {
  const { act, lineId } = aDesk();
  const words = { lineId, runId: "run", text: TEXT };
  expect(addNarration(anAct(act.db, { role: "viewer" }), words)).toMatchObject({
    error: { reason: "not-allowed" },
  });
  expect(addNarration(anAct(act.db, { role: "field" }), words).ok).toBe(true);
});

test("saveRows() removes no run whose words are kept", () => {
  const { act, lineId } = aDesk();
  must(addNarration(act, { lineId, runId: "run", text: TEXT }));
  const runs = fileOf(act, lineId).runs.filter(({ id }) => id !== "run");
  expect(saveRows(act, { lineId, table: "runs", base: 1, rows: runs })).toMatchObject({
    error: { reason: "in-use", by: "run run is named by narration" },
  });
});
