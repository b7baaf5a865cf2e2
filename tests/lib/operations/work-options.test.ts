import { describe, expect, test } from "vitest";
import { updateLine } from "#db/queries/line.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { splitStanding } from "#lib/domain/split/stale.ts";
import type { Act } from "#lib/operations/act.ts";
import { chooseOption } from "#lib/operations/choose-option.ts";
import { chooseSplit } from "#lib/operations/choose-split.ts";
import { cutToTieIn } from "#lib/operations/cut-to-tie-in.ts";
import { decideChangeOrder } from "#lib/operations/decide-change-order.ts";
import { proposeChangeOrder } from "#lib/operations/propose-change-order.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { takeFixtureWeights } from "#lib/operations/take-fixture-weights.ts";
import { aScopeItem } from "#tests/support/file.ts";
import { aDesk, addRows, anAct, fileOf, must } from "#tests/support/office.ts";
import { aChoice } from "#tests/support/priced-line.ts";

function pricedDesk() {
  const desk = aDesk();
  const add = (table: "options" | "scope", rows: readonly object[]) =>
    addRows(desk.act, { lineId: desk.lineId, table }, rows);
  add("options", [
    { id: "spot", title: "Spot repair", kind: "spot-repair" },
    { id: "line", title: "Lining", kind: "lining" },
  ]);
  add("scope", [
    aScopeItem("dig", { optionId: "spot" }),
    aScopeItem("liner", { optionId: "line", quantity: 3_000 }),
    aScopeItem("permit", { place: "general", from: null, to: null, spread: "equally" }),
  ]);
  return desk;
}

function choose(act: Act, lineId: string) {
  return must(chooseSplit(act, { lineId, choice: aChoice("equal"), reason: "All asked for it" }));
}

function saveScope(act: Act, lineId: string, rows: readonly object[]) {
  return saveRows(act, { lineId, table: "scope", base: getRevisions(act.db, lineId).scope, rows });
}

describe("chooseOption()", () => {
  test("chooseOption() keeps the choice with its reason, and the split follows it", () => {
    const { act, lineId } = pricedDesk();
    const split = { lineId, choice: aChoice("equal"), reason: "All asked for it" };
    expect(chooseSplit(act, split)).toMatchObject({ ok: false, error: { reason: "bad-value" } });
    must(chooseOption(act, { lineId, optionId: "spot", reason: "Cheapest that lasts" }));
    must(chooseSplit(act, split));
    const file = fileOf(act, lineId);
    expect(file.line.optionId).toBe("spot");
    expect(file.splits.at(-1)).toMatchObject({ optionId: "spot", total: 200_000 });
    expect(file.history.map(({ sentence }) => sentence)).toContain(
      "Selected the repair option “Spot repair”: Cheapest that lasts",
    );
  });

  test("chooseOption() makes a split on another option stale, in words", () => {
    const { act, lineId } = pricedDesk();
    must(chooseOption(act, { lineId, optionId: "spot", reason: "Cheapest" }));
    choose(act, lineId);
    must(chooseOption(act, { lineId, optionId: "line", reason: "Lasts longer" }));
    const file = fileOf(act, lineId);
    const [version] = file.splits;
    if (version === undefined) throw new Error("No version");
    const standing = splitStanding(file, reportOn(file, act.today), version);
    expect(standing.stale).toBe(true);
    expect(standing.sentence).toMatch(/“Lining”, not “Spot repair”.*\$2,000.00 to \$4,000.00/);
  });

  test("chooseOption() refuses without a reason, another option than there are, and a viewer", () => {
    const { act, lineId } = pricedDesk();
    const option = { lineId, optionId: "spot", reason: "Cheapest" };
    expect(chooseOption(act, { ...option, reason: " " })).toMatchObject({
      error: { reason: "missing-value", path: "reason" },
    });
    expect(chooseOption(act, { ...option, optionId: "gone" })).toMatchObject({
      error: { reason: "not-found" },
    });
    expect(chooseOption(anAct(act.db, { role: "viewer" }), option)).toMatchObject({
      error: { reason: "not-allowed" },
    });
  });

  test("saveRows() keeps the chosen option in the table", () => {
    const { act, lineId } = pricedDesk();
    must(chooseOption(act, { lineId, optionId: "spot", reason: "Cheapest" }));
    const base = getRevisions(act.db, lineId).options;
    const rows = fileOf(act, lineId).options.filter(({ id }) => id !== "spot");
    expect(saveRows(act, { lineId, table: "options", base, rows })).toMatchObject({
      error: { reason: "not-in-this-state", by: expect.stringContaining("Choose another one") },
    });
  });
});

