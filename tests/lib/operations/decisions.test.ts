import { expect, test } from "vitest";
import { getAuthority } from "#db/queries/authority.ts";
import { listOfficeHistory } from "#db/queries/history.ts";
import { listLines } from "#db/queries/line.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { addPermit } from "#lib/operations/add-permit.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { closeLine } from "#lib/operations/close-line.ts";
import { correctPermit } from "#lib/operations/correct-permit.ts";
import { decidePairing } from "#lib/operations/decide-pairing.ts";
import { explainEntry } from "#lib/operations/explain-entry.ts";
import { liftWaiver } from "#lib/operations/lift-waiver.ts";
import { markRequirement } from "#lib/operations/mark-requirement.ts";
import { moveSighting } from "#lib/operations/move-sighting.ts";
import { openLine } from "#lib/operations/open-line.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { settleTieIn } from "#lib/operations/settle-tie-in.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { withdrawPairing } from "#lib/operations/withdraw-pairing.ts";
import { anAuthority, anObservation, aRequirement, aRule } from "../../support/file.ts";
import { aDb, aDesk, addRows, anAct, fileOf, must } from "../../support/office.ts";

type Desk = ReturnType<typeof aDesk>;

function tieInOf({ act, lineId }: Desk, observationId: string): string {
  return fileOf(act, lineId).observations.find(({ id }) => id === observationId)?.tieInId ?? "";
}

function holds({ act, lineId }: Desk) {
  return reportOn(fileOf(act, lineId), act.today).holds;
}

test("openLine() refuses a blank name, an unknown authority and the field", () => {
  const act = anAct(aDb());
  const line = { name: " ", town: "", authorityId: null };
  expect(openLine(act, line)).toMatchObject({ error: { reason: "bad-value", path: "name" } });
  expect(openLine(act, { ...line, name: "Alley", authorityId: "none" })).toMatchObject({
    error: { reason: "not-found" },
  });
  const field = anAct(act.db, { role: "field" });
  expect(openLine(field, { ...line, name: "Alley" })).toMatchObject({
    error: { reason: "not-allowed" },
  });
  expect(listLines(act.db)).toEqual([]);
});

test("saveLine() changes what is named, leaves the rest, and tells before and after", () => {
  const { act, lineId } = aDesk();
  must(saveLine(act, { lineId, facts: { upperEnd: 9_600, diameter: 6 } }));
  must(saveLine(act, { lineId, facts: { upperEnd: 9_700 } }));
  expect(fileOf(act, lineId).line).toMatchObject({ upperEnd: 9_700, diameter: 6 });
  const entry = fileOf(act, lineId).history.at(-1);
  expect(entry?.sentence).toBe("Changed the line's upper end.");
  expect(JSON.parse(entry?.detail ?? "")).toEqual({
    before: { upperEnd: 9_600 },
    after: { upperEnd: 9_700 },
  });
  expect(saveLine(act, { lineId, facts: { diameter: -6 } })).toMatchObject({
    error: { reason: "bad-value", path: "diameter", detail: "Enter a diameter above zero" },
  });
});

test("saveLine() can't close a line or choose a rule in passing", () => {
  const { act, lineId } = aDesk();
  const facts = { name: "Other", closedOn: "2026-11-25", ruleId: "r", id: "x" };
  must(saveLine(act, { lineId, facts }));
  expect(fileOf(act, lineId).line).toMatchObject({
    id: lineId,
    name: "Other",
    closedOn: null,
    ruleId: null,
  });
});

