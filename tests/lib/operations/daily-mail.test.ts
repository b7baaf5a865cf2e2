import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { dailyQueue, isDailyOn, listDailyMails } from "#db/queries/daily-mail.ts";
import { putOffice } from "#db/queries/office.ts";
import { insertUser } from "#db/queries/user.ts";
import type { UserRole } from "#lib/domain/facts/user.ts";
import type { Act } from "#lib/operations/act.ts";
import { addPermit } from "#lib/operations/add-permit.ts";
import { changeUser } from "#lib/operations/change-user.ts";
import { dailyMailing, saveDailyMail, sendNextDaily } from "#lib/operations/daily-mail.ts";
import { keepLine } from "#lib/operations/keep-line.ts";
import { renewSummaries } from "#lib/operations/renew-summaries.ts";
import { anInspection, anOffice } from "#tests/support/file.ts";
import { aDesk, addRows, anAct, must } from "#tests/support/office.ts";
import { aWorkplace } from "#tests/support/workplace.ts";

function aUser(act: Act, id: string, role: UserRole): void {
  const user = { id, name: `User ${id}`, email: `${id}@example.com`, role, disabled: false };
  insertUser(act.db, { user, passwordHash: "none", at: act.now });
}

/** A desk on Wednesday, 10 in the morning: Ann handles a line with an inspection tomorrow; Bo runs the office. */
function aMorning(now = "2026-11-25T18:00:00.000Z") {
  const { act, lineId } = aDesk();
  putOffice(act.db, anOffice({ zone: "America/Los_Angeles" }));
  const permit = { kind: "side-sewer", number: "", expiresOn: null, note: "" } as const;
  const { permitId } = must(addPermit(act, { lineId, ...permit }));
  addRows(act, { lineId, table: "inspections" }, [
    anInspection("i", permitId, { bookedFor: "2026-11-27" }),
  ]);
  aUser(act, "ann", "office");
  aUser(act, "bo", "admin");
  aUser(act, "vi", "viewer");
  must(keepLine(act, { lineId, userId: "ann" }));
  const desk = { act: { ...act, now }, lineId };
  const { place, wait } = aWorkplace(desk);
  const day = () => renewSummaries(act.db, place.today(), 10);
  day();
  return { act, lineId, place, wait, day, admin: anAct(act.db, { role: "admin" }) };
}

function turnOn({ admin }: ReturnType<typeof aMorning>): void {
  must(saveDailyMail(admin, { daily: true }));
}

test("nobody is written to until an admin turns it on", async () => {
  const desk = aMorning();
  await dailyMailing()(desk.place);
  expect(listDailyMails(desk.act.db, "2026-11-25")).toEqual([]);
  expect(saveDailyMail(desk.act, { daily: true })).toMatchObject({
    error: { reason: "not-allowed" },
  });
  expect(isDailyOn(desk.act.db)).toBe(false);
  turnOn(desk);
  expect(isDailyOn(desk.act.db)).toBe(true);
});

test("each gets what is due on their own lines, once a day, whoever starts again", async () => {
  const desk = aMorning();
  turnOn(desk);
  await dailyMailing()(desk.place);
  await dailyMailing()(desk.place);
  const mails = listDailyMails(desk.act.db, "2026-11-25");
  expect(mails.map(({ toAddress }) => toAddress)).toEqual(["ann@example.com"]);
  expect(mails[0]?.subject).toContain("due this week");
  expect(mails[0]?.text).toContain("Alley behind Fennel Row: ");
  expect(mails[0]?.text).toContain("Friday");

  expect(await sendNextDaily(desk.place)).toBe(true);
  expect(await sendNextDaily(desk.place)).toBe(false);
  expect(listDailyMails(desk.act.db, "2026-11-25")[0]?.state).toBe("sent");
  await dailyMailing()(desk.place);
  expect(await sendNextDaily(desk.place)).toBe(false);
});

test("a worker that dies while it sends leaves the message to the next, with the same Message-ID", async () => {
  const desk = aMorning();
  turnOn(desk);
  await dailyMailing()(desk.place);
  const now = desk.place.now();
  const until = new Date(Date.parse(now) + 120_000).toISOString();
  const taken = dailyQueue.claim(desk.act.db, { worker: "dead", now, until, latest: until });
  expect(await sendNextDaily(desk.place)).toBe(false);
  desk.wait(3);
  await dailyMailing()(desk.place);
  expect(await sendNextDaily(desk.place)).toBe(true);
  const mails = listDailyMails(desk.act.db, "2026-11-25");
  expect(mails).toHaveLength(1);
  expect(mails[0]).toMatchObject({ state: "sent", messageId: taken?.messageId });
});

test("who lost access after it was written gets nothing, nor does anyone once it is turned off", async () => {
  const gone = aMorning();
  turnOn(gone);
  await dailyMailing()(gone.place);
  must(await changeUser(gone.admin, { userId: "ann", disabled: true }));
  expect(await sendNextDaily(gone.place)).toBe(true);
  const off = aMorning();
  turnOn(off);
  await dailyMailing()(off.place);
  must(saveDailyMail(off.admin, { daily: false }));
  expect(await sendNextDaily(off.place)).toBe(true);
  for (const { act, place } of [gone, off]) {
    expect(listDailyMails(act.db, "2026-11-25")[0]?.state).toBe("failed");
    expect(fs.existsSync(path.join(place.dataFolder, "unsent-mail"))).toBe(false);
  }
});

test("lines no one handles and company papers go to admins", async () => {
  const desk = aMorning();
  turnOn(desk);
  must(keepLine(desk.act, { lineId: desk.lineId, userId: null }));
  putOffice(
    desk.act.db,
    anOffice({
      zone: "America/Los_Angeles",
      insurance: "Policy 7",
      insuranceExpiresOn: "2026-12-01",
    }),
  );
  desk.day();
  await dailyMailing()(desk.place);
  const [mail, ...more] = listDailyMails(desk.act.db, "2026-11-25");
  expect(more).toEqual([]);
  expect(mail?.toAddress).toBe("bo@example.com");
  expect(mail?.text).toContain("Company papers");
  expect(mail?.subject).toBe("Desk: 1 due this week, 1 company paper to renew");
});

test("not before 7, not on a weekend or a federal holiday, and not from an old desk", async () => {
  for (const now of [
    "2026-11-25T14:59:00.000Z",
    "2026-11-26T18:00:00.000Z",
    "2026-11-28T18:00:00.000Z",
  ]) {
    const desk = aMorning(now);
    turnOn(desk);
    await dailyMailing()(desk.place);
    expect(listDailyMails(desk.act.db, now.slice(0, 10)), now).toEqual([]);
  }
  const desk = aMorning();
  turnOn(desk);
  const write = dailyMailing();
  must(keepLine(desk.act, { lineId: desk.lineId, userId: "bo" }));
  addRows(desk.act, { lineId: desk.lineId, table: "points" }, []);
  putOffice(desk.act.db, anOffice({ zone: "America/Los_Angeles", name: "Alder" }));
  await write(desk.place);
  expect(listDailyMails(desk.act.db, "2026-11-25")).toEqual([]);
  desk.day();
  await write(desk.place);
  expect(listDailyMails(desk.act.db, "2026-11-25").map(({ userId }) => userId)).toEqual(["bo"]);
});
