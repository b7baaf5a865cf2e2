import { expect, test } from "vitest";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { listDraftedReminders, listReminderRules } from "#db/queries/reminder.ts";
import { listRows, updateRow } from "#db/queries/row.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { dropDraft } from "#lib/operations/drop-draft.ts";
import { openLink } from "#lib/operations/open-link.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { reminding } from "#lib/operations/remind-by-rule.ts";
import { saveReminderRule } from "#lib/operations/save-reminder-rule.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import type { Workplace } from "#lib/operations/workplace.ts";
import { aDoor } from "../../support/link.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";
import { aPeer } from "../../support/smtp.ts";
import { aWorkplace } from "../../support/workplace.ts";

const SENT = "2026-11-02";
const REPLY_BY = "2026-11-16";
const DAY = 24 * 60;
const RULE = { kind: "finding", daysAfter: 3, every: 7, most: 2, sends: false } as const;

/** Two findings that were to be answered by the 16th; it is the 17th. */
function aDeskThatWaits() {
  const { act: desk, lineId } = aDesk();
  const act = {
    ...desk,
    now: "2026-11-17T18:00:00.000Z",
    today: "2026-11-17",
    actor: { ...desk.actor, role: "admin" as const },
  };
  const recipients = ["12", "14"].map((house) => ({
    partyId: `owner-${house}`,
    propertyId: house,
    tieInId: null,
    splitId: null,
  }));
  const then = { ...act, today: SENT, now: `${SENT}T18:00:00.000Z` };
  const drafting = { lineId, kind: "finding", replyBy: REPLY_BY, recipients } as const;
  const { noticeIds } = must(draftNotices(then, drafting));
  must(sendNotices(then, { lineId, noticeIds, method: "first-class", sentOn: SENT }));
  const { place, wait } = aWorkplace({ act });
  const today = () => place.today();
  const drafts = () => fileOf(act, lineId).notices.filter(({ state }) => state === "draft");
  const at = () => ({ ...act, today: today(), now: place.now() });
  return { act, at, lineId, noticeIds, place, wait, drafts };
}

/** One of the two owners has an email address. */
function giveAddress({ db }: ReturnType<typeof aDesk>["act"], lineId: string): void {
  for (const row of listRows(db, "parties", lineId))
    updateRow(db, "parties", {
      lineId,
      row: { ...row, email: row.id === "owner-12" ? "owner@example.com" : "" },
    });
}

/** As the worker goes on until there is nothing left to do. */
async function runs(place: Workplace, remind = reminding()) {
  let many = 0;
  while (await remind(place)) many += 1;
  return many;
}

test("without a rule nothing is drafted; with one, on the day that it says, once", async () => {
  const { act, place, wait, drafts, lineId, noticeIds } = aDeskThatWaits();
  expect(await runs(place)).toBe(0);
  must(saveReminderRule(act, RULE));
  wait(DAY);
  await runs(place);
  expect(drafts()).toEqual([]);
  wait(DAY);
  const worker = reminding();
  await runs(place, worker);
  expect(drafts().map(({ partyId, createdBy }) => [partyId, createdBy])).toEqual([
    ["owner-12", "Reminder rules"],
    ["owner-14", "Reminder rules"],
  ]);
  expect(
    listDraftedReminders(act.db, lineId)
      .map((row) => row.noticeId)
      .sort(),
  ).toEqual([...noticeIds].sort());
  // The same worker finds nothing more to do; one that was started anew drafts nothing twice.
  expect(await worker(place)).toBe(false);
  await runs(place);
  await runs({ ...place, worker: "worker-2" });
  expect(drafts()).toHaveLength(2);
});

test("nothing goes out without a release, whatever day it is; a discarded draft stays discarded", async () => {
  const { act, at, place, wait, drafts, lineId } = aDeskThatWaits();
  must(saveReminderRule(act, RULE));
  wait(30 * DAY);
  await runs(place);
  expect(listOutgoing(act.db, lineId)).toEqual([]);
  for (const { id } of drafts()) must(dropDraft(at(), { lineId, noticeId: id }));
  wait(DAY);
  await runs(place);
  expect(drafts()).toEqual([]);
});

test("the next comes after the days between, and no more than at most", async () => {
  const { act, at, place, wait, drafts, lineId } = aDeskThatWaits();
  must(saveReminderRule(act, RULE));
  const release = () => {
    const noticeIds = drafts().map(({ id }) => id);
    must(sendNotices(at(), { lineId, noticeIds, method: "first-class", sentOn: place.today() }));
    return noticeIds.length;
  };
  const sent: number[] = [];
  for (let week = 0; week < 12; week += 1) {
    wait(7 * DAY);
    await runs(place);
    sent.push(drafts().length === 0 ? 0 : release());
  }
  expect(sent.reduce((sum, each) => sum + each, 0)).toBe(4);
  expect(sent[0]).toBe(2);
});