test("closeLine() closes once, with a reason", () => {
  const { act, lineId } = aDesk();
  expect(closeLine(act, { lineId, reason: " " })).toMatchObject({
    error: { reason: "missing-value" },
  });
  const words = { permit: "The city issued none for a look" };
  must(closeLine(act, { lineId, reason: "Final", words }));
  const base = getRevisions(act.db, lineId).points;
  expect(saveRows(act, { lineId, table: "points", base, rows: [] })).toMatchObject({
    error: { reason: "not-in-this-state", by: expect.stringContaining("open it again") },
  });
  expect(saveLine(act, { lineId, facts: { note: "late" } })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
  expect(fileOf(act, lineId).line.closedOn).toBe("2026-11-25");
  expect(closeLine(act, { lineId, reason: "Final" })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
});

test("saveAuthority() saves an authority whole and keeps a rule that a line rests on", () => {
  const { act, lineId } = aDesk();
  const admin = anAct(act.db, { role: "admin" });
  const authority = anAuthority({
    rules: [aRule("a", { authorityId: "elsewhere" }), aRule("b")],
    requirements: [aRequirement("r")],
  });
  expect(saveAuthority(act, authority)).toMatchObject({ error: { reason: "not-allowed" } });
  must(saveAuthority(admin, authority));
  expect(getAuthority(act.db, authority.id)?.rules).toEqual([aRule("a"), aRule("b")]);
  must(chooseRule(act, { lineId, authorityId: authority.id, ruleId: "b" }));
  expect(saveAuthority(admin, { ...authority, rules: [aRule("a")] })).toMatchObject({
    error: { reason: "in-use", detail: "The rule is applied on Alley behind Fennel Row" },
  });
  must(saveAuthority(admin, { ...authority, rules: [aRule("b", { title: "New words" })] }));
  expect(getAuthority(act.db, authority.id)?.rules.map(({ title }) => title)).toEqual([
    "New words",
  ]);
  expect(listOfficeHistory(act.db)[0]?.sentence).toBe("Changed City of Quillhaven.");
});

test("chooseRule() refuses a rule of another authority", () => {
  const { act, lineId } = aDesk();
  const admin = anAct(act.db, { role: "admin" });
  must(saveAuthority(admin, anAuthority({ rules: [aRule("a")] })));
  must(saveAuthority(admin, anAuthority({ id: "two", name: "Two", rules: [aRule("b")] })));
  expect(chooseRule(act, { lineId, authorityId: "two", ruleId: "a" })).toMatchObject({
    error: { reason: "not-found", path: "ruleId" },
  });
});

test("decidePairing() keeps who, when, why and how far apart, and replaces what was decided before", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const word = { lineId, entryId: "12", tieInId: tieInOf(desk, "o-12") };
  expect(decidePairing(act, { ...word, state: "refused", reason: "" })).toMatchObject({
    error: { reason: "missing-value", path: "reason" },
  });
  must(decidePairing(act, { ...word, state: "refused", reason: "Other side" }));
  const pairings = fileOf(act, lineId).pairings.filter(({ entryId }) => entryId === "12");
  expect(pairings).toMatchObject([
    {
      state: "refused",
      reason: "Other side",
      decidedBy: "Dana Okafor",
      decidedOn: act.today,
      distance: 0,
    },
  ]);
});

test("decidePairing() accepts one tie-in for one entry at most, and names the rival", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const rival = {
    lineId,
    entryId: "12",
    tieInId: tieInOf(desk, "o-14"),
    state: "accepted",
    reason: "x",
  } as const;
  expect(decidePairing(act, rival)).toMatchObject({
    error: { reason: "already-there", detail: "House 12 is accepted as T1; undo that first" },
  });
});

test("withdrawPairing() opens the question again", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const [pairing] = fileOf(act, lineId).pairings;
  const pairingId = pairing?.id ?? "";
  must(withdrawPairing(act, { lineId, pairingId, reason: "Wrong house" }));
  expect(fileOf(act, lineId).pairings).toHaveLength(2);
  expect(fileOf(act, lineId).history.at(-1)?.detail).toContain("Same side and place");
});

test("explainEntry() names who explained it, and takes it back when emptied", () => {
  const { act, lineId } = aDesk();
  must(explainEntry(act, { lineId, entryId: "12", explanation: "Never built" }));
  const entry = () => fileOf(act, lineId).entries.find(({ id }) => id === "12");
  expect(entry()).toMatchObject({ explanation: "Never built", explainedBy: "Dana Okafor" });
  must(explainEntry(act, { lineId, entryId: "12", explanation: "" }));
  expect(entry()).toMatchObject({ explanation: "", explainedBy: "", explainedOn: null });
  expect(getRevisions(act.db, lineId).entries).toBe(3);
});

