import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { getJob, jobQueue } from "#db/queries/job.ts";
import { listOutgoing, outgoingQueue } from "#db/queries/outgoing.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { storedPath } from "#lib/storage/store.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";
import { aPeer } from "../../support/smtp.ts";
import { tamper } from "../../support/tamper.ts";
import { aWorkplace } from "../../support/workplace.ts";

type Desk = ReturnType<typeof aDesk>;

function mailOne({ act, lineId }: Desk, partyId = "owner-14", propertyId = "14"): string {
  const recipients = [{ partyId, propertyId, tieInId: null, splitId: null }];
  const { noticeIds } = must(
    draftNotices(act, { lineId, kind: "finding", replyBy: "2026-12-10", recipients }),
  );
  must(sendNotices(act, { lineId, noticeIds, method: "mail-message", sentOn: "2026-11-25" }));
  return noticeIds[0] ?? "";
}

test("sendNextOutgoing() mails the frozen letter as text and PDF, as the receiver reads it", async () => {
  const desk = aDesk();
  const peer = await aPeer();
  const { place } = aWorkplace(desk, { smtp: peer.smtp });
  mailOne(desk);
  expect(await sendNextOutgoing(place)).toBe(true);
  expect(await sendNextOutgoing(place)).toBe(false);
  const [mail] = peer.received;
  const [outgoing] = listOutgoing(desk.act.db, desk.lineId);
  expect(mail?.from?.value).toEqual([
    { name: "Bellwether Drain and Sewer", address: "office@example.com" },
  ]);
  expect(mail?.to).toMatchObject({ value: [{ name: "Jesús Peña", address: "jesus@example.org" }] });
  expect(mail?.messageId).toBe(outgoing?.messageId);
  expect(mail?.html).toBe(false);
  expect(mail?.text?.trim()).toBe(outgoing?.text.trim());
  expect(mail?.headers.get("auto-submitted")).toBe("auto-generated");
  const [paper, ...others] = mail?.attachments ?? [];
  expect(others).toEqual([]);
  expect(paper?.contentType).toBe("application/pdf");
  // Jesús Peña reads Spanish: so does the name of what is attached.
  expect(paper?.filename).toBe(
    "Bellwether-Drain-and-Sewer-Lo-que-vio-la-cámara-en-el-desagüe-compartido.pdf",
  );
  expect(mail?.headers.has("x-mailer")).toBe(false);
  // The paper that went is the paper that is kept with the letter.
  const file = fileOf(desk.act, desk.lineId);
  const upload = file.uploads.find(({ id }) => id === file.notices[0]?.uploadId);
  expect(
    createHash("sha256")
      .update(paper?.content ?? "")
      .digest("hex"),
  ).toBe(upload?.sha256);
  expect(outgoing).toMatchObject({ state: "sent", attempts: 1 });
  expect(file.deliveries[0]).toMatchObject({
    outcome: "on-its-way",
    tracking: outgoing?.messageId,
    note: expect.stringContaining("250"),
  });
});

// RFC 5322 2.1.1 and RFC 2045 6.8, from memory: lines end CRLF, at most 998 octets.
test("sendNextOutgoing() writes lines that every mail server takes", async () => {
  const desk = aDesk();
  const peer = await aPeer();
  mailOne(desk);
  await sendNextOutgoing(aWorkplace(desk, { smtp: peer.smtp }).place);
  const lines = (peer.raw[0] ?? Buffer.alloc(0)).toString("latin1").split("\r\n");
  expect(lines.length).toBeGreaterThan(20);
  expect(lines.filter((line) => line.length > 998 || line.includes("\n"))).toEqual([]);
});

test("sendNextOutgoing() tries again later what the server puts off, with the same Message-ID", async () => {
  const desk = aDesk();
  const peer = await aPeer([451, 421]);
  const { place, wait } = aWorkplace(desk, { smtp: peer.smtp });
  mailOne(desk);
  await sendNextOutgoing(place);
  expect(listOutgoing(desk.act.db, desk.lineId)).toMatchObject([
    { state: "waiting", attempts: 1, problem: expect.stringContaining("451") },
  ]);
  expect(await sendNextOutgoing(place)).toBe(false);
  wait(2);
  await sendNextOutgoing(place);
  expect(listOutgoing(desk.act.db, desk.lineId)).toMatchObject([{ state: "waiting", attempts: 2 }]);
  wait(3);
  expect(await sendNextOutgoing(place)).toBe(false);
  wait(1);
  await sendNextOutgoing(place);
  const [outgoing] = listOutgoing(desk.act.db, desk.lineId);
  expect(outgoing).toMatchObject({ state: "sent", attempts: 3 });
  expect(peer.received.map(({ messageId }) => messageId)).toEqual([outgoing?.messageId]);
});

