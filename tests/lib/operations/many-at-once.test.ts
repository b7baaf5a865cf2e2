import { expect, test } from "vitest";
import { remindersDue } from "#lib/domain/paper/reminder.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { changeDeliveries } from "#lib/operations/change-deliveries.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { draftReminders } from "#lib/operations/draft-reminders.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";

const SENT = "2026-11-02";
const REPLY_BY = "2026-11-16";
const HOUSES = ["12", "14", "16"] as const;

/** Three findings mailed by certified mail, to be answered in two weeks; today is past that. */
function aDeskOfLetters(method: "certified" | "first-class" = "certified") {
  const { act, lineId } = aDesk();
  const recipients = HOUSES.map((house) => ({
    partyId: `owner-${house}`,
    propertyId: house,
    tieInId: null,
    splitId: null,
  }));
  const then = { ...act, today: SENT, now: `${SENT}T18:00:00.000Z` };
  const drafting = { lineId, kind: "finding", replyBy: REPLY_BY, recipients } as const;
  const { noticeIds } = must(draftNotices(then, drafting));
  const sending = { lineId, noticeIds, method, sentOn: SENT } as const;
  const { deliveryIds } = must(sendNotices(then, sending));
  return { act, lineId, noticeIds, deliveryIds };
}

const DELIVERED = {
  outcome: "delivered",
  outcomeOn: "2026-11-05",
  tracking: {},
  proofUploadId: null,
} as const;

test("changeDeliveries() records one result for all that are chosen, each with its own number", () => {
  const { act, lineId, deliveryIds } = aDeskOfLetters();
  const [first = "", second = ""] = deliveryIds;
  const tracking = {
    [first]: "9407 5550 1000 0000 0000 04",
    [second]: "9407 5550 1000 0000 0000 11",
  };
  const changed = { lineId, deliveryIds: [first, second], ...DELIVERED, tracking };
  expect(must(changeDeliveries(act, changed))).toEqual({ count: 2 });
  expect(fileOf(act, lineId).deliveries).toMatchObject([
    { outcome: "delivered", outcomeOn: "2026-11-05", tracking: "9407 5550 1000 0000 0000 04" },
    { outcome: "delivered", outcomeOn: "2026-11-05", tracking: "9407 5550 1000 0000 0000 11" },
    { outcome: "on-its-way", outcomeOn: null },
  ]);
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toMatch(
    /^Recorded as delivered on November 5, 2026: .*Brandvold.*, .*Peña/,
  );
});

test("changeDeliveries() records all or none, and names the one that is in the way", () => {
  const { act, lineId, deliveryIds } = aDeskOfLetters();
  must(changeDeliveries(act, { lineId, deliveryIds: deliveryIds.slice(1, 2), ...DELIVERED }));
  const again = changeDeliveries(act, { lineId, deliveryIds, ...DELIVERED });
  expect(again).toMatchObject({ error: { reason: "not-in-this-state" } });
  expect(again).toMatchObject({ error: { detail: expect.stringContaining("Peña") } });
  expect(fileOf(act, lineId).deliveries.map(({ outcome }) => outcome)).toEqual([
    "on-its-way",
    "delivered",
    "on-its-way",
  ]);
});

test("changeDeliveries() calls nothing delivered that its way can't show", () => {
  const { act, lineId, deliveryIds } = aDeskOfLetters("first-class");
  expect(changeDeliveries(act, { lineId, deliveryIds, ...DELIVERED })).toMatchObject({
    error: { path: "outcome", detail: expect.stringContaining("No one signs for it") },
  });
  const early = { ...DELIVERED, outcome: "returned", outcomeOn: "2026-11-01" } as const;
  expect(changeDeliveries(act, { lineId, deliveryIds, ...early })).toMatchObject({
    error: { path: "outcomeOn" },
  });
  const none = { ...DELIVERED, outcomeOn: null };
  expect(changeDeliveries(act, { lineId, deliveryIds, ...none })).toMatchObject({ ok: false });
  expect(changeDeliveries(act, { lineId, deliveryIds: [], ...DELIVERED })).toMatchObject({
    error: { reason: "missing-value" },
  });
});

test("draftReminders() drafts the same letter again to everyone whose reply is past due", () => {
  const { act, lineId, noticeIds } = aDeskOfLetters();
  must(
    recordReply(act, {
      ...{ lineId, noticeId: noticeIds[0] ?? "", kind: "agrees", receivedOn: "2026-11-10" },
      ...{ words: "", suitsOn: null, uploadId: null },
    }),
  );
  const drafted = must(draftReminders(act, { lineId }));
  const drafts = fileOf(act, lineId).notices.filter(({ id }) => drafted.noticeIds.includes(id));
  // As many days again as the first letter gave: no rule of an authority says otherwise.
  expect(drafts).toMatchObject([
    { kind: "finding", partyId: "owner-14", language: "es", replyBy: "2026-12-09", state: "draft" },
    { kind: "finding", partyId: "owner-16", language: "en", replyBy: "2026-12-09", state: "draft" },
  ]);
  expect(drafts[0]?.ownWords).toMatch(
    /^Segundo aviso\. Le escribimos el 2 de noviembre de 2026 .* el 16 de noviembre de 2026/,
  );
  expect(drafts[1]?.ownWords).toMatch(
    /^Second notice\. We wrote to you on November 2, 2026 .* by November 16, 2026/,
  );
  expect(draftReminders(act, { lineId })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
});

test("remindersDue() reminds nobody before the day, nor of an amount that is out of date", () => {
  const { act, lineId } = aDeskOfLetters();
  const file = fileOf(act, lineId);
  expect(remindersDue(file, reportOn(file, REPLY_BY))).toEqual([]);
  expect(remindersDue(file, reportOn(file, "2026-11-17"))).toHaveLength(3);
  const old = file.notices.map((notice) => ({
    ...notice,
    kind: "proposed-split" as const,
    splitId: "split-of-before",
  }));
  const later = { ...file, notices: old };
  expect(remindersDue(later, reportOn(later, "2026-11-17"))).toEqual([]);
});
