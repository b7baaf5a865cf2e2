import { expect, test } from "vitest";
import { insertRow } from "#db/queries/row.ts";
import { authorityAnswer } from "#lib/domain/desk/authority-answer.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import type { PermitState } from "#lib/domain/facts/permit.ts";
import { drawingChecklist } from "#lib/domain/packet/drawing-checklist.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Act } from "#lib/operations/act.ts";
import { markDrawing } from "#lib/operations/mark-drawing.ts";
import { openLine } from "#lib/operations/open-line.ts";
import { saveApplication } from "#lib/operations/save-application.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import { aCondition, aDrawingItem, aPermitOrder, scalesOf } from "#tests/support/application.ts";
import { anAuthority, anOffice, aPermit, aRequirement } from "#tests/support/file.ts";
import { aDb, anAct, fileOf, must } from "#tests/support/office.ts";

function aLine(parts: Partial<Authority> = {}): { act: Act; lineId: string } {
  const act = anAct(aDb());
  must(saveAuthority(anAct(act.db, { role: "admin" }), anAuthority(parts)));
  const line = { name: "Alley", town: "Quillhaven, WA", authorityId: "authority-1" };
  return { act, lineId: must(openLine(act, line)).lineId };
}

const SIGNED = {
  permitKind: "side-sewer" as const,
  applicant: "Dana Okafor",
  applicantIs: "contractor" as const,
};

test("saveApplication() keeps one a kind of permit, and what was not named stays", () => {
  const { act, lineId } = aLine();
  must(saveApplication(act, { lineId, facts: { ...SIGNED, valuation: 1_250_000 } }));
  must(saveApplication(act, { lineId, facts: { permitKind: "side-sewer", traffic: "Flaggers" } }));
  must(saveApplication(act, { lineId, facts: { permitKind: "street-use", traffic: "Detour" } }));
  const { applications, history } = fileOf(act, lineId);
  expect(applications).toMatchObject([
    { ...SIGNED, valuation: 1_250_000, traffic: "Flaggers", workType: "not-set" },
    { permitKind: "street-use", applicant: "", traffic: "Detour" },
  ]);
  expect(history.at(-1)?.sentence).toBe("Changed the application for the street use permit.");
});

test("saveApplication() refuses a signature to come, one by nobody, and a paper that is not there", () => {
  const { act, lineId } = aLine();
  const refused = (facts: object) => {
    const saved = saveApplication(act, { lineId, facts: { ...SIGNED, ...facts } });
    return saved.ok ? null : saved.error.path;
  };
  expect(refused({ attestedOn: "2026-12-24" })).toBe("attestedOn");
  expect(refused({ attestedOn: "2026-11-20", applicant: " " })).toBe("applicant");
  expect(refused({ certificateId: "none" })).toBe("certificateId");
  expect(refused({ valuation: -1 })).toBe("valuation");
  expect(refused({ workType: "paint" })).toBe("workType");
  expect(fileOf(act, lineId).applications).toEqual([]);
  const viewer = anAct(act.db, { role: "viewer" });
  expect(saveApplication(viewer, { lineId, facts: SIGNED }).ok).toBe(false);
});

test("markDrawing() takes a named person's word with where it is shown; the program's own finding comes first", () => {
  const { act, lineId } = aLine({
    drawingItems: [aDrawingItem("buildings"), aDrawingItem("scale")],
  });
  const mark = (state: "shown" | "does-not-apply", note: string, itemId = "buildings") =>
    markDrawing(act, { lineId, itemId, state, note });
  const states = () => {
    const file = fileOf(act, lineId);
    return drawingChecklist({ file, report: reportOn(file, act.today) });
  };
  expect(states().map(({ state }) => state)).toEqual(["missing", "missing"]);
  expect(mark("shown", " ")).toMatchObject({ ok: false, error: { path: "note" } });
  expect(mark("shown", "x", "none").ok).toBe(false);
  must(mark("shown", "On the survey, enclosed"));
  must(mark("does-not-apply", "The lots are vacant"));
  expect(fileOf(act, lineId).drawingMarks).toHaveLength(1);
  expect(states()[0]).toMatchObject({
    state: "does-not-apply",
    by: "person",
    sentence: "Does not apply, per Dana Okafor, November 25, 2026: The lots are vacant.",
  });
});

