// The worker: makes PDFs and sends mail, outside of any request, until it is told to stop.
import { randomUUID } from "node:crypto";
import os from "node:os";
import { readEnv } from "#lib/env.ts";
import { dailyMailing, sendNextDaily } from "#lib/operations/daily-mail.ts";
import { officeDay } from "#lib/operations/office-day.ts";
import { MOVED_AWAY, openOffice } from "#lib/operations/open-office.ts";
import { reminding } from "#lib/operations/remind-by-rule.ts";
import { renewSummaries } from "#lib/operations/renew-summaries.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { readIncoming } from "#lib/operations/take-incoming.ts";
import type { Workplace } from "#lib/operations/workplace.ts";
import { databaseInode } from "#lib/storage/data-folder.ts";
import { sweepParts } from "#lib/storage/sweep.ts";

/** How long it sleeps when there is nothing to do. */
const PAUSE_MS = 1_000;

/** So many lines are summed up before it looks whether other work waits. */
const AT_A_TIME = 3;

/** How often it looks for what was left half written. */
const SWEEP_MS = 60 * 60 * 1_000;

/** Ends with this code where the office's data can't be opened: starting it again is no use. */
const UNREADABLE = 3;

// What is written into the data folder is the owner's alone.
process.umask(0o077);

// Before the database is open: whoever is ended with it open leaves its log behind.
const stopping = new AbortController();
process.on("SIGTERM", () => stopping.abort());
process.on("SIGINT", () => {
  // A terminal tells it to everybody at once; the command that started it says when it is its turn.
  if (process.channel === undefined) stopping.abort();
});

const env = readEnv();
const opened = openOffice(env.dataFolder, new Date().toISOString());
if (!opened.ok) {
  console.error(`\n${opened.error.words}\n`);
  process.exit(UNREADABLE);
}
const db = opened.value;
const inode = databaseInode(env.dataFolder);
const place: Workplace = {
  db,
  dataFolder: env.dataFolder,
  worker: `${os.hostname()}-${process.pid}-${randomUUID()}`,
  now: () => new Date().toISOString(),
  today: () => officeDay(db, new Date().toISOString()),
  newId: randomUUID,
  smtp: env.smtp,
  mailFrom: env.mailFrom,
  imap: env.imap,
  address: env.address,
};

// Started by another program, it ends with that one.
if (process.channel !== undefined) {
  process.once("disconnect", () => stopping.abort());
  process.channel.unref();
}

sweepParts(env.dataFolder, Date.now());
setInterval(() => sweepParts(env.dataFolder, Date.now()), SWEEP_MS).unref();

// Side by side: a packet that takes its minute keeps no letter from going out.
await Promise.all([
  goOn(sendNextOutgoing),
  goOn(readIncoming),
  goOn(runNextJob),
  goOn(reminding()),
  goOn(dailyMailing()),
  goOn(sendNextDaily),
  goOn(sumUp),
]);
db.$client.close();

/** A few lines at a time, so that what people wait for comes between. */
async function sumUp(): Promise<boolean> {
  const renewed = renewSummaries(db, place.today(), AT_A_TIME);
  await new Promise((resolve) => setImmediate(resolve));
  return renewed === AT_A_TIME;
}

/** What is being done is finished first; what is not begun stays for the next worker. */
async function goOn(work: (place: Workplace) => Promise<boolean>): Promise<void> {
  while (isOurs()) if (!(await work(place))) await pause();
}

/**
 * Whether to begin anything more. An office that was moved away for a restored one sends no letter a
 * second time, and nothing of it comes into the other's folder.
 */
function isOurs(): boolean {
  if (stopping.signal.aborted) return false;
  if (databaseInode(env.dataFolder) === inode) return true;
  console.error(`\n${MOVED_AWAY.words}\n`);
  process.exitCode = UNREADABLE;
  stopping.abort();
  return false;
}

function pause(): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(done, PAUSE_MS);
    stopping.signal.addEventListener("abort", done, { once: true });
    function done() {
      clearTimeout(timer);
      stopping.signal.removeEventListener("abort", done);
      resolve();
    }
  });
}
