import { spawn } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { openDb } from "#db/open.ts";
import { getJob } from "#db/queries/job.ts";
import { putOffice } from "#db/queries/office.ts";
import { addUpload } from "#lib/operations/add-upload.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { makeBackup } from "#lib/operations/make-backup.ts";
import { restoreBackup } from "#lib/operations/restore-backup.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { storedPath, storeFile } from "#lib/storage/store.ts";
import { anOffice, aParty, aRecord } from "../../support/file.ts";
import { manyFields } from "../../support/hostile-pdf.ts";
import { addRows, aFolder, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";
import { readPdf } from "../../support/pdf.ts";
import { chunksOf } from "../../support/recording.ts";

/** Asks again until it is so. */
async function until(isSo: () => boolean): Promise<void> {
  while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 100));
}

test("the worker sends what waits, makes what was asked for, and ends when told to", async () => {
  const dataFolder = aFolder();
  const db = openDb(path.join(dataFolder, "wyebook.db"));
  onTestFinished(() => void db.$client.close());
  const now = new Date().toISOString();
  const act = anAct(db, { dataFolder, now });
  putOffice(db, anOffice());
  const lineId = anOpenLine(act);
  const party = aParty("p", { name: "Ottilie Brandvold", email: "ottilie@example.com" });
  addRows(act, { lineId, table: "parties" }, [party]);
  const recipients = [{ partyId: "p", propertyId: null, tieInId: null, splitId: null }];
  const draft = { lineId, kind: "finding", replyBy: null, recipients } as const;
  const { noticeIds } = must(draftNotices(act, draft));
  must(sendNotices(act, { lineId, noticeIds, method: "mail-message", sentOn: act.today }));
  const { jobId } = must(startJob(act, { lineId, kind: "packet", subjectIds: [] }));

  const worker = spawn(process.execPath, ["--import", "tsx", "lib/commands/worker.ts"], {
    env: { ...process.env, WYEBOOK_DATA: dataFolder, WYEBOOK_TODAY: act.today },
    stdio: ["ignore", "ignore", "pipe"],
  });
  onTestFinished(() => void worker.kill("SIGKILL"));
  let complaints = "";
  worker.stderr.on("data", (chunk: Buffer) => {
    complaints += chunk.toString();
  });
  const ended = new Promise<number | null>((resolve) => worker.once("exit", resolve));
  await until(() => getJob(db, jobId)?.state === "done" || worker.exitCode !== null);
  worker.kill("SIGTERM");
  expect(await ended).toBe(0);
  expect(complaints).toBe("");
  expect(getJob(db, jobId)).toMatchObject({ state: "done", attempts: 1 });
  expect(fs.readdirSync(path.join(dataFolder, "unsent-mail"))).toHaveLength(1);
});

test("while a packet is held up by an upload, letters go out; the packet comes and names the upload", async () => {
  const dataFolder = aFolder();
  const db = openDb(path.join(dataFolder, "wyebook.db"));
  onTestFinished(() => void db.$client.close());
  const act = anAct(db, { dataFolder, now: new Date().toISOString() });
  putOffice(db, anOffice());
  const lineId = anOpenLine(act);
  const party = aParty("p", { name: "Ottilie Brandvold", email: "ottilie@example.com" });
  addRows(act, { lineId, table: "parties" }, [party]);
  const bytes = chunksOf(await manyFields(20_000));
  const stored = must(await storeFile(dataFolder, bytes, { declared: null, limit: 1e8 }));
  const { uploadId } = must(addUpload(act, { lineId, name: "form.pdf", stored, note: "" }));
  addRows(act, { lineId, table: "records" }, [aRecord("card", { uploadId })]);
  const { jobId } = must(startJob(act, { lineId, kind: "packet", subjectIds: [] }));

  const worker = spawn(process.execPath, ["--import", "tsx", "lib/commands/worker.ts"], {
    env: { ...process.env, WYEBOOK_DATA: dataFolder, WYEBOOK_TODAY: act.today },
    stdio: "ignore",
  });
  onTestFinished(() => void worker.kill("SIGKILL"));
  await until(() => getJob(db, jobId)?.state === "running");
  const recipients = [{ partyId: "p", propertyId: null, tieInId: null, splitId: null }];
  const draft = { lineId, kind: "finding", replyBy: null, recipients } as const;
  const { noticeIds } = must(draftNotices(act, draft));
  must(sendNotices(act, { lineId, noticeIds, method: "mail-message", sentOn: act.today }));
  await until(() => fs.existsSync(path.join(dataFolder, "unsent-mail")));
  expect(getJob(db, jobId)?.state).toBe("running");
  await until(() => getJob(db, jobId)?.state !== "running");
  const job = getJob(db, jobId);
  expect(job).toMatchObject({ state: "done", attempts: 1 });
  const packet = fileOf(act, lineId).uploads.find(({ id }) => id === job?.uploadId);
  const pdf = readPdf(fs.readFileSync(storedPath(dataFolder, packet?.sha256 ?? "")));
  expect(pdf.text(1).replace(/\s+/g, " ")).toMatch(
    /could not be merged: it (takes too long|is too large)/,
  );
});

test("a worker whose office was moved away for a restored one does no more of either, and says so", async () => {
  const dataFolder = path.join(aFolder(), "office");
  const db = openDb(path.join(dataFolder, "wyebook.db"));
  onTestFinished(() => void db.$client.close());
  const act = anAct(db, { dataFolder, now: new Date().toISOString() });
  putOffice(db, anOffice());
  const lineId = anOpenLine(act);
  const backup = path.join(aFolder(), "backup");
  must(makeBackup({ dataFolder, folder: backup, now: act.now }));
  const worker = spawn(process.execPath, ["--import", "tsx", "lib/commands/worker.ts"], {
    env: { ...process.env, WYEBOOK_DATA: dataFolder, WYEBOOK_TODAY: act.today },
    stdio: ["ignore", "ignore", "pipe"],
  });
  onTestFinished(() => void worker.kill("SIGKILL"));
  let complaints = "";
  worker.stderr.on("data", (chunk: Buffer) => {
    complaints += chunk.toString();
  });
  const ended = new Promise<number | null>((resolve) => worker.once("exit", resolve));
  const { jobId } = must(startJob(act, { lineId, kind: "packet", subjectIds: [] }));
  await until(() => getJob(db, jobId)?.state === "done" || worker.exitCode !== null);
  fs.renameSync(dataFolder, `${dataFolder}-aside`);
  must(restoreBackup({ dataFolder, folder: backup, now: act.now }));
  // A page server that has the old one open could still have begun this.
  const late = must(startJob(act, { lineId, kind: "packet", subjectIds: [] })).jobId;
  await until(() => worker.exitCode !== null || getJob(db, late)?.state === "done");
  expect(getJob(db, late)).toMatchObject({ state: "waiting" });
  expect(await ended).toBe(3);
  expect(complaints).toContain("was moved, removed or emptied while the program ran");
  expect(fs.existsSync(path.join(dataFolder, "files"))).toBe(false);
});