test("settleTieIn() settles with a name, a day and a reason; unknown after all opens it again", () => {
  const desk = aDesk({ undocumented: true });
  const { act, lineId } = desk;
  const tieInId = tieInOf(desk, "extra");
  const word = {
    lineId,
    tieInId,
    kind: "building",
    propertyId: "14",
    inactive: false,
    ownerAccepted: true,
  } as const;
  expect(settleTieIn(act, { ...word, reason: " " })).toMatchObject({
    error: { reason: "missing-value", path: "reason" },
  });
  expect(settleTieIn(act, { ...word, propertyId: null, reason: "x" })).toMatchObject({
    error: { reason: "missing-value", path: "propertyId" },
  });
  must(settleTieIn(act, { ...word, reason: "Letter of 12 November" }));
  const tieIn = () => fileOf(act, lineId).tieIns.find(({ id }) => id === tieInId);
  expect(tieIn()).toMatchObject({
    kind: "building",
    propertyId: "14",
    settledBy: "Dana Okafor",
    settledOn: act.today,
    settledReason: "Letter of 12 November",
  });
  must(
    settleTieIn(act, {
      ...word,
      kind: "unknown",
      propertyId: null,
      ownerAccepted: false,
      reason: "Withdrawn",
    }),
  );
  expect(tieIn()).toMatchObject({ settledBy: "", settledOn: null, settledReason: "" });
});

test("moveSighting() gives an observation another tie-in or one of its own, and lets an empty one go", () => {
  const desk = aDesk({ undocumented: true });
  const { act, lineId } = desk;
  const field = anAct(act.db, { role: "field", newId: act.newId });
  const to = tieInOf(desk, "o-14");
  must(moveSighting(field, { lineId, observationId: "extra", tieInId: to }));
  expect(tieInOf(desk, "extra")).toBe(to);
  expect(fileOf(act, lineId).tieIns).toHaveLength(3);
  const { tieInId } = must(moveSighting(field, { lineId, observationId: "extra", tieInId: null }));
  expect(tieInOf(desk, "extra")).toBe(tieInId);
  expect(fileOf(act, lineId).tieIns.map(({ label }) => label)).toEqual(["T1", "T2", "T4", "T5"]);
});

test("moveSighting() keeps a tie-in that a pairing rests on, though nothing was seen of it any more", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const [from, to] = [tieInOf(desk, "o-12"), tieInOf(desk, "o-14")];
  must(moveSighting(act, { lineId, observationId: "o-12", tieInId: to }));
  expect(fileOf(act, lineId).tieIns.map(({ id }) => id)).toContain(from);
});

test("waiveHold() lets work go on in a person's name, until liftWaiver() takes that back", () => {
  const desk = aDesk({ undocumented: true });
  const { act, lineId } = desk;
  const key = holds(desk)[0]?.key ?? "";
  expect(waiveHold(act, { lineId, holdKey: "none", reason: "x" })).toMatchObject({
    error: { reason: "not-found" },
  });
  expect(waiveHold(act, { lineId, holdKey: key, reason: "" })).toMatchObject({
    error: { reason: "missing-value" },
  });
  const { waiverId } = must(
    waiveHold(act, { lineId, holdKey: key, reason: "Inspector stands by" }),
  );
  expect(holds(desk)[0]?.waiver).toMatchObject({
    by: "Dana Okafor",
    reason: "Inspector stands by",
  });
  expect(waiveHold(act, { lineId, holdKey: key, reason: "x" })).toMatchObject({
    error: { reason: "already-there" },
  });
  must(liftWaiver(act, { lineId, waiverId }));
  expect(holds(desk)[0]?.waiver).toBeNull();
});

