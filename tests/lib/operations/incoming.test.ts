import { expect, test } from "vitest";
import { getMailbox } from "#db/queries/mailbox.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { nextWay } from "#lib/domain/notices/next-way.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { readIncoming } from "#lib/operations/take-incoming.ts";
import { aMailbox } from "../../support/imap.ts";
import { aBounce, anAnswer } from "../../support/imap-server.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";
import { aPeer } from "../../support/smtp.ts";
import { aWorkplace } from "../../support/workplace.ts";

/** Two letters that went out by email, and the office's mailbox. */
async function aMailedPair(first: readonly string[] = []) {
  const desk = aDesk();
  const { act, lineId } = desk;
  const recipients = ["12", "14"].map((house) => ({
    ...{ partyId: `owner-${house}`, propertyId: house, tieInId: null, splitId: null },
  }));
  const drafts = { lineId, kind: "finding", replyBy: "2026-12-10", recipients } as const;
  const { noticeIds } = must(draftNotices(act, drafts));
  must(sendNotices(act, { lineId, noticeIds, method: "mail-message", sentOn: "2026-11-25" }));
  const peer = await aPeer();
  const mailbox = await aMailbox(first);
  const { place, wait } = aWorkplace(desk, { smtp: peer.smtp, imap: mailbox.imap });
  await sendNextOutgoing(place);
  await sendNextOutgoing(place);
  const sent = listOutgoing(act.db, lineId).map(({ messageId, toAddress }) => ({
    messageId,
    to: toAddress,
  }));
  const look = async () => {
    wait(2);
    await readIncoming(place);
    expect(getMailbox(act.db).problem).toBe("");
  };
  const file = () => fileOf(act, lineId);
  const history = () => fileOf(act, lineId).history.length;
  return { ...desk, mailbox, place, wait, sent, look, file, history };
}

const NONE = { messageId: "<none@example.com>", to: "a@example.com" };

test("a returned email marks its delivery as failed, with the server's words, and offers the next way", async () => {
  const { mailbox, sent, look, file } = await aMailedPair();
  mailbox.add(aBounce(sent[0] ?? NONE));
  await look();
  expect(file().deliveries).toMatchObject([
    {
      outcome: "failed",
      outcomeOn: "2026-11-25",
      note: expect.stringMatching(
        /Returned by the mail server of ottilie@example.com: 5.1.1, 550 .*User unknown/,
      ),
    },
    { outcome: "on-its-way" },
  ]);
  const [notice] = file().notices;
  expect(notice && nextWay(file(), notice)?.method).toBe("first-class");
});

test("an answer by email becomes a reply that waits, without what it quotes", async () => {
  const { mailbox, sent, look, file } = await aMailedPair();
  mailbox.add(anAnswer(sent[1] ?? NONE, { words: "No estoy de acuerdo. ¿Por qué tanto?" }));
  await look();
  expect(file().replies).toMatchObject([
    {
      noticeId: file().deliveries[1]?.noticeId,
      kind: "other",
      receivedOn: "2026-11-25",
      takenBy: "Mailbox",
      words: "Email from jesus@example.org: No estoy de acuerdo. ¿Por qué tanto?",
      dealtBy: "",
    },
  ]);
});

test("what is none of ours is left alone: nothing in the mailbox is marked, moved or removed", async () => {
  const stranger = anAnswer(NONE, { words: "Buy now" });
  const { mailbox, sent, look, file, history } = await aMailedPair([stranger]);
  mailbox.add(aBounce(sent[0] ?? NONE, { action: "delayed" }));
  mailbox.add(aBounce(NONE));
  const away = { words: "I am away", id: "away", headers: ["Auto-Submitted: auto-replied"] };
  mailbox.add(anAnswer(sent[0] ?? NONE, away));
  mailbox.add("no header at all, and no end");
  const [before, entries] = [mailbox.kept(), history()];
  await look();
  expect(file().replies).toEqual([]);
  expect(file().deliveries.map(({ outcome }) => outcome)).toEqual(["on-its-way", "on-its-way"]);
  expect(history()).toBe(entries);
  expect(mailbox.kept()).toEqual(before);
});

test("a message is taken once, however often the mailbox is read and numbered", async () => {
  const { mailbox, sent, look, file } = await aMailedPair();
  mailbox.add(anAnswer(sent[0] ?? NONE, { words: "Yes" }));
  await look();
  await look();
  mailbox.renumber();
  mailbox.add(anAnswer(sent[0] ?? NONE, { words: "And one thing more", id: "answer-2" }));
  await look();
  expect(file().replies.map(({ words }) => words)).toEqual([
    "Email from ottilie@example.com: Yes",
    "Email from ottilie@example.com: And one thing more",
  ]);
});

test("a mailbox that lets nobody in is said, and read once it does", async () => {
  const { mailbox, place, wait, sent, look, file, act } = await aMailedPair();
  mailbox.add(aBounce(sent[0] ?? NONE));
  const wrong = { ...place, imap: { ...mailbox.imap, password: "old" } };
  await readIncoming(wrong);
  expect(getMailbox(act.db)).toMatchObject({ uid: 0, problem: expect.stringMatching(/\w/) });
  const gone = { ...place, imap: { ...mailbox.imap, port: 1 } };
  wait(2);
  await readIncoming(gone);
  expect(getMailbox(act.db).problem).toContain("ECONNREFUSED");
  expect(file().deliveries[0]?.outcome).toBe("on-its-way");
  await look();
  expect(file().deliveries[0]?.outcome).toBe("failed");
});

test("a worker that dies between reading a message and writing what it means takes it the next time", async () => {
  const { mailbox, place, wait, sent, look, file } = await aMailedPair();
  mailbox.add(anAnswer(sent[0] ?? NONE, { words: "Yes" }));
  const dies = {
    ...place,
    newId: () => {
      throw new Error("killed");
    },
  };
  wait(2);
  await readIncoming(dies);
  expect(file().replies).toEqual([]);
  await look();
  expect(file().replies).toHaveLength(1);
});