describe("change orders", () => {
  const proposal = { title: "Rock", reason: "Rock at 8 ft", orderedBy: "Ottilie Brandvold" };

  test("proposeChangeOrder() numbers by itself; decideChangeOrder() lets an agreed one count", () => {
    const { act, lineId } = pricedDesk();
    must(chooseOption(act, { lineId, optionId: "spot", reason: "Cheapest" }));
    choose(act, lineId);
    const { changeOrderId } = must(proposeChangeOrder(act, { lineId, ...proposal }));
    must(proposeChangeOrder(act, { lineId, ...proposal }));
    expect(fileOf(act, lineId).changeOrders.map(({ number }) => number)).toEqual([1, 2]);
    const scope = fileOf(act, lineId).scope;
    must(
      saveScope(act, lineId, [
        ...scope.map((item) =>
          item.id === "dig" ? { ...item, droppedById: changeOrderId } : item,
        ),
        aScopeItem("rock", { addedById: changeOrderId, quantity: 1_500 }),
      ]),
    );
    const total = () => reportOn(fileOf(act, lineId), act.today).splits[0]?.total;
    expect(total()).toBe(200_000);
    const decision = { lineId, changeOrderId, state: "agreed" as const };
    must(decideChangeOrder(act, { ...decision, by: "All three owners", reason: "No way round" }));
    expect(total()).toBe(250_000);
    const file = fileOf(act, lineId);
    expect(file.changeOrders[0]).toMatchObject({
      state: "agreed",
      note: "Agreed by All three owners on November 25, 2026: No way round",
    });
    const [version] = file.splits;
    if (version === undefined) throw new Error("No version");
    expect(splitStanding(file, reportOn(file, act.today), version).stale).toBe(true);
  });

  test("decideChangeOrder() refuses twice, without a name or reason, empty orders and out of turn", () => {
    const { act, lineId } = pricedDesk();
    const first = must(proposeChangeOrder(act, { lineId, ...proposal })).changeOrderId;
    const second = must(proposeChangeOrder(act, { lineId, ...proposal })).changeOrderId;
    addRows(act, { lineId, table: "scope" }, [aScopeItem("rock", { addedById: second })]);
    const decide = (changeOrderId: string, rest: object = {}) =>
      decideChangeOrder(act, {
        ...{ lineId, changeOrderId, state: "agreed", by: "Ottilie", reason: "Needed" },
        ...rest,
      });
    expect(decide(first, { by: "" })).toMatchObject({ error: { path: "by" } });
    expect(decide(first, { reason: "" })).toMatchObject({ error: { path: "reason" } });
    expect(decide(first)).toMatchObject({
      error: { detail: expect.stringContaining("No items are linked yet") },
    });
    expect(decide(second)).toMatchObject({ error: { detail: "Decide change order 1 first" } });
    must(decide(first, { state: "refused" }));
    expect(decide(first)).toMatchObject({ error: { detail: expect.stringContaining("already") } });
    must(decide(second));
  });

  test("saveRows() keeps what a decided order added, and who agreed", () => {
    const { act, lineId } = pricedDesk();
    const { changeOrderId } = must(proposeChangeOrder(act, { lineId, ...proposal }));
    addRows(act, { lineId, table: "scope" }, [aScopeItem("rock", { addedById: changeOrderId })]);
    const base = getRevisions(act.db, lineId).changeOrders;
    const rows = fileOf(act, lineId).changeOrders.map((each) => ({ ...each, state: "agreed" }));
    expect(saveRows(act, { lineId, table: "changeOrders", base, rows })).toMatchObject({
      error: { reason: "bad-rows", cells: [{ row: 0, column: "state" }] },
    });
    must(decideChangeOrder(act, { lineId, changeOrderId, state: "agreed", by: "A", reason: "B" }));
    const scope = fileOf(act, lineId).scope.map((item) => ({ ...item, addedById: null }));
    expect(saveScope(act, lineId, scope)).toMatchObject({
      error: { reason: "bad-rows", cells: [{ column: "addedById" }] },
    });
    const now = getRevisions(act.db, lineId).changeOrders;
    expect(saveRows(act, { lineId, table: "changeOrders", base: now, rows: [] })).toMatchObject({
      ok: false,
    });
  });

  test("saveRows() takes no work out once amounts were sent, and says how it is dropped", () => {
    const { act, lineId } = pricedDesk();
    must(chooseOption(act, { lineId, optionId: "spot", reason: "Cheapest" }));
    choose(act, lineId);
    const without = () => fileOf(act, lineId).scope.filter(({ id }) => id !== "permit");
    const [version] = fileOf(act, lineId).splits;
    if (version === undefined) throw new Error("No version");
    updateRow(act.db, "splits", { lineId, row: { ...version, sentAt: act.now } });
    expect(saveScope(act, lineId, without())).toMatchObject({
      error: { reason: "not-in-this-state", by: expect.stringContaining("Dropped by") },
    });
    const moved = fileOf(act, lineId).scope.map((item) => ({ ...item, optionId: "line" }));
    expect(saveScope(act, lineId, moved)).toMatchObject({
      error: {
        reason: "bad-rows",
        cells: [
          { row: 0, column: "optionId" },
          { row: 2, column: "optionId" },
        ],
      },
    });
    const notInForce = fileOf(act, lineId).scope.filter(({ id }) => id !== "liner");
    must(saveScope(act, lineId, notInForce));
  });
});

