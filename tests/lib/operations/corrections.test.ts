import { describe, expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { insertRow } from "#db/queries/row.ts";
import { renderClerkSheet } from "#lib/documents/clerk-sheet.tsx";
import type { Correction } from "#lib/domain/facts/correction.ts";
import type { PermitState } from "#lib/domain/facts/permit.ts";
import { correctionsAnswer } from "#lib/domain/paper/corrections-answer.ts";
import { roundSentence, roundsOf } from "#lib/domain/permit/corrections.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import { anOffice, aPermit } from "#tests/support/file.ts";
import { aDesk, fileOf, must } from "#tests/support/office.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { aCorrection } from "#tests/support/permit.ts";

const PERMIT = aPermit("permit", { number: "SS-1" });

/** A permit for which corrections were asked once. */
function desk() {
  const at = aDesk({ undocumented: false });
  const { act, lineId } = at;
  insertRow(act.db, "permits", { lineId, row: PERMIT });
  const step = (state: PermitState) =>
    stepPermit(act, { lineId, permitId: "permit", state, on: act.today, note: "" });
  must(step("submitted"));
  const { stepId: first } = must(step("corrections"));
  const save = (rows: readonly Correction[]) =>
    saveRows(act, {
      lineId,
      table: "corrections",
      base: getRevisions(act.db, lineId).corrections,
      rows,
    });
  return { ...at, step, first, save };
}

const ANSWERED = { answeredBy: "Dana Okafor", answer: "Depth added", changedPages: "C2, C3" };

describe("corrections", () => {
  test("a permit is not resubmitted while its comments are not entered, or one has no answer", () => {
    const { step, first, save } = desk();
    expect(step("submitted")).toMatchObject({
      error: {
        reason: "not-in-this-state",
        detail: expect.stringContaining("enter the comments of the corrections letter"),
      },
    });
    const depth = aCorrection("a", first, { number: "1", sheet: "C2", ...ANSWERED });
    const wye = aCorrection("b", first, { number: "2", sheet: "C3", answer: "Wye shown" });
    must(save([depth, wye]));
    for (const state of ["submitted", "in-review"] as const)
      expect(step(state)).toMatchObject({
        error: { detail: expect.stringContaining("1 comment not answered: no. 2 (sheet C3)") },
      });
    must(save([depth, { ...wye, answeredBy: "Marek Sandoval" }]));
    must(step("submitted"));
  });

  test("a comment that is not changed as asked needs a reason and a name", () => {
    const { step, first, save } = desk();
    const wye = aCorrection("a", first, { number: "1", notChanged: "The wye is the city’s own" });
    must(save([wye]));
    expect(step("submitted")).toMatchObject({ ok: false });
    must(save([{ ...wye, answeredBy: "Marek Sandoval" }]));
    must(step("submitted"));
  });

  test("what was resubmitted stays as it went; only its acceptance comes later", () => {
    const { act, lineId, step, first, save } = desk();
    const depth = aCorrection("a", first, { number: "1", ...ANSWERED });
    must(save([depth]));
    must(step("submitted"));
    expect(save([{ ...depth, answer: "Something else" }])).toMatchObject({
      error: { cells: [{ row: 0, column: "answer" }] },
    });
    expect(save([])).toMatchObject({ error: { reason: "not-in-this-state" } });
    expect(save([depth, aCorrection("b", first)])).toMatchObject({
      error: { cells: [{ row: 1, column: "stepId" }] },
    });
    expect(save([{ ...depth, acceptedOn: "2026-12-24" }])).toMatchObject({
      error: { cells: [{ column: "acceptedOn" }] },
    });
    must(save([{ ...depth, acceptedOn: act.today }]));
    expect(fileOf(act, lineId).corrections[0]?.acceptedOn).toBe(act.today);
  });

  test("in a second round, what was neither accepted nor asked again holds the permit back", () => {
    const { act, lineId, step, first, save } = desk();
    const depth = aCorrection("a", first, { number: "1", ...ANSWERED });
    const slope = aCorrection("b", first, { number: "2", ...ANSWERED });
    must(save([depth, slope]));
    must(step("submitted"));
    const { stepId: second } = must(step("corrections"));
    const again = aCorrection("c", second, { number: "2", ...ANSWERED });
    must(save([depth, slope, again]));
    expect(step("submitted")).toMatchObject({
      error: { detail: expect.stringContaining("no. 1: mark as accepted") },
    });
    must(save([{ ...depth, acceptedOn: act.today }, slope, again]));
    must(step("submitted"));
    must(step("approved-fees-due"));
    const rounds = roundsOf(fileOf(act, lineId), PERMIT);
    expect(rounds.map(({ items }) => items.map(({ state }) => state))).toEqual([
      ["accepted", "asked-again"],
      ["accepted"],
    ]);
    expect(rounds.map(roundSentence)).toEqual([
      "Round 1, asked for November 25, 2026: resubmitted November 25, 2026; 1 of 2 comments accepted.",
      "Round 2, asked for November 25, 2026: resubmitted November 25, 2026; 1 of 1 comment accepted.",
    ]);
  });

  test("a comment belongs to a step by which corrections were asked for", () => {
    const { act, lineId, save } = desk();
    const submitted = fileOf(act, lineId).permitSteps[0]?.id ?? "";
    expect(save([aCorrection("a", submitted)])).toMatchObject({
      error: { cells: [{ row: 0, column: "stepId" }] },
    });
  });

  test("the answer sheet holds every comment with its answer, and a draft says that it is one", async () => {
    const { act, lineId, first, save } = desk();
    const depth = aCorrection("a", first, { number: "1", sheet: "C2", ...ANSWERED });
    const wye = aCorrection("b", first, { number: "2", comment: "Move the wye" });
    must(save([depth, wye]));
    const sheetNow = () => {
      const around = { file: fileOf(act, lineId), office: anOffice(), today: act.today };
      const sheet = correctionsAnswer(around, first);
      if (sheet === null) throw new Error("No sheet");
      return sheet;
    };
    const draft = readPdf(await renderClerkSheet(sheetNow()));
    expect(draft.text()).toContain("1 comment not answered.");
    must(save([depth, { ...wye, notChanged: "It is the city’s own", answeredBy: "Dana Okafor" }]));
    const made = readPdf(await renderClerkSheet(sheetNow()));
    made.check();
    const text = made.text().replace(/\s+/g, " ");
    expect(made.info()["Pages"]).toBe("1");
    expect(text).not.toContain("Draft");
    for (const words of ["SS-1", "Depth added", "Not changed: It is the city’s", "C2, C3"])
      expect(text).toContain(words);
  });
});
