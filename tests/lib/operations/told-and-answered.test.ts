import { expect, test } from "vitest";
import { listJobs } from "#db/queries/job.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { replyThings } from "#lib/domain/desk/reply-things.ts";
import { nextWay } from "#lib/domain/notices/next-way.ts";
import { chaseList } from "#lib/domain/notices/told.ts";
import { dealWithReply } from "#lib/operations/deal-with-reply.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { recordDelivery } from "#lib/operations/record-delivery.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { readIncoming } from "#lib/operations/take-incoming.ts";
import { readStored } from "#lib/storage/store.ts";
import { aParty, aProperty, aRole } from "../../support/file.ts";
import { aMailbox } from "../../support/imap.ts";
import { aBounce, anAnswer } from "../../support/imap-server.ts";
import { aDesk, addRows, fileOf, must } from "../../support/office.ts";
import { readPdf } from "../../support/pdf.ts";
import { aPeer } from "../../support/smtp.ts";
import { aWorkplace } from "../../support/workplace.ts";

const HOUSES = ["18", "20", "22", "24", "26", "28", "30", "32", "34"];
const NONE = { messageId: "<none@example.com>", to: "a@example.com" };

/** Twelve owners of twelve houses, every other one in Spanish; the last three have no email. */
function twelve() {
  const desk = aDesk();
  const { act, lineId } = desk;
  const add = (table: "properties" | "parties" | "roles", rows: readonly object[]) =>
    addRows(act, { lineId, table }, rows);
  add(
    "properties",
    HOUSES.map((house) => aProperty(house)),
  );
  add(
    "parties",
    HOUSES.map((house, at) =>
      aParty(`owner-${house}`, {
        name: `Owner of ${house}`,
        email: at < 7 ? `owner-${house}@example.com` : "",
        language: at % 2 === 0 ? "es" : "en",
      }),
    ),
  );
  add(
    "roles",
    HOUSES.map((house) => aRole(`owner-${house}`, house)),
  );
  return desk;
}

test("a letter to twelve owners in two languages, by email and mail: a refusal, a bounce, an objection and a question are each dealt with, and what was done is declared", async () => {
  const desk = twelve();
  const { act, lineId } = desk;
  const file = () => fileOf(act, lineId);
  const recipients = ["12", "14", "16", ...HOUSES].map((house) => ({
    ...{ partyId: `owner-${house}`, propertyId: house, tieInId: null, splitId: null },
  }));
  const drafts = { lineId, kind: "finding", replyBy: "2026-12-10", recipients } as const;
  must(draftNotices(act, drafts));
  const addressed = (partyId: string) =>
    file().parties.find(({ id }) => id === partyId)?.email !== "";
  const mailed = file().notices.filter(({ partyId }) => addressed(partyId));
  const posted = file().notices.filter(({ partyId }) => !addressed(partyId));
  expect([mailed.length, posted.length]).toEqual([9, 3]);
  const ids = (notices: typeof mailed) => notices.map(({ id }) => id);
  const sentOn = act.today;
  must(sendNotices(act, { lineId, noticeIds: ids(mailed), method: "mail-message", sentOn }));
  must(sendNotices(act, { lineId, noticeIds: ids(posted), method: "first-class", sentOn }));

  // The server refuses the first reader for good.
  const peer = await aPeer([550]);
  const mailbox = await aMailbox();
  const { place, wait } = aWorkplace(desk, { smtp: peer.smtp, imap: mailbox.imap });
  while (await sendNextOutgoing(place));
  expect(peer.received).toHaveLength(8);
  const named = peer.received.map(({ attachments }) => attachments[0]?.filename);
  expect(new Set(named).size).toBe(2);
  const sent = listOutgoing(act.db, lineId)
    .filter(({ state }) => state === "sent")
    .map(({ messageId, toAddress }) => ({ messageId, to: toAddress }));
  mailbox.add(aBounce(sent[1] ?? NONE));
  mailbox.add(anAnswer(sent[2] ?? NONE, { words: "When will you dig?" }));
  wait(2);
  await readIncoming(place);

  // What came back is gone after, another way.
  const back = chaseList(file(), act.today).filter(({ reason }) => reason === "came-back");
  expect(back).toHaveLength(2);
  for (const { noticeId } of back) {
    const notice = file().notices.find(({ id }) => id === noticeId);
    const next = notice && nextWay(file(), notice);
    expect(next?.method).toBe("first-class");
    const again = { lineId, noticeId, sentOn, tracking: "", note: "" };
    must(recordDelivery(act, { ...again, method: "first-class" }));
  }
  expect(chaseList(file(), act.today).some(({ reason }) => reason === "came-back")).toBe(false);

  // A question by email and an objection by phone wait on the desk until somebody dealt with each.
  const [paper] = posted;
  const objection = { lineId, noticeId: paper?.id ?? "", receivedOn: act.today, uploadId: null };
  must(recordReply(act, { ...objection, kind: "disagrees", words: "Not my pipe" }));
  const waiting = () => replyThings(file(), act.today).map(({ sentence }) => sentence);
  expect(waiting()).toHaveLength(2);
  expect(waiting().join(" ")).toMatch(/When will you dig\?.*objects|objects.*When will you dig\?/);
  for (const { id } of file().replies) {
    const dealt = { lineId, replyId: id, how: "called-back", on: act.today } as const;
    must(dealWithReply(act, { ...dealt, words: "Called and explained it" }));
  }
  expect(waiting()).toEqual([]);

  // The one who did it declares it: all but the emails that a server refused or gave back.
  const subjectIds = file().deliveries.map(({ id }) => id);
  expect(subjectIds).toHaveLength(14);
  const { jobId } = must(startJob(act, { lineId, kind: "declaration", subjectIds }));
  await runNextJob(place);
  const job = listJobs(act.db, lineId).find(({ id }) => id === jobId);
  const upload = file().uploads.find(({ id }) => id === job?.uploadId);
  const pdf = readPdf(readStored(act.dataFolder, upload?.sha256 ?? "") ?? new Uint8Array());
  pdf.check();
  const text = pdf.text().replaceAll(/\s+/g, " ");
  expect(text.match(/Sent by email/g)).toHaveLength(7);
  expect(text.match(/Mailed by first-class mail/g)).toHaveLength(5);
});
