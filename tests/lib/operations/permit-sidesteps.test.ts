import { describe, expect, test } from "vitest";
import { insertRow } from "#db/queries/row.ts";
import { clocksOf } from "#lib/domain/clocks/clocks.ts";
import type { PermitState } from "#lib/domain/facts/permit.ts";
import { hasWorkBegun, permitStateOf } from "#lib/domain/permit/steps.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import {
  aClockRule,
  anAuthority,
  anEvent,
  anInspection,
  aPermit,
  aRule,
  aScopeItem,
} from "#tests/support/file.ts";
import { aDesk, addRows, anAct, callLocate, fileOf, must } from "#tests/support/office.ts";
import { anInspectionKind } from "#tests/support/permit.ts";

const PERMIT = aPermit("permit", { number: "SS-1", expiresOn: "2026-12-20" });
const ASK_BY = aClockRule("ask", {
  title: "Ask for an extension",
  event: "permit-expires",
  count: 10,
  way: "before",
  roll: "backwards",
});
const APPLY = aClockRule("apply", {
  title: "Apply after the emergency",
  event: "emergency-work",
  count: 1,
  unit: "business-days",
});
const TRENCH = anInspectionKind("trench", { neededBefore: "backfill", lead: 2, cutOff: "15:00" });

function desk({ undocumented = false } = {}) {
  const at = aDesk({ undocumented });
  const { act, lineId } = at;
  const authority = anAuthority({
    rules: [aRule("rule")],
    clockRules: [ASK_BY, APPLY],
    inspectionKinds: [TRENCH],
  });
  must(saveAuthority(anAct(act.db, { role: "admin" }), authority));
  must(chooseRule(act, { lineId, authorityId: "authority-1", ruleId: "rule" }));
  callLocate(act, lineId);
  insertRow(act.db, "permits", { lineId, row: PERMIT });
  const step = (state: PermitState, on = "2026-11-25", note = "") =>
    stepPermit({ ...act, today: on }, { lineId, permitId: "permit", state, on, note });
  const clock = (title: string, today = act.today) =>
    clocksOf(fileOf(act, lineId), today).find((each) => each.title.startsWith(title));
  return { ...at, step, clock };
}

describe("emergency work, with the permit afterward", () => {
  test("needs to be said who allowed it, begins the work, and wants the application in time", () => {
    const { act, lineId, step, clock } = desk();
    expect(step("emergency")).toMatchObject({ error: { path: "note" } });
    must(step("emergency", "2026-11-25", "P. Reyes at the counter, 7:40 AM"));
    expect(hasWorkBegun(fileOf(act, lineId))).toBe(true);
    expect(clock("Apply after")).toMatchObject({ on: "2026-11-26", settled: false });
    must(step("submitted"));
    expect(clock("Apply after")).toMatchObject({ settled: true });
    expect(hasWorkBegun(fileOf(act, lineId))).toBe(true);
  });

  test("does not get past a hold on what is done", () => {
    const { act, lineId, step } = desk({ undocumented: true });
    const liner = aScopeItem("liner", { kind: "line", from: 4_000, to: 6_000 });
    addRows(act, { lineId, table: "scope" }, [liner]);
    const begin = () => step("emergency", "2026-11-25", "P. Reyes");
    expect(begin()).toMatchObject({ error: { reason: "held" } });
  });
});

describe("an extension", () => {
  test("has its day to be asked for, counted back from the printed expiration", () => {
    const { act, lineId, step, clock } = desk();
    for (const state of ["submitted", "issued"] as const) must(step(state));
    expect(clock("Ask for an extension")).toMatchObject({ on: "2026-12-10", settled: false });
    must(step("extension-asked", "2026-12-09"));
    expect(clock("Ask for an extension", "2026-12-09")).toMatchObject({ settled: true });
    must(step("extended", "2026-12-14"));
    expect(permitStateOf(fileOf(act, lineId), PERMIT)).toBe("extended");
  });

  test("is not asked for late, nor for a permit that has expired", () => {
    const { step } = desk();
    for (const state of ["submitted", "issued"] as const) must(step(state));
    expect(step("extension-asked", "2026-12-11")).toMatchObject({
      error: { detail: expect.stringContaining("was due by December 10, 2026") },
    });
    expect(step("extension-asked", "2026-12-21")).toMatchObject({
      error: { reason: "not-in-this-state", detail: expect.stringContaining("December") },
    });
    must(step("extended", "2026-12-11"));
  });

  test("leaves nothing out: after asking, the permit goes on from where it was", () => {
    const { step } = desk();
    for (const state of ["submitted", "issued", "extension-asked"] as const) must(step(state));
    expect(step("final")).toMatchObject({ error: { reason: "not-in-this-state" } });
    expect(step("as-built-submitted")).toMatchObject({ ok: false });
  });
});

describe("booking an inspection", () => {
  test("has its day and hour before the last day of work, until it is booked", () => {
    const { act, lineId, step, clock } = desk();
    for (const state of ["submitted", "issued"] as const) must(step(state));
    expect(clock("Book inspection")).toBeUndefined();
    addRows(act, { lineId, table: "events" }, [
      anEvent("end", { event: "work-ends", on: "2026-12-08" }),
    ]);
    expect(clock("Book inspection: Open trench")).toMatchObject({
      on: "2026-12-04",
      at: "15:00",
      settled: false,
    });
    addRows(act, { lineId, table: "inspections" }, [
      anInspection("a", "permit", { kindId: "trench", bookedFor: "2026-12-08" }),
    ]);
    expect(clock("Book inspection")).toMatchObject({ settled: true });
  });
});