test("who replied is not reminded", async () => {
  const { act, at, place, wait, drafts, lineId, noticeIds } = aDeskThatWaits();
  must(saveReminderRule(act, RULE));
  wait(5 * DAY);
  must(
    recordReply(at(), {
      ...{ lineId, noticeId: noticeIds[0] ?? "", kind: "agrees", receivedOn: "2026-11-18" },
      ...{ words: "", suitsOn: null, uploadId: null },
    }),
  );
  await runs(place);
  expect(drafts().map(({ partyId }) => partyId)).toEqual(["owner-14"]);
});

test("with sending turned on it is emailed once; who has no address stays on the desk", async () => {
  const { act, place, wait, drafts, lineId } = aDeskThatWaits();
  giveAddress(act, lineId);
  const emails = fileOf(act, lineId).parties.filter(({ id }) =>
    ["owner-12", "owner-14"].includes(id),
  );
  const withAddress = emails.filter(({ email }) => email !== "").length;
  must(saveReminderRule(act, { ...RULE, sends: true }));
  expect(listReminderRules(act.db)).toMatchObject([
    { sends: true, sendsBy: act.actor.name, sendsAt: act.now },
  ]);
  wait(3 * DAY);
  await runs(place);
  await runs({ ...place, worker: "worker-2" });
  expect(withAddress).toBe(1);
  expect(listOutgoing(act.db, lineId)).toHaveLength(withAddress);
  expect(drafts()).toHaveLength(2 - withAddress);
});

test("an emailed reminder carries the link to its reader's page where the office has an address, else none", async () => {
  const mailed = async (address: string | null) => {
    const { act, place, wait, lineId } = aDeskThatWaits();
    giveAddress(act, lineId);
    must(saveReminderRule(act, { ...RULE, sends: true }));
    wait(3 * DAY);
    const peer = await aPeer();
    const here = { ...place, address, smtp: peer.smtp };
    await runs(here);
    while (await sendNextOutgoing(here));
    expect(peer.received).toHaveLength(1);
    return { act, text: peer.received[0]?.text ?? "" };
  };
  const { act, text } = await mailed("https://office.example.com");
  const secret = /https:\/\/office\.example\.com\/n\/([\w-]{43})/.exec(text)?.[1] ?? "";
  expect(openLink(aDoor({ act }), secret)).toMatchObject({
    value: { partyName: "Ottilie Brandvold" },
  });
  for (const dead of [null, "http://localhost:3200"])
    expect((await mailed(dead)).text).not.toContain("/n/");
});

test("a draft that was made before sending was turned on still waits for a release", async () => {
  const { act, at, place, wait, drafts, lineId } = aDeskThatWaits();
  must(saveReminderRule(act, RULE));
  wait(3 * DAY);
  await runs(place);
  must(saveReminderRule(at(), { ...RULE, sends: true }));
  await runs(place);
  expect(drafts()).toHaveLength(2);
  expect(listOutgoing(act.db, lineId)).toEqual([]);
});

test("ended between drafting and sending, the next worker sends what was released, once", async () => {
  const { act, place, wait, lineId, drafts } = aDeskThatWaits();
  giveAddress(act, lineId);
  must(saveReminderRule(act, { ...RULE, sends: true }));
  wait(3 * DAY);
  let ids = 0;
  const dies: Workplace = {
    ...place,
    newId: () => {
      ids += 1;
      if (ids > 3) throw new Error("ended");
      return place.newId();
    },
  };
  await expect(runs(dies)).rejects.toThrow("ended");
  const left = drafts().length;
  await runs(place);
  await runs(place);
  const again = listOutgoing(act.db, lineId).map(({ deliveryId }) => deliveryId);
  expect(again).toHaveLength(1);
  expect(fileOf(act, lineId).notices).toHaveLength(4);
  expect(left).toBe(2);
  expect(drafts()).toHaveLength(1);
});

test("only an admin sets a rule, with numbers that can be, and the history says who", () => {
  const { act } = aDeskThatWaits();
  const clerk = { ...act, actor: { ...act.actor, role: "office" as const } };
  expect(saveReminderRule(clerk, RULE)).toMatchObject({ error: { reason: "not-allowed" } });
  expect(saveReminderRule(act, { ...RULE, every: 0 })).toMatchObject({ error: { path: "every" } });
  expect(saveReminderRule(act, { ...RULE, kind: "spill" })).toMatchObject({
    error: { path: "kind" },
  });
  must(saveReminderRule(act, { ...RULE, sends: true }));
  must(saveReminderRule(act, { ...RULE, most: 0 }));
  expect(listReminderRules(act.db)).toEqual([]);
});