test("sendNextOutgoing() marks the delivery as failed when the server refuses for good", async () => {
  const desk = aDesk();
  const peer = await aPeer([550]);
  const { place, wait } = aWorkplace(desk, { smtp: peer.smtp });
  mailOne(desk);
  await sendNextOutgoing(place);
  wait(24 * 60);
  expect(await sendNextOutgoing(place)).toBe(false);
  expect(listOutgoing(desk.act.db, desk.lineId)).toMatchObject([{ state: "failed", attempts: 1 }]);
  expect(fileOf(desk.act, desk.lineId).deliveries).toMatchObject([
    {
      outcome: "failed",
      outcomeOn: "2026-11-25",
      note: expect.stringContaining("550"),
    },
  ]);
  expect(fileOf(desk.act, desk.lineId).history.at(-1)?.sentence).toContain("failed: 550");
});

test("sendNextOutgoing() gives up after ten tries when nobody answers", async () => {
  const desk = aDesk();
  const nobody = { host: "127.0.0.1", port: 1, user: "", password: "" };
  const { place, wait } = aWorkplace(desk, { smtp: nobody });
  mailOne(desk);
  for (let tries = 0; tries < 10; tries += 1) {
    expect(await sendNextOutgoing(place)).toBe(true);
    wait(6 * 60);
  }
  expect(await sendNextOutgoing(place)).toBe(false);
  expect(listOutgoing(desk.act.db, desk.lineId)).toMatchObject([
    { state: "failed", problem: expect.stringContaining("Given up after 10 tries") },
  ]);
  expect(fileOf(desk.act, desk.lineId).deliveries[0]?.outcome).toBe("failed");
});

test("a message whose worker died is taken over when its lease is over, and not before", async () => {
  const desk = aDesk();
  const peer = await aPeer();
  const dead = aWorkplace(desk, { worker: "dead" });
  const { place, wait } = aWorkplace(desk, { smtp: peer.smtp });
  mailOne(desk);
  const now = dead.place.now();
  const until = new Date(Date.parse(now) + 120_000).toISOString();
  expect(
    outgoingQueue.claim(desk.act.db, { worker: "dead", now, until, latest: until }),
  ).not.toBeNull();
  expect(await sendNextOutgoing(place)).toBe(false);
  wait(3);
  expect(await sendNextOutgoing(place)).toBe(true);
  expect(peer.received).toHaveLength(1);
  expect(listOutgoing(desk.act.db, desk.lineId)).toMatchObject([{ state: "sent", attempts: 2 }]);
});

test("a delivery says that its message may have gone twice, also when the next try is put off", async () => {
  const desk = aDesk();
  const peer = await aPeer([451]);
  const dead = aWorkplace(desk, { worker: "dead" });
  const { place, wait } = aWorkplace(desk, { smtp: peer.smtp });
  mailOne(desk);
  const now = dead.place.now();
  const until = new Date(Date.parse(now) + 120_000).toISOString();
  outgoingQueue.claim(desk.act.db, { worker: "dead", now, until, latest: until });
  wait(3);
  await sendNextOutgoing(place);
  wait(60);
  await sendNextOutgoing(place);
  expect(listOutgoing(desk.act.db, desk.lineId)).toMatchObject([{ state: "sent", attempts: 3 }]);
  const [delivery] = fileOf(desk.act, desk.lineId).deliveries;
  expect(delivery?.note).toContain("may have gone twice");
  // Nothing of the kind where every try was answered.
  const plain = aDesk();
  mailOne(plain);
  await sendNextOutgoing(aWorkplace(plain, { smtp: (await aPeer()).smtp }).place);
  expect(fileOf(plain.act, plain.lineId).deliveries[0]?.note).not.toContain("twice");
});

test("sendNextOutgoing() writes the message to a folder when no mail server is set", async () => {
  const desk = aDesk();
  mailOne(desk);
  await sendNextOutgoing(aWorkplace(desk).place);
  const folder = path.join(desk.act.dataFolder, "unsent-mail");
  const [name = "", ...others] = fs.readdirSync(folder);
  expect(others).toEqual([]);
  const mail = await simpleParser(fs.readFileSync(path.join(folder, name)));
  const [outgoing] = listOutgoing(desk.act.db, desk.lineId);
  expect(mail.messageId).toBe(outgoing?.messageId);
  expect(mail.attachments).toHaveLength(1);
  expect(fileOf(desk.act, desk.lineId).deliveries[0]?.note).toContain(
    `nothing was sent: written to unsent-mail/${name}`,
  );
});

test("a name with a line break in it adds no header to a message", async () => {
  const desk = aDesk();
  const peer = await aPeer();
  mailOne(desk);
  desk.act.db.$client
    .prepare("update outbox set to_name = ?, subject = ?")
    .run("Eve\r\nBcc: all@example.com", "Hello\r\nX-Evil: 1");
  await sendNextOutgoing(aWorkplace(desk, { smtp: peer.smtp }).place);
  const [mail] = peer.received;
  expect(mail?.headers.has("bcc")).toBe(false);
  expect(mail?.headers.has("x-evil")).toBe(false);
});

