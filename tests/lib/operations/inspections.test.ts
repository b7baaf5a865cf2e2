import { describe, expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { insertRow } from "#db/queries/row.ts";
import type { InspectionKind } from "#lib/domain/facts/authority.ts";
import type { Inspection, PermitState } from "#lib/domain/facts/permit.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import { anAuthority, anInspection, aPermit, aRule } from "#tests/support/file.ts";
import { aDesk, anAct, callLocate, must } from "#tests/support/office.ts";
import { anInspectionKind } from "#tests/support/permit.ts";

const TRENCH = anInspectionKind("trench", { neededBefore: "backfill" });
const STREET = anInspectionKind("street", { permitKind: "street-use", neededBefore: "final" });
const PAVING = anInspectionKind("paving", { title: "Paving", neededBefore: "final" });
const TEST = anInspectionKind("test", { title: "Air test", asksForFigures: true });

/** A permit under which an inspection was called for, with an authority of these kinds. */
function desk(inspectionKinds: InspectionKind[]) {
  const at = aDesk({ undocumented: false });
  const { act, lineId } = at;
  const authority = anAuthority({ rules: [aRule("rule")], inspectionKinds });
  must(saveAuthority(anAct(act.db, { role: "admin" }), authority));
  must(chooseRule(act, { lineId, authorityId: "authority-1", ruleId: "rule" }));
  callLocate(act, lineId);
  insertRow(act.db, "permits", { lineId, row: aPermit("permit", { number: "SS-1" }) });
  const step = (state: PermitState) =>
    stepPermit(act, { lineId, permitId: "permit", state, on: act.today, note: "" });
  const save = (rows: readonly Inspection[]) =>
    saveRows(act, {
      lineId,
      table: "inspections",
      base: getRevisions(act.db, lineId).inspections,
      rows,
    });
  for (const state of ["submitted", "issued", "inspection-requested"] as const) must(step(state));
  return { ...at, step, save };
}

const inspected = (id: string, kindId: string, more: Partial<Inspection> = {}) =>
  anInspection(id, "permit", { kindId, bookedFor: "2026-11-24", result: "passed", ...more });

describe("inspections of the authority's list", () => {
  test("the pipe is not covered before the kinds that it wants first have passed", () => {
    const { step, save } = desk([TRENCH, STREET]);
    const refused = {
      error: {
        reason: "not-in-this-state",
        detail: expect.stringContaining("wants “Open trench” passed before backfill"),
      },
    };
    expect(step("passed-may-backfill")).toMatchObject(refused);
    must(save([inspected("a", "trench", { result: "failed" })]));
    expect(step("passed-may-backfill")).toMatchObject(refused);
    const again = inspected("b", "trench", { bookedFor: "2026-11-25" });
    must(save([inspected("a", "trench", { result: "failed" }), again]));
    must(step("passed-may-backfill"));
  });

  test("an inspection that failed after one passed holds again, and one that is canceled counts nothing", () => {
    const { step, save } = desk([TRENCH]);
    const passed = inspected("a", "trench");
    const later = { bookedFor: "2026-11-25" };
    must(save([passed, inspected("b", "trench", { ...later, result: "failed" })]));
    expect(step("passed-may-backfill")).toMatchObject({ ok: false });
    must(save([passed, inspected("b", "trench", { ...later, result: "cancelled" })]));
    must(step("passed-may-backfill"));
  });

  test("no final without what this authority's path asks for", () => {
    const { step, save } = desk([PAVING, TEST]);
    must(step("passed-may-backfill"));
    expect(step("final")).toMatchObject({
      error: { detail: expect.stringContaining("wants “Paving” passed before the final") },
    });
    must(save([inspected("a", "paving")]));
    must(step("final"));
  });

  test("a test passes with its figures only, and a window ends after it begins", () => {
    const { save } = desk([TEST]);
    expect(save([inspected("a", "test")])).toMatchObject({
      error: { cells: [{ column: "result", message: expect.stringContaining("pressure") }] },
    });
    const figures = { startPsi: 350, endPsi: 250, minutes: 200 };
    expect(save([inspected("a", "test", figures)])).toMatchObject({
      error: { cells: [{ message: expect.stringContaining("who witnessed it") }] },
    });
    must(save([inspected("a", "test", { ...figures, witness: "P. Reyes" })]));
    const window = { bookedAt: "10:00", bookedUntil: "09:00" };
    expect(
      save([inspected("a", "test", { ...figures, witness: "P. Reyes", ...window })]),
    ).toMatchObject({ error: { cells: [{ column: "bookedUntil" }] } });
  });
});
