import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { listOutgoing } from "#db/queries/outgoing.ts";
import type { Act } from "#lib/operations/act.ts";
import { changeDelivery } from "#lib/operations/change-delivery.ts";
import { chooseSplit } from "#lib/operations/choose-split.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { dropDraft } from "#lib/operations/drop-draft.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";
import { recordDelivery } from "#lib/operations/record-delivery.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { saveNoticeWords } from "#lib/operations/save-notice-words.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { aScopeItem } from "../../support/file.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";

function aRecipient(partyId = "owner-12", propertyId = "12") {
  return { partyId, propertyId, tieInId: null, splitId: null };
}

function drafted(desk: ReturnType<typeof aDesk>, ...recipients: ReturnType<typeof aRecipient>[]) {
  const { act, lineId } = desk;
  return must(draftNotices(act, { lineId, kind: "finding", replyBy: null, recipients })).noticeIds;
}

const TODAY = "2026-11-25";

test("draftNotices() drafts each letter in its reader's language, once", () => {
  const desk = aDesk();
  const [first] = drafted(desk, aRecipient(), aRecipient("owner-14", "14"));
  expect(fileOf(desk.act, desk.lineId).notices.map(({ language }) => language)).toEqual([
    "en",
    "es",
  ]);
  expect(drafted(desk, aRecipient())).toEqual([first]);
  expect(fileOf(desk.act, desk.lineId).notices).toHaveLength(2);
});

test("draftNotices() asks nobody for money where nothing proves that it is owed", () => {
  const { act, lineId } = aDesk();
  const asked = {
    lineId,
    kind: "share-demand",
    replyBy: null,
    recipients: [aRecipient()],
  } as const;
  expect(draftNotices(act, asked)).toMatchObject({ error: { reason: "held" } });
});

test("sendNotices() freezes the letter with its hash, and later changes of facts leave it alone", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeIds = drafted(desk, aRecipient());
  must(
    sendNotices(act, {
      lineId,
      noticeIds,
      method: "certified",
      sentOn: TODAY,
      tracking: { [noticeIds[0] ?? ""]: "9407 5550 1000 0000 0000 04" },
    }),
  );
  const [sent] = fileOf(act, lineId).notices;
  const frozen = sent?.frozen ?? "";
  expect(sent).toMatchObject({ state: "sent", sentAt: act.now });
  expect(sent?.frozenHash).toBe(createHash("sha256").update(frozen).digest("hex"));
  expect(JSON.parse(frozen)).toMatchObject({ kind: "finding", day: TODAY });
  expect(fileOf(act, lineId).deliveries).toMatchObject([
    {
      noticeId: sent?.id,
      method: "certified",
      sentOn: TODAY,
      tracking: "9407 5550 1000 0000 0000 04",
      outcome: "on-its-way",
    },
  ]);
  const { parties } = fileOf(act, lineId);
  const renamed = parties.map((party) => ({ ...party, name: `${party.name} II` }));
  must(saveRows(act, { lineId, table: "parties", base: 1, rows: renamed }));
  expect(fileOf(act, lineId).notices[0]?.frozen).toBe(frozen);
});

test("what was sent can't be sent again, reworded or dropped", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const [noticeId = ""] = drafted(desk, aRecipient());
  const sending = { lineId, noticeIds: [noticeId], method: "certified", sentOn: TODAY } as const;
  must(sendNotices(act, sending));
  const frozen = { error: { reason: "frozen" } };
  expect(sendNotices(act, sending)).toMatchObject(frozen);
  expect(saveNoticeWords(act, { lineId, noticeId, ownWords: "x", replyBy: null })).toMatchObject(
    frozen,
  );
  expect(dropDraft(act, { lineId, noticeId })).toMatchObject(frozen);
});

test("sendNotices() sends all or none: one letter without a mail address stops the others", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeIds = drafted(desk, aRecipient(), aRecipient("owner-16", "16"));
  const sent = sendNotices(act, { lineId, noticeIds, method: "mail-message", sentOn: TODAY });
  expect(sent).toMatchObject({
    error: {
      reason: "missing-value",
      detail:
        "No email address on file for Larkspur Holdings LLC; enter one, or send the letter another way",
    },
  });
  expect(fileOf(act, lineId).notices.every(({ state }) => state === "draft")).toBe(true);
  expect(listOutgoing(act.db, lineId)).toEqual([]);
});

test("sendNotices() puts a mail message into the outbox in the same step", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeIds = drafted(desk, aRecipient());
  must(sendNotices(act, { lineId, noticeIds, method: "mail-message", sentOn: TODAY }));
  const [outgoing, ...others] = listOutgoing(act.db, lineId);
  expect(others).toEqual([]);
  expect(outgoing).toMatchObject({
    noticeId: noticeIds[0],
    toAddress: "ottilie@example.com",
    state: "waiting",
    attempts: 0,
  });
  expect(outgoing?.messageId).toMatch(/^<[A-Za-z0-9.-]+@example\.com>$/);
  expect(outgoing?.text).toContain("Ottilie Brandvold");
});

