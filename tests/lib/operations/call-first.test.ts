import { expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import type { Act } from "#lib/operations/act.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { planTestDay } from "#lib/operations/plan-test-day.ts";
import { recordHouseholdCall } from "#lib/operations/record-household-call.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { anEvent, aParty, aRole, aTestStop } from "../../support/file.ts";
import { aDesk, addRows, fileOf, must } from "../../support/office.ts";

const DAY = "2026-12-02";

/** Beatrix rents 16, is on home dialysis, and her water comes down this pipe. */
function withNeed() {
  const { act, lineId } = aDesk({ undocumented: true });
  addRows(act, { lineId, table: "parties" }, [
    aParty("bea", { name: "Beatrix Holloway", needs: "Home dialysis", phone: "(360) 555-0116" }),
  ]);
  addRows(act, { lineId, table: "roles" }, [aRole("bea", "16", { role: "occupant" })]);
  const call = (purpose: "drain-pause" | "test-visit", forDay = DAY, outcome = "agreed" as const) =>
    must(
      recordHouseholdCall(act, {
        ...{ lineId, partyId: "bea", propertyId: "16", purpose, forDay, outcome },
        ...{ words: "9 to 12", calledBy: "Ruth Lindqvist", calledOn: act.today },
      }),
    );
  return { act, lineId, call };
}

const HELD = { ok: false, error: { reason: "held" } };

test("planTestDay() plans no day that visits a household or keeps its water off before it was called", () => {
  const { act, lineId, call } = withNeed();
  const [, , , extra] = fileOf(act, lineId).tieIns;
  const stop = (propertyId: string) =>
    aTestStop(propertyId, { tieInIds: [extra?.id ?? ""], startsAt: "09:00" });
  const told = { plantToldOn: null, plantTold: "" };
  const plan = { lineId, dayId: null, seen: null, on: DAY, note: "", ...told };
  const visit = { ...plan, controlPropertyId: null, stops: [stop("16")] };
  const refused = planTestDay(act, visit);
  expect(refused).toMatchObject({ ...HELD, error: { path: "on" } });
  expect(!refused.ok && refused.error.detail).toContain(
    "Beatrix Holloway (16 Fennel Row), (360) 555-0116",
  );
  expect(!refused.ok && refused.error.detail).not.toContain("dialysis");
  // Its flow passes the watched place from above, so its water has to stay off.
  expect(planTestDay(act, { ...visit, stops: [stop("14")] })).toMatchObject(HELD);
  expect(fileOf(act, lineId).testDays).toEqual([]);
  call("test-visit", "2026-12-01");
  expect(planTestDay(act, visit)).toMatchObject(HELD);
  call("drain-pause");
  expect(planTestDay(act, visit)).toMatchObject(HELD);
  call("test-visit");
  must(planTestDay(act, visit));
});

test("saveRows() records no pause of drains to come before every household with a need agreed to its day", () => {
  const { act, lineId, call } = withNeed();
  const save = (rows: readonly object[]) =>
    saveRows(act, {
      lineId,
      table: "events",
      base: getRevisions(act.db, lineId).events,
      rows,
    });
  const paused = anEvent("e", { event: "drains-paused", on: DAY });
  const refused = save([paused]);
  expect(refused).toMatchObject({
    error: { reason: "bad-rows", cells: [{ row: 0, column: "on" }] },
  });
  expect(!refused.ok && refused.error.cells[0]?.message).toContain("Beatrix Holloway");
  must(save([{ ...paused, on: "2026-11-20" }]));
  call("drain-pause");
  must(save([paused]));
  expect(save([{ ...paused, on: "2026-12-03" }])).toMatchObject({
    error: { reason: "bad-rows" },
  });
  must(save([{ ...paused, note: "8 to noon" }]));
});

test("sendNotices() announces no pause to anybody, and no visit there, before the household was called", () => {
  const { act, lineId, call } = withNeed();
  const draft = (kind: "drain-pause" | "test-visit", partyId: string, propertyId: string) => {
    const recipients = [{ partyId, propertyId, tieInId: null, splitId: null }];
    return must(draftNotices(act, { lineId, kind, replyBy: null, recipients })).noticeIds;
  };
  const admin: Act = { ...act, actor: { ...act.actor, role: "admin" } };
  const send = (noticeIds: string[]) =>
    sendNotices(admin, {
      lineId,
      noticeIds,
      method: "by-hand",
      sentOn: act.today,
      despite: "The hours are on the phone",
    });
  expect(send(draft("drain-pause", "owner-12", "12"))).toMatchObject(HELD);
  expect(send(draft("test-visit", "bea", "16"))).toMatchObject(HELD);
  must(send(draft("test-visit", "owner-12", "12")));
  call("drain-pause");
  addRows(act, { lineId, table: "events" }, [anEvent("e", { event: "drains-paused", on: DAY })]);
  must(send(draft("drain-pause", "owner-12", "12")));
});

test("waiveHold() lets nobody waive what a household needs", () => {
  const { act, lineId } = withNeed();
  const holdKey = "household-need:bea:16";
  expect(waiveHold(act, { lineId, holdKey, reason: "It will be quick" })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
});
