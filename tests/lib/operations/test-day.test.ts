import { expect, test } from "vitest";
import type { TestStop } from "#lib/domain/facts/test-day.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { stopKey, testIdFrom, testIdOf } from "#lib/domain/testing/test-day-results.ts";
import { readLineFile, writeLineFile } from "#lib/exchange/line-file.ts";
import { dropTestDay, planTestDay } from "#lib/operations/plan-test-day.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";
import { recordTestResult } from "#lib/operations/record-test-result.ts";
import { aParty, aPoint, aProperty, aRole, aTestStop } from "#tests/support/file.ts";
import { aDesk, addRows, anAct, fileOf, must } from "#tests/support/office.ts";

/** A planned day: the control at 12, then 18 twice, while the undocumented tie-in is watched. */
function aPlannedDay() {
  const { act, lineId } = aDesk({ undocumented: true });
  addRows(act, { lineId, table: "properties" }, [aProperty("18", { stake: "candidate" })]);
  const tieInId = fileOf(act, lineId).observations.find(({ id }) => id === "extra")?.tieInId ?? "";
  const stop = (propertyId: string, startsAt: string, colour: string): TestStop =>
    aTestStop(propertyId, { tieInIds: [tieInId], startsAt, colour });
  const control = stop("12", "09:00", "red");
  const first = stop("18", "09:30", "green");
  const second = stop("18", "10:00", "blue");
  const plan = {
    lineId,
    dayId: null,
    seen: null,
    on: act.today,
    controlPropertyId: "12",
    stops: [second, control, first],
    plantToldOn: null,
    plantTold: "",
    note: "",
  };
  const { dayId } = must(planTestDay(act, plan));
  const press = (at: TestStop) => ({
    lineId,
    dayId,
    stop: stopKey(at),
    tieInId,
    result: "positive" as const,
    startedAt: "",
    minutes: 4,
    quantity: "",
    dosedBy: "Marek Sandoval",
    watchedBy: "Ruth Lindqvist",
    filmed: "Run 3, 2:10",
    otherWaterBarred: true,
    note: "",
  });
  return { act, lineId, tieInId, dayId, plan, press, control, first, second };
}

type Planned = ReturnType<typeof aPlannedDay>;

function findingOf({ act, lineId, tieInId }: Planned) {
  return reportOn(fileOf(act, lineId), act.today).tieIns.find(({ tieIn }) => tieIn.id === tieInId);
}

test("a plan keeps its stops in the order of their times, and is told in the history", () => {
  const { act, lineId } = aPlannedDay();
  const file = fileOf(act, lineId);
  expect(file.testDays[0]?.stops.map(({ startsAt }) => startsAt)).toEqual([
    "09:00",
    "09:30",
    "10:00",
  ]);
  expect(file.history.at(-1)?.sentence).toBe(
    "Planned a test day on November 25, 2026 with 3 stops.",
  );
});

test("planTestDay() refuses a second dosing while the wait of the one before runs", () => {
  const { act, plan, control, first } = aPlannedDay();
  const soon = { ...first, startsAt: "09:14" };
  expect(planTestDay(act, { ...plan, stops: [control, soon] })).toMatchObject({
    error: { path: "stops.1.startsAt" },
  });
  expect(planTestDay(act, { ...plan, stops: [soon, control] })).toMatchObject({
    error: {
      path: "stops.0.startsAt",
      detail: "One dosing at a time: the one at 09:00 is watched until 09:15",
    },
  });
  expect(planTestDay(act, { ...plan, stops: [control, { ...first, startsAt: "09:15" }] }).ok).toBe(
    true,
  );
});

test.each([
  [{ propertyId: "none" }, "stops.0.propertyId"],
  [{ unitId: "none" }, "stops.0.unitId"],
  [{ tieInIds: [] }, "stops.0.tieInIds"],
  [{ tieInIds: ["none"] }, "stops.0.tieInIds"],
  [{ startsAt: "9 o'clock" }, "stops.0.startsAt"],
  [{ waitMinutes: 0 }, "stops.0.waitMinutes"],
])("planTestDay() refuses a stop with %j", (wrong, path) => {
  const { act, plan, first } = aPlannedDay();
  expect(planTestDay(act, { ...plan, stops: [{ ...first, ...wrong }] })).toMatchObject({
    error: { path },
  });
});

test("planTestDay() refuses no stop at all, no day, and a plan changed by another meanwhile", () => {
  const { act, lineId, plan, dayId, first } = aPlannedDay();
  expect(planTestDay(act, { ...plan, stops: [] })).toMatchObject({ error: { path: "stops" } });
  expect(planTestDay(act, { ...plan, on: "soon" })).toMatchObject({ error: { path: "on" } });
  const seen = JSON.stringify(fileOf(act, lineId).testDays[0]);
  must(planTestDay(act, { ...plan, dayId, seen, stops: [first] }));
  expect(planTestDay(act, { ...plan, dayId, seen })).toMatchObject({
    error: { reason: "changed-meanwhile" },
  });
});