test("sendNotices() refuses a day that has not come", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeIds = drafted(desk, aRecipient());
  const sending = { lineId, noticeIds, method: "certified" } as const;
  expect(sendNotices(act, { ...sending, sentOn: "2026-11-26" })).toMatchObject({
    error: { reason: "bad-value", path: "sentOn" },
  });
  expect(sendNotices(act, { ...sending, sentOn: "soon" })).toMatchObject({
    error: { reason: "bad-value", path: "sentOn" },
  });
});

test("sendNotices() holds an agreement back while an undocumented tie-in is open", () => {
  const desk = aDesk({ undocumented: true });
  const { act, lineId } = desk;
  const { noticeIds } = must(
    draftNotices(act, {
      lineId,
      kind: "joint-agreement",
      replyBy: null,
      recipients: [aRecipient()],
    }),
  );
  const sent = sendNotices(act, { lineId, noticeIds, method: "certified", sentOn: TODAY });
  expect(sent).toMatchObject({ error: { reason: "held" } });
  expect(fileOf(act, lineId).notices[0]?.state).toBe("draft");
});

test("saveRows() refuses to remove a party that a letter was sent to, and says so", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeIds = drafted(desk, aRecipient());
  must(sendNotices(act, { lineId, noticeIds, method: "certified", sentOn: TODAY }));
  must(saveRows(act, { lineId, table: "roles", base: 1, rows: [] }));
  expect(saveRows(act, { lineId, table: "parties", base: 1, rows: [] })).toMatchObject({
    error: {
      reason: "in-use",
      by: expect.stringContaining("is named by letter to Ottilie Brandvold"),
    },
  });
});

test("recordDelivery() sends the same letter once more; changeDelivery() says what became of it", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const [noticeId = ""] = drafted(desk, aRecipient());
  const again = {
    lineId,
    noticeId,
    method: "mail-message",
    sentOn: TODAY,
    tracking: "",
    note: "",
  } as const;
  expect(recordDelivery(act, again)).toMatchObject({ error: { reason: "not-in-this-state" } });
  must(
    sendNotices(act, { lineId, noticeIds: [noticeId], method: "certified", sentOn: "2026-11-20" }),
  );
  must(recordDelivery(act, again));
  expect(listOutgoing(act.db, lineId)).toHaveLength(1);
  const [first] = fileOf(act, lineId).deliveries;
  const change = {
    lineId,
    deliveryId: first?.id ?? "",
    outcome: "returned",
    outcomeOn: "2026-11-19",
    tracking: "9407 5550 1000 0000 0000 11",
    note: "Box closed",
    proofUploadId: null,
  } as const;
  expect(changeDelivery(act, change)).toMatchObject({
    error: { path: "outcomeOn", detail: "It was only sent on November 20, 2026" },
  });
  expect(changeDelivery(act, { ...change, outcomeOn: null })).toMatchObject({
    error: { reason: "missing-value", path: "outcomeOn" },
  });
  must(changeDelivery(act, { ...change, outcomeOn: "2026-11-24" }));
  expect(fileOf(act, lineId).deliveries[0]).toMatchObject({
    outcome: "returned",
    outcomeOn: "2026-11-24",
    note: "Box closed",
  });
});

test("recordReply() takes answers to what was sent, not to drafts", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const [noticeId = ""] = drafted(desk, aRecipient());
  const reply = {
    lineId,
    noticeId,
    kind: "asks",
    receivedOn: TODAY,
    words: "Why?",
    uploadId: null,
  } as const;
  expect(recordReply(act, reply)).toMatchObject({ error: { reason: "not-in-this-state" } });
  must(sendNotices(act, { lineId, noticeIds: [noticeId], method: "by-hand", sentOn: TODAY }));
  must(recordReply(act, reply));
  expect(fileOf(act, lineId).replies).toMatchObject([{ kind: "asks", takenBy: "Dana Okafor" }]);
});