describe("takeFixtureWeights()", () => {
  test("takeFixtureWeights() sets the weights that the rule by weights goes by, once", () => {
    const { act, lineId } = aDesk();
    const count = (propertyId: string, each: number) => ({
      id: `f-${propertyId}`,
      propertyId,
      fixture: "kitchen-sink",
      count: each,
    });
    expect(takeFixtureWeights(act, { lineId })).toMatchObject({
      error: { reason: "not-in-this-state" },
    });
    addRows(act, { lineId, table: "fixtures" }, [count("12", 1), count("14", 2), count("16", 3)]);
    updateLine(act.db, { ...fileOf(act, lineId).line, plumbingCode: "ipc" });
    must(takeFixtureWeights(act, { lineId }));
    const told = fileOf(act, lineId).history.length;
    must(takeFixtureWeights(act, { lineId }));
    const file = fileOf(act, lineId);
    expect(file.properties.map(({ weight }) => weight)).toEqual([2, 4, 6]);
    expect(file.history).toHaveLength(told);
    expect(file.history.at(-1)?.sentence).toContain("Used fixture counts as weights, by IPC Table");
  });
});

describe("cutToTieIn()", () => {
  test("cutToTieIn() ends work at the last tie-in, keeps its price, and tells the history", () => {
    const { act, lineId } = aDesk();
    const { tieIns } = reportOn(fileOf(act, lineId), act.today);
    const top = Math.max(...tieIns.flatMap(({ live, station }) => (live ? (station ?? 0) : [])));
    const label = tieIns.find(({ station }) => station === top)?.tieIn.label;
    addRows(act, { lineId, table: "scope" }, [aScopeItem("Lining", { from: 0, to: top + 10 })]);
    const before = fileOf(act, lineId).scope[0];
    const item = { lineId, itemId: "Lining" };
    must(cutToTieIn(act, item));
    const file = fileOf(act, lineId);
    expect(file.scope).toEqual([{ ...before, to: top }]);
    expect(file.history.at(-1)?.sentence).toBe(
      `Shortened “Lining” to ${label} at ${formatFeet(top)}, the last tie-in.`,
    );
    expect(cutToTieIn(act, item)).toMatchObject({
      ok: false,
      error: { reason: "not-in-this-state" },
    });
    expect(cutToTieIn(act, { lineId, itemId: "gone" })).toMatchObject({ ok: false });
  });
});
