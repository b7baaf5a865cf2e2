import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { faultOf } from "#app/_components/fault.ts";
import { openDb } from "#db/open.ts";
import { isWhole } from "#db/queries/backup.ts";
import { countOldSummaries } from "#db/queries/summary.ts";
import { inWords } from "#lib/commands/in-words.ts";
import { makeBackup } from "#lib/operations/make-backup.ts";
import { openOffice } from "#lib/operations/open-office.ts";
import { renewIfFree, renewSummaries } from "#lib/operations/renew-summaries.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { aDesk, aFolder, anAct, fileOf } from "../../support/office.ts";

// The disk is full while somebody works. SQLite itself says so where a database may grow no more; what
// it says in a full folder was looked at on a real file system of 6 MB.

/** An office in a folder, and a second program that has it open too. */
function anOfficeOnDisk() {
  const { act: made, lineId } = aDesk();
  const { dataFolder } = made;
  const file = path.join(dataFolder, "wyebook.db");
  fs.writeFileSync(file, made.db.$client.serialize());
  const db = openDb(file);
  const other = openDb(file);
  let ids = 0;
  const newId = () => {
    ids += 1;
    return `disk-${ids}`;
  };
  return { act: { ...anAct(db, { dataFolder, newId }), db }, other, lineId, dataFolder };
}

test("an act for which there is no room leaves nothing half done, says so, and goes on with room", () => {
  const { act, other, lineId, dataFolder } = anOfficeOnDisk();
  const writes = (note: string) => saveLine(act, { lineId, facts: { note } });
  const pages = Number(act.db.$client.pragma("page_count", { simple: true }));
  act.db.$client.pragma(`max_page_count = ${pages + 40}`);
  let kept = "";
  let thrown: unknown = null;
  for (let at = 0; thrown === null; at += 1) {
    const note = `${at} ${"x".repeat(4_000)}`;
    try {
      writes(note);
      kept = note;
    } catch (error) {
      thrown = error;
    }
  }
  expect(faultOf(thrown)?.title).toBe("The disk of the office’s computer is full");
  for (const db of [act.db, other]) {
    const { line, history } = fileOf({ ...act, db }, lineId);
    expect(line.note).toBe(kept);
    expect(history.at(-1)?.detail).toContain(kept);
  }
  expect(act.db.$client.inTransaction).toBe(false);
  // Whoever backs up meanwhile has all that was kept.
  const folder = path.join(aFolder(), "backup");
  const backup = makeBackup({ dataFolder, folder, now: act.now });
  expect(backup.ok).toBe(true);
  act.db.$client.pragma("max_page_count = 1000000");
  expect(writes("There is room again").ok).toBe(true);
  expect(isWhole(other)).toBe(true);
  act.db.$client.close();
  other.$client.close();
  const opened = openOffice(folder, act.now);
  if (!opened.ok) throw new Error(opened.error.words);
  expect(fileOf({ ...act, db: opened.value }, lineId).line.note).toBe(kept);
  opened.value.$client.close();
});

test("who reads the desk on a full disk sees it as it was summed up last", () => {
  const { act, other } = anOfficeOnDisk();
  // What is summed up of it takes more room than is left between other things.
  act.db.$client.prepare("update lines set name = ?").run("Alley ".repeat(4_000));
  const pages = Number(act.db.$client.pragma("page_count", { simple: true }));
  act.db.$client.exec(`create table filler (words text); pragma max_page_count = ${pages + 1}`);
  expect(() => {
    for (;;) act.db.$client.exec("insert into filler values (hex(randomblob(400)))");
  }).toThrow("full");
  expect(() => renewSummaries(act.db, act.today, 4)).toThrow("full");
  renewIfFree(act.db, act.today, 4);
  other.$client.pragma("query_only = true");
  renewIfFree(other, act.today, 4);
  expect(countOldSummaries(act.db, act.today)).toBe(1);
  act.db.$client.close();
  other.$client.close();
});

const failed = (code: string, more: object = {}) =>
  inWords(() => {
    throw Object.assign(new Error(code), { code, ...more });
  });

test("a command says which disk is full: the one that is copied to", () => {
  const paths = { path: "/srv/backup/wyebook.db", dest: "/srv/office.filling/wyebook.db" };
  expect(failed("ENOSPC", paths)).toMatchObject({
    error: { detail: expect.stringMatching(/disk is full.*\(\/srv\/office\.filling/) },
  });
});

test("an office that is opened on a full disk is told of the disk, not of a broken one", () => {
  const cut = Object.assign(new Error("cut"), { digest: "SQLITE_IOERR_SHMSIZE" });
  expect(faultOf(cut)?.title).toMatch(/is full$/);
});