test("recordConsent() ties a signature to pay to the amount of the version that was put to the person", () => {
  const { act, lineId } = aDesk();
  must(
    saveRows(act, {
      lineId,
      table: "scope",
      base: 0,
      rows: [
        aScopeItem("s", { place: "general", from: null, to: null, quantity: 100, rate: 10_000 }),
      ],
    }),
  );
  const choice = {
    rule: "equal",
    faultStation: null,
    payerId: null,
    unknownShares: "carried",
  } as const;
  const { splitId } = must(chooseSplit(act, { lineId, choice, reason: "All agree" }));
  const share = fileOf(act, lineId).splits[0]?.shares.find(({ propertyId }) => propertyId === "12");
  const consent = {
    lineId,
    kind: "pay",
    partyId: "owner-12",
    propertyId: "12",
    state: "given",
    stateOn: TODAY,
    splitId,
    amount: share?.amount ?? null,
    recordingNumber: "",
    uploadId: null,
    note: "",
  } as const;
  expect(recordConsent(act, { ...consent, amount: (share?.amount ?? 0) + 1 })).toMatchObject({
    error: {
      reason: "bad-value",
      path: "amount",
      detail: expect.stringContaining("Version 1 asks"),
    },
  });
  expect(recordConsent(act, { ...consent, splitId: null })).toMatchObject({
    error: { reason: "missing-value", path: "splitId" },
  });
  must(recordConsent(act, consent));
  must(recordConsent(act, { ...consent, note: "Paper found" }));
  must(recordConsent(act, { ...consent, state: "withdrawn" }));
  expect(fileOf(act, lineId).consents.map(({ state, note }) => [state, note])).toEqual([
    ["given", "Paper found"],
    ["withdrawn", ""],
  ]);
});

test("chooseSplit() freezes numbered versions and refuses a rule that can't be worked out", () => {
  const { act, lineId } = aDesk();
  const choice = {
    rule: "single-payer",
    faultStation: null,
    payerId: null,
    unknownShares: "carried",
  } as const;
  expect(chooseSplit(act, { lineId, choice, reason: "x" })).toMatchObject({
    error: { reason: "bad-value", path: "rule" },
  });
  must(
    saveRows(act, {
      lineId,
      table: "scope",
      base: 0,
      rows: [
        aScopeItem("s", { place: "general", from: null, to: null, quantity: 100, rate: 10_001 }),
      ],
    }),
  );
  const equal = { ...choice, rule: "equal" } as const;
  must(chooseSplit(act, { lineId, choice: equal, reason: "First" }));
  must(chooseSplit(act, { lineId, choice: equal, reason: "Second" }));
  const { splits } = fileOf(act, lineId);
  expect(splits.map(({ number, total }) => [number, total])).toEqual([
    [1, 10_001],
    [2, 10_001],
  ]);
  const sum = splits[0]?.shares.reduce((total, { amount }) => total + amount, 0);
  expect(sum).toBe(10_001);
});

/** A finding that asks for no answer by any day: a gap in every office. */
function lacking(desk: ReturnType<typeof aDesk>) {
  const { act, lineId } = desk;
  const recipients = [aRecipient()];
  const kind = "tie-in-inquiry";
  const tieInId = fileOf(act, lineId).tieIns[0]?.id ?? null;
  const asked = recipients.map((each) => ({ ...each, tieInId }));
  const { noticeIds } = must(draftNotices(act, { lineId, kind, replyBy: null, recipients: asked }));
  return { lineId, noticeIds, method: "first-class", sentOn: TODAY } as const;
}

test("sendNotices() refuses a letter that still lacks something, and says what", () => {
  const desk = aDesk();
  const sending = lacking(desk);
  expect(sendNotices(desk.act, sending)).toMatchObject({
    error: {
      reason: "missing-value",
      path: "despite",
      detail: expect.stringContaining("No reply-by date is set"),
    },
  });
  expect(fileOf(desk.act, desk.lineId).notices[0]?.state).toBe("draft");
  expect(sendNotices(desk.act, { ...sending, despite: "  " }).ok).toBe(false);
});

test("the office can't send what lacks something, whatever the reason", () => {
  const desk = aDesk();
  const sending = { ...lacking(desk), despite: "They asked to have it today" };
  expect(sendNotices(desk.act, sending)).toMatchObject({
    error: { reason: "missing-value", detail: expect.stringContaining("only an admin") },
  });
  expect(fileOf(desk.act, desk.lineId).notices[0]?.state).toBe("draft");
});

test("an admin may send it all the same; what it lacked and why stand in the history", () => {
  const desk = aDesk();
  const { act } = desk;
  const admin: Act = { ...act, actor: { ...act.actor, role: "admin" } };
  must(sendNotices(admin, { ...lacking(desk), despite: "They asked to have it today" }));
  const entry = fileOf(desk.act, desk.lineId).history.at(-1);
  expect(entry?.sentence).toContain("Sent incomplete, because: They asked to have it today");
  expect(entry?.detail).toContain("No reply-by date is set");
  expect(entry?.by).toBe(desk.act.actor.name);
});

test("a reason is not written down where nothing was lacking", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const { noticeIds } = must(
    draftNotices(act, {
      lineId,
      kind: "finding",
      replyBy: "2026-12-09",
      recipients: [aRecipient()],
    }),
  );
  const sending = { lineId, noticeIds, method: "first-class", sentOn: TODAY } as const;
  must(sendNotices(act, { ...sending, despite: "In a hurry" }));
  expect(fileOf(act, lineId).history.at(-1)?.sentence).not.toContain("In a hurry");
});
