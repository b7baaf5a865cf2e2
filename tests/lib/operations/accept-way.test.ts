import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { acceptWay } from "#lib/operations/accept-way.ts";
import type { Act } from "#lib/operations/act.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

/** Two houses on the card between three branches that the camera saw: two ways to pair them. */
function aLine(act: Act): string {
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "records" }, [
    { id: "card", title: "Card 1958", measuredFrom: "main" },
  ]);
  addRows(act, { lineId, table: "entries" }, [
    { id: "e1", recordId: "card", label: "House 12", distance: 3_000 },
    { id: "e2", recordId: "card", label: "House 14", distance: 6_000 },
  ]);
  addRows(act, { lineId, table: "runs" }, [
    { id: "r1", name: "Run 1", ranOn: "2026-11-03", looks: "upstream", toCounter: 8_000 },
  ]);
  addRows(act, { lineId, table: "anchors" }, [
    { id: "a1", runId: "r1", kind: "main-connection", counter: 0, station: 0 },
  ]);
  addRows(act, { lineId, table: "observations" }, [
    { id: "o1", runId: "r1", kind: "tie-in", counter: 2_970 },
    { id: "o2", runId: "r1", kind: "tie-in", counter: 3_120 },
    { id: "o3", runId: "r1", kind: "tie-in", counter: 6_000 },
  ]);
  return lineId;
}

test("acceptWay() accepts the pairs in which the way differs, as one change", () => {
  const act = anAct(aDb());
  const lineId = aLine(act);
  const report = reportOn(fileOf(act, lineId), act.today);
  const way = report.alternatives.find(
    ({ shift, scale }) => shift === report.alignment?.shift && scale === report.alignment.scale,
  );
  if (way === undefined) throw new Error("The file offers no other way to pair");
  const before = fileOf(act, lineId).history.length;
  const { count } = must(acceptWay(act, { lineId, key: way.key, reason: "The lid is there" }));
  expect(count).toBeGreaterThan(0);
  const file = fileOf(act, lineId);
  const accepted = new Set(file.pairings.map(({ entryId, tieInId }) => `${entryId} ${tieInId}`));
  expect(accepted.size).toBe(count);
  expect(
    way.pairs.filter(({ entryId, tieInId }) => accepted.has(`${entryId} ${tieInId}`)),
  ).toHaveLength(count);
  expect(file.history).toHaveLength(before + 1);
});

test("acceptWay() refuses a way that the file does not offer, and accepts nothing", () => {
  const act = anAct(aDb());
  const lineId = aLine(act);
  expect(acceptWay(act, { lineId, key: "gone", reason: "The lid is there" })).toMatchObject({
    ok: false,
    error: { reason: "not-in-this-state" },
  });
  expect(fileOf(act, lineId).pairings).toEqual([]);
});
