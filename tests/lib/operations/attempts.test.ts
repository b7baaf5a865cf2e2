import { expect, test } from "vitest";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { recordDelivery } from "#lib/operations/record-delivery.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";

function aLetter() {
  const { act, lineId } = aDesk();
  const to = { partyId: "owner-12", propertyId: "12", tieInId: null, splitId: null };
  const draft = { lineId, kind: "finding", replyBy: "2026-12-10", recipients: [to] } as const;
  const [noticeId = ""] = must(draftNotices(act, draft)).noticeIds;
  return { act, lineId, noticeId };
}

const ATTEMPT = { method: "posted", sentOn: "2026-11-25", tracking: "", note: "" } as const;

test("an attempt says who did it, when, where and into whose hands; who records it is in the history", () => {
  const { act, lineId, noticeId } = aLetter();
  must(
    sendNotices(act, { lineId, noticeIds: [noticeId], method: "certified", sentOn: "2026-11-20" }),
  );
  const attempt = { lineId, noticeId, ...ATTEMPT, method: "by-hand" } as const;
  const done = { doneBy: "Marcus Reyes", at: "16:05", place: "Front door", handedTo: "Her son" };
  must(recordDelivery(act, { ...attempt, ...done }));
  must(recordDelivery(act, attempt));
  expect(fileOf(act, lineId).deliveries.slice(1)).toMatchObject([
    { by: "Marcus Reyes", at: "16:05", place: "Front door", handedTo: "Her son" },
    { by: "Dana Okafor", at: "", place: "", handedTo: "" },
  ]);
});

test("what can't be a certified mail number is refused beside it, also when drafts are sent", () => {
  const { act, lineId, noticeId } = aLetter();
  const sending = {
    lineId,
    noticeIds: [noticeId],
    method: "certified",
    sentOn: "2026-11-20",
  } as const;
  expect(sendNotices(act, { ...sending, tracking: { [noticeId]: "CM-12" } })).toMatchObject({
    error: { reason: "bad-value", path: noticeId, detail: expect.stringContaining("20 or 22") },
  });
  must(sendNotices(act, { ...sending, tracking: { [noticeId]: "9407 5550 1000 0000 0000 04" } }));
  const attempt = { lineId, noticeId, ...ATTEMPT, method: "certified", tracking: "9407" } as const;
  expect(recordDelivery(act, attempt)).toMatchObject({ error: { path: "tracking" } });
});

test("a notice that was posted says where", () => {
  const { act, lineId, noticeId } = aLetter();
  must(
    sendNotices(act, { lineId, noticeIds: [noticeId], method: "certified", sentOn: "2026-11-20" }),
  );
  const posted = { lineId, noticeId, ...ATTEMPT };
  expect(recordDelivery(act, posted)).toMatchObject({ error: { path: "place" } });
  must(recordDelivery(act, { ...posted, place: "Front door of 12" }));
});