test("a result makes an ordinary test with its times; pressed again it is corrected, not doubled", () => {
  const day = aPlannedDay();
  const { act, lineId, press, first } = day;
  must(recordTestResult(act, { ...press(first), startedAt: "09:58" }));
  expect(fileOf(act, lineId).tests).toMatchObject([
    { propertyId: "18", startedAt: "09:58", firstSeenAt: "10:02", result: "positive" },
  ]);
  expect(findingOf(day)).toMatchObject({ level: 4 });
  must(recordTestResult(act, { ...press(first), result: "not-seen", minutes: 25 }));
  expect(fileOf(act, lineId).tests).toMatchObject([
    { result: "not-seen", firstSeenAt: "", waitMinutes: 25 },
  ]);
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toMatch(/^Corrected: green dye from 18/);
});

test("not seen is weak: it keeps the candidate and lowers nothing", () => {
  const day = aPlannedDay();
  const before = findingOf(day)?.level;
  must(recordTestResult(day.act, { ...day.press(day.first), result: "not-seen" }));
  const after = findingOf(day);
  expect(after?.level).toBe(before);
  expect(after?.levelReason).toContain("weak evidence");
});

test("two filmed dosings by two people with a negative control come to level 5, in any order", () => {
  const day = aPlannedDay();
  const { act, press, control, first, second } = day;
  must(recordTestResult(act, press(first)));
  must(recordTestResult(act, press(second)));
  expect(findingOf(day)?.level).toBe(4);
  must(recordTestResult(act, { ...press(control), result: "not-seen" }));
  expect(findingOf(day)?.level).toBe(5);
  must(recordTestResult(act, press(control)));
  expect(findingOf(day)?.level).toBe(3);
});

test("a control recorded first counts for what follows", () => {
  const day = aPlannedDay();
  const { act, lineId, press, control, first } = day;
  must(recordTestResult(act, { ...press(control), result: "not-seen" }));
  must(recordTestResult(act, press(first)));
  expect(fileOf(act, lineId).tests.at(-1)).toMatchObject({ controlResult: "negative" });
});

test("a stop with a result can't be changed or dropped; others can", () => {
  const { act, lineId, plan, dayId, press, control, first, second } = aPlannedDay();
  must(recordTestResult(act, press(first)));
  const change = { ...plan, dayId };
  expect(planTestDay(act, { ...change, stops: [control, second] })).toMatchObject({
    error: { reason: "frozen" },
  });
  expect(planTestDay(act, { ...change, on: "2026-11-24" })).toMatchObject({
    error: { reason: "frozen", path: "on" },
  });
  must(planTestDay(act, { ...change, stops: [first] }));
  expect(dropTestDay(act, { lineId, dayId })).toMatchObject({ error: { reason: "in-use" } });
});

test("a plan without results can be dropped", () => {
  const { act, lineId, dayId } = aPlannedDay();
  must(dropTestDay(act, { lineId, dayId }));
  expect(fileOf(act, lineId).testDays).toEqual([]);
});

test("recordTestResult() refuses a day that has not come, an unknown stop, and viewers", () => {
  const { act, plan, press, first, dayId } = aPlannedDay();
  must(planTestDay(act, { ...plan, dayId, on: "2026-11-26" }));
  expect(recordTestResult(act, press(first))).toMatchObject({ error: { reason: "bad-value" } });
  expect(recordTestResult(act, { ...press(first), stop: "none" })).toMatchObject({
    error: { path: "stop" },
  });
  const viewer = anAct(act.db, { role: "viewer" });
  expect(recordTestResult(viewer, press(first))).toMatchObject({
    error: { reason: "not-allowed" },
  });
});

test("the field may plan and record", () => {
  const { act, plan, press, first } = aPlannedDay();
  const field = anAct(act.db, { role: "field" });
  must(recordTestResult(field, press(first)));
  must(planTestDay(field, plan));
});

test("planTestDay() refuses to rinse and dose at once", () => {
  const { act, plan, control, first } = aPlannedDay();
  const rinsed = { ...control, rinseMinutes: 10 };
  const soon = { ...first, startsAt: "09:20" };
  expect(planTestDay(act, { ...plan, stops: [rinsed, soon] })).toMatchObject({
    error: {
      path: "stops.1.startsAt",
      detail:
        "One dosing at a time: the one at 09:00 is watched until 09:15 and rinsed until 09:25",
    },
  });
  must(planTestDay(act, { ...plan, stops: [rinsed, { ...first, startsAt: "09:25" }] }));
});

