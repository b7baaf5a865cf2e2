import { describe, expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { insertRow } from "#db/queries/row.ts";
import type { PermitState } from "#lib/domain/facts/permit.ts";
import { composeAsBuilt } from "#lib/domain/packet/as-built.ts";
import { composeCloseOut } from "#lib/domain/packet/close-out.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { closeLine } from "#lib/operations/close-line.ts";
import { markRequirement } from "#lib/operations/mark-requirement.ts";
import { recordBuilt } from "#lib/operations/record-built.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { readStored } from "#lib/storage/store.ts";
import {
  aLand,
  anAuthority,
  anOffice,
  aPermit,
  aRequirement,
  aRule,
  aScopeItem,
} from "#tests/support/file.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";
import {
  aDesk,
  addRows,
  agreeToWork,
  anAct,
  callLocate,
  fileOf,
  measureBranches,
  must,
} from "#tests/support/office.ts";
import { aWorkplace } from "#tests/support/workplace.ts";

const DIG = aScopeItem("dig", { title: "Dig", from: 500, to: 1_500 });
const FEE = aScopeItem("fee", { title: "Permit", kind: "permit-fee", place: "general" });

/** A line whose work is priced and whose permit is issued; nothing is undocumented. */
function desk({ asBuilt = false, undocumented = false } = {}) {
  const at = aDesk({ undocumented });
  const { act, lineId } = at;
  agreeToWork(act, lineId);
  const asks = aRequirement("as-built", { sheet: "as-built", title: "As-built", due: "final" });
  const authority = anAuthority({ rules: [aRule("rule")], requirements: asBuilt ? [asks] : [] });
  must(saveAuthority(anAct(act.db, { role: "admin" }), authority));
  must(chooseRule(act, { lineId, authorityId: "authority-1", ruleId: "rule" }));
  addRows(act, { lineId, table: "land" }, [aLand("all", { to: 10_000, propertyId: "12" })]);
  addRows(act, { lineId, table: "scope" }, [DIG, { ...FEE, from: null, to: null }]);
  measureBranches(act, lineId);
  callLocate(act, lineId);
  insertRow(act.db, "permits", { lineId, row: aPermit("permit", { number: "SS-1" }) });
  return { ...at, walk };

  function walk(...states: PermitState[]) {
    const steps = states.map((state) =>
      stepPermit(act, { lineId, permitId: "permit", state, on: act.today, note: "" }),
    );
    return steps.at(-1);
  }
}

const WORD = { on: "2026-11-24", by: "Marek Sandoval", words: "", uploadId: null };
const WORK = ["submitted", "issued", "working", "inspection-requested"] as const;

describe("recordBuilt()", () => {
  test("takes down what was dug, once for each piece of work, and corrects it", () => {
    const { act, lineId } = desk();
    const word = { lineId, itemId: "dig", ...WORD };
    const { builtId } = must(recordBuilt(act, word));
    expect(must(recordBuilt(act, { ...word, words: "To 15.5 ft" })).builtId).toBe(builtId);
    const file = fileOf(act, lineId);
    expect(file.built).toMatchObject([{ itemId: "dig", words: "To 15.5 ft" }]);
    expect(file.history.at(-1)?.sentence).toBe(
      "“Dig” was done on November 24, 2026, per Marek Sandoval. To 15.5 ft",
    );
  });

  test("refuses a day to come, nobody's word, work that is not in force, and a whole work without words", () => {
    const { act, lineId } = desk();
    const word = { lineId, itemId: "dig", ...WORD };
    const wrong = (rest: object) => recordBuilt(act, { ...word, ...rest });
    expect(wrong({ on: "2026-12-01" })).toMatchObject({ error: { path: "on" } });
    expect(wrong({ by: " " })).toMatchObject({ error: { path: "by" } });
    expect(wrong({ itemId: "gone" })).toMatchObject({ error: { reason: "not-found" } });
    expect(wrong({ itemId: null })).toMatchObject({ error: { path: "words" } });
    expect(wrong({ uploadId: "gone" })).toMatchObject({ error: { path: "uploadId" } });
    expect(recordBuilt(anAct(act.db, { role: "viewer" }), word)).toMatchObject({
      error: { reason: "not-allowed" },
    });
    must(recordBuilt(anAct(act.db, { role: "field" }), word));
  });

  test("takes down nothing that a hold stops, until it is waived", () => {
    const { act, lineId } = desk({ undocumented: true });
    addRows(act, { lineId, table: "scope" }, [
      aScopeItem("liner", { kind: "line", from: 4_000, to: 6_000 }),
    ]);
    const word = { lineId, itemId: "liner", ...WORD };
    expect(recordBuilt(act, word)).toMatchObject({
      error: { reason: "held", detail: expect.stringContaining("It stops lining.") },
    });
    must(recordBuilt(act, { ...word, itemId: "dig" }));
    for (const { key, waiver } of reportOn(fileOf(act, lineId), act.today).holds)
      if (waiver === null)
        must(waiveHold(act, { lineId, holdKey: key, reason: "Camera stood by" }));
    must(recordBuilt(act, word));
  });
});

describe("the final", () => {
  test("stepPermit() makes no permit final without the as-built that the authority wants", () => {
    const at = desk({ asBuilt: true });
    const { act, lineId, walk } = at;
    expect(walk(...WORK, "passed-may-backfill", "final")).toMatchObject({
      error: {
        reason: "not-in-this-state",
        detail: expect.stringContaining("still missing: “Dig”"),
      },
    });
    must(recordBuilt(act, { lineId, itemId: "dig", ...WORD }));
    expect(walk("final")).toMatchObject({ ok: true });
  });

  test("stepPermit() makes no permit final without what else the authority asks for before it", () => {
    const { act, lineId, walk } = desk();
    const asks = aRequirement("receipt", {
      sheet: "upload",
      title: "Disposal receipt",
      due: "final",
    });
    const later = aRequirement("later", { sheet: "upload", title: "Photograph", due: "final" });
    const authority = anAuthority({
      rules: [aRule("rule")],
      requirements: [asks, { ...later, mandatory: false }],
    });
    must(saveAuthority(anAct(act.db, { role: "admin" }), authority));
    expect(walk(...WORK, "passed-may-backfill", "final")).toMatchObject({
      error: {
        reason: "not-in-this-state",
        detail: expect.stringContaining("asks for “Disposal receipt” before the final"),
      },
    });
    const mark = { lineId, requirementId: "receipt", uploadId: null, note: "In the job folder" };
    must(markRequirement(act, { ...mark, state: "in-hand" }));
    expect(walk("final")).toMatchObject({ ok: true });
  });

  test("stepPermit() takes the submitted as-built, or the office's word that none applies", () => {
    const submitted = desk({ asBuilt: true });
    expect(submitted.walk(...WORK, "passed-may-backfill", "as-built-submitted", "final")).toEqual(
      expect.objectContaining({ ok: true }),
    );
    const none = desk({ asBuilt: true });
    const { act, lineId } = none;
    const mark = {
      lineId,
      requirementId: "as-built",
      uploadId: null,
      note: "Repair like for like",
    };
    none.walk(...WORK, "passed-may-backfill");
    must(markRequirement(act, { ...mark, state: "missing" }));
    expect(none.walk("final")).toMatchObject({ ok: false });
    must(markRequirement(act, { ...mark, state: "does-not-apply" }));
    expect(none.walk("final")).toMatchObject({ ok: true });
    expect(desk().walk(...WORK, "passed-may-backfill", "final")).toMatchObject({ ok: true });
  });
});

describe("the as-built that is sent", () => {
  test("stepPermit() keeps with the step the as-built made last, as it was sent", async () => {
    const at = desk();
    const { act, lineId } = at;
    const make = async () => {
      must(startJob(act, { lineId, kind: "as-built", subjectIds: [] }));
      expect(await runNextJob(aWorkplace(at).place)).toBe(true);
    };
    await make();
    const [first] = fileOf(act, lineId).uploads;
    if (first === undefined) throw new Error("no as-built");
    must(recordBuilt(act, { lineId, itemId: "dig", ...WORD }));
    at.walk(...WORK, "passed-may-backfill", "as-built-submitted");
    const submitted = fileOf(act, lineId).permitSteps.at(-1);
    expect(submitted).toMatchObject({ state: "as-built-submitted", uploadId: first.id });
    expect(fileOf(act, lineId).history.at(-1)?.sentence).toContain(`Sent: ${first.name}`);
    const sent = readStored(act.dataFolder, first.sha256);
    await make();
    const file = fileOf(act, lineId);
    expect(file.uploads).toHaveLength(2);
    expect(file.permitSteps.at(-1)?.uploadId).toBe(first.id);
    expect(readStored(act.dataFolder, first.sha256)).toEqual(sent);
    const office = anOffice();
    const report = reportOn(file, act.today);
    expect(composeAsBuilt({ file, report, office }).signed).toContain("Date");
    expect(
      composeCloseOut({ file, report, office }).sheets.map(({ uploadId }) => uploadId),
    ).toContain(first.id);
  });
});

describe("closeLine()", () => {
  const close = ({ act, lineId }: ReturnType<typeof desk>, words = {}) =>
    closeLine(act, { lineId, reason: "Done", words });

  test("closes a file whose permit is final, whose work is on record and whose book is settled", () => {
    const at = desk();
    at.walk(...WORK, "passed-may-backfill", "final");
    must(recordBuilt(at.act, { lineId: at.lineId, itemId: "dig", ...WORD }));
    must(close(at));
  });

  test("asks for each thing that is open, with a named person's word in its place", () => {
    const at = desk();
    const { act, lineId } = at;
    insertRow(act.db, "ledger", {
      lineId,
      row: aLedgerEntry(1, {
        kind: "invoice",
        partyId: "owner-12",
        propertyId: "12",
        amount: 5_000,
      }),
    });
    expect(close(at)).toMatchObject({
      error: {
        path: "permit",
        detail: expect.stringMatching(/^Not final: side sewer permit SS-1 is being drafted/),
      },
    });
    const permit = "Withdrawn by the owners at the counter";
    expect(close(at, { permit })).toMatchObject({
      error: { path: "built", detail: expect.stringContaining("“Dig”") },
    });
    const built = "Dug by another contractor";
    expect(close(at, { permit, built })).toMatchObject({
      error: { path: "money", detail: expect.stringContaining("$50.00") },
    });
    must(close(at, { permit, built, money: "Sent to collection" }));
    const file = fileOf(act, lineId);
    expect(file.built).toMatchObject([{ itemId: null, by: "Dana Okafor", words: built }]);
    for (const words of [permit, built, "Sent to collection"])
      expect(file.history.at(-1)?.sentence).toContain(words);
  });

  test("asks how it is known that branches are open again that the work cut off, until they are ticked", () => {
    const at = desk();
    const { act, lineId } = at;
    addRows(act, { lineId, table: "scope" }, [aScopeItem("long", { from: 500, to: 2_500 })]);
    at.walk("submitted", "issued", "working");
    const words = { permit: "Taken over", built: "By us", money: "None" };
    expect(close(at, words)).toMatchObject({
      error: {
        path: "branches",
        detail: expect.stringContaining("No record that T1 was seen open again after the work."),
      },
    });
    const rows = fileOf(act, lineId).reconnections.map((row) => ({
      ...row,
      ...{ openedRunId: "run", openedSecond: 62, openedBy: "Marek Sandoval" },
    }));
    const base = getRevisions(act.db, lineId).reconnections;
    must(saveRows(act, { lineId, table: "reconnections", base, rows }));
    must(close(at, words));
  });

  test("closes nothing over a hold on what was done; what was never begun keeps its holds", () => {
    const scope = [aScopeItem("liner", { kind: "line", from: 4_000, to: 6_000 })];
    const at = desk({ undocumented: true });
    const { act, lineId } = at;
    at.walk("submitted", "issued", "working");
    for (const row of scope) insertRow(act.db, "scope", { lineId, row });
    const words = { permit: "Taken over", built: "By others", branches: "Seen", money: "None" };
    expect(close(at, words)).toMatchObject({
      error: { reason: "held", detail: expect.stringContaining("not on record") },
    });
    const never = desk({ undocumented: true });
    for (const row of scope) insertRow(never.act.db, "scope", { lineId: never.lineId, row });
    must(close(never, words));
  });
});