test("a plan view that fits no scale which the authority allows is missing on its checklist, in words", () => {
  const { act, lineId } = aLine({ drawingItems: [], scales: scalesOf(20, 10) });
  const check = (bearing: number | null, upperEnd: number) => {
    const { line, ...rest } = fileOf(act, lineId);
    const file = { ...rest, line: { ...line, bearing, upperEnd } };
    return drawingChecklist({ file, report: reportOn(file, act.today) });
  };
  expect(check(90, 10_000)).toMatchObject([
    {
      item: { title: "Scale", citation: "QMC 13.08.060" },
      state: "shown",
      by: "program",
      sentence:
        "The authority allows 1 in = 10 ft or 20 ft; the plan view is drawn at 1 in = 20 ft.",
    },
  ]);
  expect(check(90, 400_000)).toMatchObject([
    {
      state: "missing",
      by: "nobody",
      sentence:
        "The authority allows 1 in = 10 ft or 20 ft, and the plan view would take more than 12 sheets at that. It is drawn at 1 in = 1000 ft, which is not allowed.",
    },
  ]);
  expect(check(null, 400_000)).toMatchObject([{ state: "shown" }]);
  const note = "On the surveyor’s drawing, attached";
  must(markDrawing(act, { lineId, itemId: "allowed-scale", state: "shown", note }));
  expect(check(90, 400_000)).toMatchObject([{ state: "shown", by: "person" }]);
});

test("saveAuthority() keeps no condition of a requirement that is gone, and says where to delete it", () => {
  const { act } = aLine();
  const admin = anAct(act.db, { role: "admin" });
  const whole = anAuthority({
    requirements: [aRequirement("r", { title: "Easement" })],
    conditions: [aCondition("lot-crossed")],
  });
  must(saveAuthority(admin, whole));
  const gone = saveAuthority(admin, { ...whole, requirements: [] });
  expect(gone).toMatchObject({
    ok: false,
    error: {
      path: "requirements",
      detail: "“Easement” is named under “When requirements apply”; delete that row first",
    },
  });
  const none = { ...whole, conditions: [aCondition("lot-crossed", { requirementId: "never" })] };
  expect(saveAuthority(admin, none)).toMatchObject({
    error: { path: "conditions.0.requirementId" },
  });
});

function permitLine(order: Parameters<typeof aPermitOrder>[0]) {
  const { act, lineId } = aLine({ permitOrders: [aPermitOrder(order)] });
  const street = aPermit("street", { kind: "street-use", number: "SU-1" });
  insertRow(act.db, "permits", { lineId, row: street });
  const step = (permitId: "street" | "sewer", state: PermitState) => {
    const word = { lineId, permitId, state, on: act.today, note: "" };
    const stepped = stepPermit(act, word);
    return stepped.ok ? "" : stepped.error.detail;
  };
  const apply = () =>
    insertRow(act.db, "permits", {
      lineId,
      row: aPermit("sewer", { kind: "side-sewer", number: "SS-1" }),
    });
  return { act, lineId, step, apply };
}

test("stepPermit() refuses a step before the permit that it waits for, and the desk says what waits on what", () => {
  const { act, lineId, step, apply } = permitLine({});
  const rule =
    "The street use permit is not submitted until the side sewer permit is issued (QMC 13.08.060): ";
  const asks = () => {
    const file = fileOf(act, lineId);
    const reply = authorityAnswer(file, reportOn(file, act.today), anOffice());
    return reply.closes ?? "";
  };
  expect(step("street", "submitted")).toBe(`${rule}there is no side sewer permit in the file`);
  apply();
  expect(step("sewer", "submitted")).toBe("");
  expect(step("street", "submitted")).toBe(`${rule}side sewer permit SS-1 was submitted`);
  expect(asks()).toContain(`${rule}side sewer permit SS-1 was submitted`);
  expect(step("sewer", "issued")).toBe("");
  expect(asks()).not.toContain(rule);
  expect(step("street", "submitted")).toBe("");
});

test("a withdrawn permit has not been submitted, and an extended one is still issued", () => {
  const { step, apply } = permitLine({ until: "submitted" });
  apply();
  expect(step("sewer", "submitted")).toBe("");
  expect(step("sewer", "withdrawn")).toBe("");
  expect(step("street", "submitted")).toContain("side sewer permit SS-1 was withdrawn");
  const other = permitLine({});
  other.apply();
  for (const state of ["submitted", "issued", "extended"] as const)
    expect(other.step("sewer", state), state).toBe("");
  expect(other.step("street", "submitted")).toBe("");
});
