import { expect, test } from "vitest";
import { changeDelivery } from "#lib/operations/change-delivery.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { numberDeliveries } from "#lib/operations/number-deliveries.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";

// The sums of check digits are from memory (tests/lib/domain/notices/tracking.test.ts).
const FIRST = "9407555010000000000004";
const SECOND = "RR473124829CY";

function twoOut(method: "certified" | "first-class" = "certified") {
  const { act, lineId } = aDesk();
  const recipients = ["12", "14"].map((house) => ({
    ...{ partyId: `owner-${house}`, propertyId: house, tieInId: null, splitId: null },
  }));
  const drafts = { lineId, kind: "finding", replyBy: "2026-12-10", recipients } as const;
  const { noticeIds } = must(draftNotices(act, drafts));
  const sent = must(sendNotices(act, { lineId, noticeIds, method, sentOn: act.today }));
  const numbers = () => fileOf(act, lineId).deliveries.map(({ tracking }) => tracking);
  const [one = "", other = ""] = sent.deliveryIds;
  return { act, lineId, one, other, numbers };
}

test("numbers of certified mail are entered in one press, and the history names each", () => {
  const { act, lineId, one, other, numbers } = twoOut();
  const typed = { lineId, numbers: { [one]: " 9407 5550 1000 0000 0000 04 ", [other]: SECOND } };
  expect(must(numberDeliveries(act, typed))).toEqual({ count: 2 });
  expect(numbers()).toEqual(["9407 5550 1000 0000 0000 04", SECOND]);
  expect(must(numberDeliveries(act, typed))).toEqual({ count: 0 });
  const told = act.db.$client
    .prepare("select sentence from history where action = 'number-deliveries'")
    .pluck()
    .all();
  expect(told).toHaveLength(1);
  expect(told[0]).toContain("9407 5550 1000 0000 0000 04");
});

test("one that can't be a number is refused beside it, and none is entered; a wrong digit is left to the office", () => {
  const { act, lineId, one, other, numbers } = twoOut();
  const typed = { [one]: FIRST, [other]: "9407" };
  expect(numberDeliveries(act, { lineId, numbers: typed })).toMatchObject({
    error: { path: other, detail: expect.stringContaining("20 or 22") },
  });
  expect(numbers()).toEqual(["", ""]);
  must(numberDeliveries(act, { lineId, numbers: { [one]: "9407555010000000000005" } }));
});

test("one number stands at one piece of mail, however it is spaced; two that were swapped can be put right", () => {
  const { act, lineId, one, other, numbers } = twoOut();
  const same = { [one]: FIRST, [other]: "9407 5550 1000 0000 0000 04" };
  expect(numberDeliveries(act, { lineId, numbers: same })).toMatchObject({
    error: { path: one, detail: expect.stringContaining("Jesús") },
  });
  must(numberDeliveries(act, { lineId, numbers: { [one]: FIRST, [other]: SECOND } }));
  expect(numberDeliveries(act, { lineId, numbers: { [other]: FIRST } }).ok).toBe(false);
  must(numberDeliveries(act, { lineId, numbers: { [one]: SECOND, [other]: FIRST } }));
  expect(numbers()).toEqual([SECOND, FIRST]);
});

test("mail of another kind, and one whose result is recorded, take none", () => {
  const plain = twoOut("first-class");
  const numbers = { [plain.one]: FIRST };
  expect(numberDeliveries(plain.act, { lineId: plain.lineId, numbers }).ok).toBe(false);
  const { act, lineId, one } = twoOut();
  must(
    changeDelivery(act, {
      ...{ lineId, deliveryId: one, outcome: "unclaimed", outcomeOn: act.today },
      ...{ tracking: FIRST, note: "", proofUploadId: null },
    }),
  );
  expect(numberDeliveries(act, { lineId, numbers: { [one]: SECOND } }).ok).toBe(false);
});