test("planTestDay() refuses to watch two places with one camera", () => {
  const { act, lineId, plan, first, tieInId } = aPlannedDay();
  const far = fileOf(act, lineId).observations.find(({ id }) => id === "o-12")?.tieInId ?? "";
  const both = { ...first, tieInIds: [tieInId, far] };
  expect(planTestDay(act, { ...plan, stops: [both] })).toMatchObject({
    error: {
      path: "stops.0.tieInIds",
      detail: expect.stringMatching(/One camera .* 30\.0 ft apart/),
    },
  });
});

test("planTestDay() refuses a control that joins above what is watched", () => {
  const { act, plan, first } = aPlannedDay();
  // 16 joins at 60 ft, the watched branch at 50.
  const above = { ...first, propertyId: "16" };
  expect(planTestDay(act, { ...plan, controlPropertyId: "16", stops: [above] })).toMatchObject({
    error: { path: "controlPropertyId" },
  });
  must(
    planTestDay(act, { ...plan, controlPropertyId: "12", stops: [{ ...first, propertyId: "12" }] }),
  );
});

test("planTestDay() sends nobody where entry was refused", () => {
  const { act, lineId, plan, first } = aPlannedDay();
  addRows(act, { lineId, table: "parties" }, [aParty("nils")]);
  addRows(act, { lineId, table: "roles" }, [aRole("nils", "18")]);
  const no = {
    lineId,
    kind: "enter",
    partyId: "nils",
    propertyId: "18",
    state: "refused",
    stateOn: act.today,
    splitId: null,
    amount: null,
    recordingNumber: "",
    uploadId: null,
    note: "",
  } as const;
  must(recordConsent(act, no));
  expect(planTestDay(act, { ...plan, stops: [first] })).toMatchObject({
    error: { path: "stops.0.propertyId", detail: expect.stringContaining("18 Fennel Row refused") },
  });
});

test("a stop is at an address or an access of the pipe; what passed there is kept with the plan", () => {
  const { act, lineId, plan, press, first, dayId } = aPlannedDay();
  addRows(act, { lineId, table: "points" }, [aPoint("high", { station: 9_000 })]);
  const pipe = { ...first, propertyId: null, pointId: "high", startsAt: "11:00" };
  expect(planTestDay(act, { ...plan, stops: [{ ...pipe, propertyId: "18" }] })).toMatchObject({
    error: { path: "stops.0.propertyId" },
  });
  expect(planTestDay(act, { ...plan, stops: [{ ...pipe, pointId: null }] }).ok).toBe(false);
  must(planTestDay(act, { ...plan, dayId, stops: [...plan.stops, pipe] }));
  expect(must(recordTestResult(act, press(pipe)))).toEqual({ testId: null });
  const file = fileOf(act, lineId);
  expect(file.tests).toEqual([]);
  expect(file.testDays[0]?.stops.at(-1)?.passed).toBe("positive");
  expect(file.history.at(-1)?.sentence).toBe(
    "Dye from the cleanout at 90.0 ft was seen to pass the camera.",
  );
  const unsaid = { ...pipe, passed: null };
  expect(planTestDay(act, { ...plan, dayId, stops: [...plan.stops, unsaid] })).toMatchObject({
    error: { reason: "frozen" },
  });
});

test("drains, dose and water of the stop go into its test", () => {
  const { act, lineId, plan, press, dayId, first } = aPlannedDay();
  const full: TestStop = {
    ...first,
    drains: [{ floor: "basement", drain: "floor-drain" }],
    fixture: "",
    dose: "2 tablets",
    flushGallons: 5,
  };
  must(planTestDay(act, { ...plan, dayId, stops: [full] }));
  must(recordTestResult(act, press(full)));
  expect(fileOf(act, lineId).tests[0]).toMatchObject({
    fixture: "basement floor drain",
    quantity: "2 tablets, then 5 gallons of water",
  });
});

test("a test recorded from a plan goes into a line file, and others can be added beside it", () => {
  const { act, lineId, tieInId, press, control, first } = aPlannedDay();
  const ids = [control, first].map((at) => must(recordTestResult(act, press(at))).testId);
  for (const id of ids) expect(id).toMatch(/^[A-Za-z0-9_-]{1,64}$/);
  const written = writeLineFile({ file: fileOf(act, lineId), contents: new Map() });
  expect(readLineFile(written)).toMatchObject({ ok: true });
  const [test] = fileOf(act, lineId).tests;
  addRows(act, { lineId, table: "tests" }, [{ ...test, id: "by-hand", tieInId }]);
  expect(fileOf(act, lineId).tests.map(({ id }) => id)).toEqual([...ids, "by-hand"]);
});

test("the ids that results had before are led over to those that they have now", () => {
  const { dayId, tieInId, first } = aPlannedDay();
  const plain = [dayId, stopKey(first), tieInId].join("|");
  expect(testIdFrom(plain)).toBe(testIdOf({ id: dayId }, first, tieInId));
});
