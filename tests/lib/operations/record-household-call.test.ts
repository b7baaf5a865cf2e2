import { expect, test } from "vitest";
import { recordHouseholdCall } from "#lib/operations/record-household-call.ts";
import { aHouseholdCall, aParty, aRole } from "../../support/file.ts";
import { aDesk, addRows, anAct, fileOf, must } from "../../support/office.ts";

function withNeed() {
  const { act, lineId } = aDesk();
  addRows(act, { lineId, table: "parties" }, [aParty("bea", { needs: "Home dialysis" })]);
  addRows(act, { lineId, table: "roles" }, [aRole("bea", "16", { role: "occupant" })]);
  return { act, lineId };
}

const CALL = {
  partyId: "bea",
  propertyId: "16",
  purpose: "test-visit",
  forDay: "2026-12-02",
  outcome: "agreed",
  words: "Between her treatments, 9 to 12",
  calledBy: "Ruth Lindqvist",
  calledOn: "2026-11-24",
} as const;

test("recordHouseholdCall() keeps who called, when, for which day, what was agreed, and the need as it was known", () => {
  const { act, lineId } = withNeed();
  const { callId } = must(recordHouseholdCall(act, { lineId, ...CALL }));
  expect(fileOf(act, lineId).householdCalls).toEqual([
    aHouseholdCall(callId, { ...CALL, needs: "Home dialysis" }),
  ]);
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
    "Ruth Lindqvist called bea about a test visit on December 2, 2026 (agreed): Between her treatments, 9 to 12",
  );
});

test("recordHouseholdCall() refuses what would be no agreement", () => {
  const { act, lineId } = withNeed();
  const refused = (change: Partial<Parameters<typeof recordHouseholdCall>[1]>) =>
    recordHouseholdCall(act, { lineId, ...CALL, ...change });
  expect(refused({ words: "" })).toMatchObject({ error: { path: "words" } });
  expect(refused({ calledBy: " " })).toMatchObject({ error: { path: "calledBy" } });
  expect(refused({ calledOn: "2026-11-26" })).toMatchObject({ error: { path: "calledOn" } });
  expect(refused({ forDay: "2026-11-20" })).toMatchObject({ error: { path: "forDay" } });
  expect(refused({ propertyId: "12" })).toMatchObject({ error: { path: "propertyId" } });
  expect(recordHouseholdCall(anAct(act.db, { role: "viewer" }), { lineId, ...CALL })).toMatchObject(
    { error: { reason: "not-allowed" } },
  );
  expect(refused({ outcome: "not-reached", words: "" }).ok).toBe(true);
  expect(recordHouseholdCall(anAct(act.db, { role: "field" }), { lineId, ...CALL }).ok).toBe(true);
});