test("stepPermit() follows the permit's way and never goes back in time", () => {
  const { act, lineId } = aDesk();
  const permit = { lineId, kind: "side-sewer", number: "SS-1", expiresOn: null, note: "" } as const;
  const { permitId } = must(addPermit(act, permit));
  const step = { lineId, permitId, note: "" };
  expect(stepPermit(act, { ...step, state: "final", on: act.today })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
  must(stepPermit(act, { ...step, state: "drafting", on: "2026-11-10" }));
  expect(stepPermit(act, { ...step, state: "submitted", on: "2026-11-09" })).toMatchObject({
    error: { reason: "bad-value", path: "on" },
  });
  must(stepPermit(act, { ...step, state: "submitted", on: "2026-11-12" }));
  expect(fileOf(act, lineId).permitSteps.map(({ state }) => state)).toEqual([
    "drafting",
    "submitted",
  ]);
});

test("correctPermit() takes down the number and the printed expiry whenever they come", () => {
  const { act, lineId } = aDesk();
  const permit = { lineId, kind: "side-sewer", number: "", expiresOn: null, note: "" } as const;
  const { permitId } = must(addPermit(act, permit));
  const paper = { lineId, permitId, number: "", expiresOn: null, note: "" };
  for (const state of ["submitted", "issued"] as const)
    must(stepPermit(act, { lineId, permitId, state, on: act.today, note: "" }));
  must(correctPermit(act, { ...paper, number: " SS-26-0412 ", expiresOn: "2027-02-23" }));
  expect(fileOf(act, lineId).permits).toMatchObject([
    { number: "SS-26-0412", expiresOn: "2027-02-23" },
  ]);
  must(correctPermit(act, { ...paper, number: "SS-26-0421", expiresOn: "2027-02-23" }));
  const told = fileOf(act, lineId).history.map(({ sentence }) => sentence);
  expect(told).toContain(
    "Side sewer permit: number SS-26-0412; printed to expire February 23, 2027.",
  );
  expect(told.at(-1)).toBe("Side sewer permit SS-26-0412: number SS-26-0421, was SS-26-0412.");
  must(correctPermit(act, { ...paper, number: "SS-26-0421", expiresOn: "2027-02-23" }));
  expect(fileOf(act, lineId).history).toHaveLength(told.length);
});

test("correctPermit() refuses a number that another permit has, a day that is none, and a viewer", () => {
  const { act, lineId } = aDesk();
  const permit = { lineId, kind: "side-sewer", expiresOn: null, note: "" } as const;
  must(addPermit(act, { ...permit, number: "SS-1" }));
  const { permitId } = must(addPermit(act, { ...permit, number: "" }));
  const paper = { lineId, permitId, number: "SS-2", expiresOn: null, note: "" };
  expect(correctPermit(act, { ...paper, number: "SS-1" })).toMatchObject({
    error: { reason: "already-there", path: "number" },
  });
  expect(correctPermit(act, { ...paper, expiresOn: "2026-02-30" })).toMatchObject({
    error: { reason: "bad-value", path: "expiresOn" },
  });
  expect(correctPermit(act, { ...paper, permitId: "gone" })).toMatchObject({
    error: { reason: "not-found" },
  });
  expect(correctPermit(anAct(act.db, { role: "viewer" }), paper)).toMatchObject({
    error: { reason: "not-allowed" },
  });
});

test("stepPermit() submits nothing against a hold that nobody waived", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const [pairing] = fileOf(act, lineId).pairings;
  must(withdrawPairing(act, { lineId, pairingId: pairing?.id ?? "", reason: "Doubt" }));
  const tieInId = tieInOf(desk, "o-12");
  must(decidePairing(act, { lineId, entryId: "12", tieInId, state: "refused", reason: "Not it" }));
  const permit = { lineId, kind: "side-sewer", number: "", expiresOn: null, note: "" } as const;
  const { permitId } = must(addPermit(act, permit));
  const step = { lineId, permitId, state: "submitted", on: act.today, note: "" } as const;
  const stopping = holds(desk).filter(({ stops }) => stops.includes("submission"));
  expect(stopping.length).toBeGreaterThan(0);
  expect(stepPermit(act, step)).toMatchObject({ error: { reason: "held" } });
  for (const { key } of stopping)
    must(waiveHold(act, { lineId, holdKey: key, reason: "Counter agreed" }));
  expect(stepPermit(act, step)).toMatchObject({ ok: true });
});

test("markRequirement() marks what the authority asks for, once each", () => {
  const { act, lineId } = aDesk();
  const admin = anAct(act.db, { role: "admin" });
  must(saveAuthority(admin, anAuthority({ requirements: [aRequirement("easement")] })));
  must(chooseRule(act, { lineId, authorityId: "authority-1", ruleId: null }));
  const mark = { lineId, requirementId: "easement", uploadId: null, note: "" };
  must(markRequirement(act, { ...mark, state: "missing" }));
  must(markRequirement(act, { ...mark, state: "does-not-apply" }));
  expect(fileOf(act, lineId).requirementMarks).toMatchObject([{ state: "does-not-apply" }]);
  expect(markRequirement(act, { ...mark, requirementId: "none", state: "missing" })).toMatchObject({
    error: { reason: "not-found" },
  });
});

test("an operation that fails in the middle of writing leaves nothing behind", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const before = fileOf(act, lineId);
  act.db.$client.exec(
    "create temp trigger stop before insert on history begin select raise(abort, 'disk'); end",
  );
  expect(() => saveLine(act, { lineId, facts: { name: "Other" } })).toThrow("disk");
  expect(() =>
    addRows(act, { lineId, table: "observations" }, [anObservation("late", { counter: 9_000 })]),
  ).toThrow("disk");
  expect(fileOf(act, lineId)).toEqual(before);
});