test("runNextJob() makes the letters' PDF and keeps it with the line", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeIds = [mailOne(desk, "owner-12", "12"), mailOne(desk)];
  const { jobId } = must(startJob(act, { lineId, kind: "letters", subjectIds: noticeIds }));
  expect(getJob(act.db, jobId)).toMatchObject({
    state: "waiting",
    uploadId: null,
    by: "Dana Okafor",
  });
  const { place } = aWorkplace(desk);
  expect(await runNextJob(place)).toBe(true);
  const job = getJob(act.db, jobId);
  expect(job).toMatchObject({ state: "done", problem: "" });
  const upload = fileOf(act, lineId).uploads.find(({ id }) => id === job?.uploadId);
  expect(upload).toMatchObject({ type: "application/pdf", addedBy: "Dana Okafor" });
  const text = execFileSync("pdftotext", [storedPath(act.dataFolder, upload?.sha256 ?? ""), "-"]);
  expect(text.toString()).toContain("OTTILIE BRANDVOLD");
  expect(text.toString()).toContain("Peña");
  expect(await runNextJob(place)).toBe(false);
});

test("runNextJob() makes the packet whatever is missing, and says that first", async () => {
  const desk = aDesk({ undocumented: true });
  const { act, lineId } = desk;
  const { jobId } = must(startJob(act, { lineId, kind: "packet", subjectIds: [] }));
  await runNextJob(aWorkplace(desk).place);
  const job = getJob(act.db, jobId);
  expect(job).toMatchObject({ state: "done", problem: "" });
  const upload = fileOf(act, lineId).uploads.find(({ id }) => id === job?.uploadId);
  const place = storedPath(act.dataFolder, upload?.sha256 ?? "");
  const first = execFileSync("pdftotext", ["-l", "1", place, "-"]).toString();
  expect(first).toMatch(/missing/i);
});

test("runNextJob() gives a job up in words after three tries", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const { jobId } = must(startJob(act, { lineId, kind: "letters", subjectIds: [mailOne(desk)] }));
  const { place, wait } = aWorkplace(desk);
  // Where there should be a folder to keep papers in, there is none.
  const dataFolder = path.join(act.dataFolder, "no-folder");
  fs.writeFileSync(dataFolder, "");
  for (let tries = 0; tries < 3; tries += 1) {
    expect(await runNextJob({ ...place, dataFolder })).toBe(true);
    wait(60);
  }
  expect(await runNextJob({ ...place, dataFolder })).toBe(false);
  const job = getJob(act.db, jobId);
  expect(job).toMatchObject({ state: "failed", attempts: 3, uploadId: null });
  expect(job?.problem).not.toBe("");
});

test("runNextJob() gives a job up at once, and says why, where a sent letter can't be read", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const { jobId } = must(startJob(act, { lineId, kind: "letters", subjectIds: [mailOne(desk)] }));
  tamper(act.db, "update notices set frozen_json = '{}'");
  const { place } = aWorkplace(desk);
  expect(await runNextJob(place)).toBe(true);
  expect(await runNextJob(place)).toBe(false);
  expect(getJob(act.db, jobId)).toMatchObject({ state: "failed", attempts: 1, uploadId: null });
  expect(getJob(act.db, jobId)?.problem).toMatch(/can’t be read/);
});

test("a worker that was overtaken writes nothing", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const { jobId } = must(startJob(act, { lineId, kind: "packet", subjectIds: [] }));
  const slow = aWorkplace(desk, { worker: "slow" });
  const running = runNextJob(slow.place);
  const now = new Date(Date.parse(act.now) + 10 * 60_000).toISOString();
  const taken = jobQueue.claim(act.db, { worker: "fast", now, until: now, latest: now });
  expect(taken?.id).toBe(jobId);
  await running;
  expect(fileOf(act, lineId).uploads).toEqual([]);
  expect(getJob(act.db, jobId)?.state).toBe("running");
});

test("a clock that is set back by a day keeps no message and no job waiting", async () => {
  const desk = aDesk();
  const peer = await aPeer();
  mailOne(desk);
  const { jobId } = must(
    startJob(desk.act, { lineId: desk.lineId, kind: "packet", subjectIds: [] }),
  );
  const { place, wait } = aWorkplace(desk, { smtp: peer.smtp });
  wait(-24 * 60);
  expect(await sendNextOutgoing(place)).toBe(true);
  expect(peer.received).toHaveLength(1);
  expect(await runNextJob(place)).toBe(true);
  expect(getJob(desk.act.db, jobId)?.state).toBe("done");
});

test("what a worker held when it died before the clock was set back is taken over at once", async () => {
  const desk = aDesk();
  const peer = await aPeer();
  mailOne(desk);
  const { place, wait } = aWorkplace(desk, { smtp: peer.smtp });
  const now = place.now();
  const until = new Date(Date.parse(now) + 120_000).toISOString();
  outgoingQueue.claim(desk.act.db, { worker: "dead", now, until, latest: until });
  wait(-24 * 60);
  expect(await sendNextOutgoing(place)).toBe(true);
  expect(peer.received).toHaveLength(1);
});
