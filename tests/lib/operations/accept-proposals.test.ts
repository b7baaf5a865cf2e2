import { expect, test } from "vitest";
import { sureProposals } from "#lib/domain/report/pairs-now.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { acceptProposals } from "#lib/operations/accept-proposals.ts";
import type { Act } from "#lib/operations/act.ts";
import { decidePairing } from "#lib/operations/decide-pairing.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

const REASON = "Same place, side and size";

/** A card and a run that agree on three connections. */
function aLine(act: Act): string {
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "records" }, [
    { id: "card", title: "Card 1958", measuredFrom: "main" },
  ]);
  addRows(act, { lineId, table: "entries" }, [
    { id: "e1", recordId: "card", label: "House 12", distance: 1_500 },
    { id: "e2", recordId: "card", label: "House 14", distance: 3_000 },
    { id: "e3", recordId: "card", label: "House 16", distance: 5_000 },
  ]);
  addRows(act, { lineId, table: "runs" }, [
    { id: "r1", name: "Run 1", ranOn: "2026-11-03", looks: "upstream", toCounter: 8_000 },
  ]);
  addRows(act, { lineId, table: "anchors" }, [
    { id: "a1", runId: "r1", kind: "main-connection", counter: 0, station: 0 },
  ]);
  addRows(act, { lineId, table: "observations" }, [
    { id: "o1", runId: "r1", kind: "tie-in", counter: 1_500 },
    { id: "o2", runId: "r1", kind: "tie-in", counter: 3_000 },
    { id: "o3", runId: "r1", kind: "tie-in", counter: 5_000 },
  ]);
  return lineId;
}

function sureOf(act: Act, lineId: string) {
  return sureProposals(reportOn(fileOf(act, lineId), act.today));
}

test("acceptProposals() accepts all that were looked over, with one entry in the history", () => {
  const act = anAct(aDb());
  const lineId = aLine(act);
  const pairs = sureOf(act, lineId);
  expect(pairs).toHaveLength(3);
  const before = fileOf(act, lineId).history.length;
  expect(must(acceptProposals(act, { lineId, pairs, reason: REASON }))).toEqual({ count: 3 });
  const file = fileOf(act, lineId);
  expect(file.pairings.map(({ entryId, state }) => [entryId, state])).toEqual([
    ["e1", "accepted"],
    ["e2", "accepted"],
    ["e3", "accepted"],
  ]);
  expect(file.history).toHaveLength(before + 1);
  expect(file.history.at(-1)?.sentence).toMatch(
    /House 12 is T1, .* House 16 is T3, .*: Same place/,
  );
});

test("acceptProposals() accepts none where one of them is no longer proposed, and says which", () => {
  const act = anAct(aDb());
  const lineId = aLine(act);
  const pairs = sureOf(act, lineId);
  const [, second] = pairs;
  must(
    decidePairing(act, {
      lineId,
      entryId: second?.entryId ?? "",
      tieInId: second?.tieInId ?? "",
      state: "refused",
      reason: "Another house",
    }),
  );
  const refused = acceptProposals(act, { lineId, pairs, reason: REASON });
  expect(refused).toMatchObject({ ok: false, error: { reason: "not-in-this-state" } });
  expect(refused.ok ? "" : refused.error.detail).toMatch(/^House 14 and T2 are no longer proposed/);
  expect(fileOf(act, lineId).pairings.map(({ state }) => state)).toEqual(["refused"]);
});

test("acceptProposals() wants a reason, and accepts nothing where nothing was looked at", () => {
  const act = anAct(aDb());
  const lineId = aLine(act);
  const pairs = sureOf(act, lineId);
  expect(acceptProposals(act, { lineId, pairs, reason: " " })).toMatchObject({
    ok: false,
    error: { reason: "missing-value", path: "reason" },
  });
  expect(acceptProposals(act, { lineId, pairs: [], reason: REASON }).ok).toBe(false);
  expect(fileOf(act, lineId).pairings).toEqual([]);
});

test("acceptProposals() is refused to those who only read", () => {
  const act = anAct(aDb());
  const lineId = aLine(act);
  const viewer = { ...act, actor: { ...act.actor, role: "viewer" as const } };
  const refused = acceptProposals(viewer, { lineId, pairs: sureOf(act, lineId), reason: REASON });
  expect(refused).toMatchObject({ ok: false, error: { reason: "not-allowed" } });
});
