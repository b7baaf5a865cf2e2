import fs from "node:fs";
import path from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { type OpenDb, openDb } from "#db/open.ts";
import { putOffice } from "#db/queries/office.ts";
import { addUpload } from "#lib/operations/add-upload.ts";
import { addVideo } from "#lib/operations/add-video.ts";
import { exportLine } from "#lib/operations/export-line.ts";
import { makeBackup } from "#lib/operations/make-backup.ts";
import { openOffice } from "#lib/operations/open-office.ts";
import { restoreBackup } from "#lib/operations/restore-backup.ts";
import { keepLinkSecret } from "#lib/storage/link-secret.ts";
import { keepMailing } from "#lib/storage/mailings.ts";
import { storedPath, storeFile } from "#lib/storage/store.ts";
import { storeVideo } from "#lib/storage/store-video.ts";
import { anOffice, aProperty, aRun } from "../../support/file.ts";
import { addRows, aFolder, anAct, anOpenLine, must } from "../../support/office.ts";
import { aRecording, chunksOf } from "../../support/recording.ts";

const NOW = "2026-11-25T18:00:00.000Z";

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

function opened(file: string): OpenDb {
  const db = openDb(file);
  onTestFinished(() => void db.$client.close());
  return db;
}

/** An office in a real folder, with a line and a stored file. */
async function anOfficeOnDisk() {
  const dataFolder = path.join(aFolder(), "data");
  const db = opened(path.join(dataFolder, "wyebook.db"));
  const act = { ...anAct(db, { dataFolder }), db };
  putOffice(db, anOffice());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "properties" }, [aProperty("12")]);
  const bytes = Buffer.from("%PDF-1.7\na card\n%%EOF");
  const stored = must(
    await storeFile(dataFolder, once(bytes), { declared: null, limit: 1_000_000 }),
  );
  must(addUpload(act, { lineId, name: "card.pdf", stored, note: "" }));
  return { act, lineId, dataFolder, stored };
}

test("restoreBackup() brings back what makeBackup() copied, to the last byte, while the office works", async () => {
  const { act, lineId, dataFolder } = await anOfficeOnDisk();
  const before = exportLine(act, lineId);
  const folder = path.join(aFolder(), "backup");
  expect(makeBackup({ now: NOW, dataFolder, folder })).toMatchObject({
    ok: true,
    value: { files: 1 },
  });
  addRows(act, { lineId, table: "properties" }, [aProperty("14")]);
  const restored = path.join(aFolder(), "restored");
  expect(restoreBackup({ now: NOW, folder, dataFolder: restored })).toEqual({
    ok: true,
    value: { files: 1 },
  });
  const db = opened(path.join(restored, "wyebook.db"));
  expect(exportLine({ db, dataFolder: restored }, lineId)).toBe(before);
});

test("makeBackup() refuses when a stored file is missing or was changed, and leaves nothing", async () => {
  const { dataFolder, stored } = await anOfficeOnDisk();
  const parent = aFolder();
  const folder = path.join(parent, "backup");
  fs.writeFileSync(storedPath(dataFolder, stored.sha256), "other bytes");
  expect(makeBackup({ now: NOW, dataFolder, folder })).toMatchObject({
    error: { reason: "not-found" },
  });
  expect(fs.readdirSync(parent)).toEqual([]);
});

test("makeBackup() holds nothing that opens a private page: no waiting code, no mailing", async () => {
  const { dataFolder } = await anOfficeOnDisk();
  keepLinkSecret(dataFolder, "print-notice-1", "K7QM2XPD9RTB");
  keepMailing(dataFolder, "job-1", new TextEncoder().encode("%PDF-1.7\nK7QM-2XPD-9RTB\n%%EOF"));
  const folder = path.join(aFolder(), "backup");
  must(makeBackup({ now: NOW, dataFolder, folder }));
  const names = fs.readdirSync(folder, { recursive: true, encoding: "utf8" });
  expect(names.filter((name) => /secret|mailing/.test(name))).toEqual([]);
  const files = names
    .map((name) => path.join(folder, name))
    .filter((at) => fs.statSync(at).isFile());
  for (const at of files) expect(fs.readFileSync(at, "latin1")).not.toMatch(/K7QM/);
});

test("restoreBackup() refuses a backup that is not whole and a folder that holds an office", async () => {
  const { dataFolder, stored } = await anOfficeOnDisk();
  const folder = path.join(aFolder(), "backup");
  must(makeBackup({ now: NOW, dataFolder, folder }));
  expect(restoreBackup({ now: NOW, folder, dataFolder })).toMatchObject({
    error: { reason: "already-there" },
  });
  fs.rmSync(storedPath(folder, stored.sha256));
  const restored = path.join(aFolder(), "restored");
  expect(restoreBackup({ now: NOW, folder, dataFolder: restored })).toMatchObject({
    error: { reason: "bad-value" },
  });
  expect(fs.existsSync(restored)).toBe(false);
});

test("makeBackup() writes over nothing", async () => {
  const { dataFolder } = await anOfficeOnDisk();
  const folder = aFolder();
  expect(makeBackup({ now: NOW, dataFolder, folder })).toMatchObject({
    error: { reason: "already-there" },
  });
});

test("makeBackup() copies recordings too, and says which ones the store never held", async () => {
  const { act, lineId, dataFolder } = await anOfficeOnDisk();
  addRows(act, { lineId, table: "runs" }, [aRun("run-1"), aRun("run-2")]);
  const options = { declared: null, limit: 1_000_000 };
  const stored = must(await storeVideo(dataFolder, chunksOf(aRecording()), options));
  must(addVideo(act, { lineId, runId: "run-1", name: "run.webm", stored }));
  const elsewhere = { ...stored, sha256: "b".repeat(64) };
  must(addVideo(act, { lineId, runId: "run-2", name: "elsewhere.webm", stored: elsewhere }));
  const folder = path.join(aFolder(), "backup");
  expect(makeBackup({ now: NOW, dataFolder, folder })).toMatchObject({
    value: { files: 2, absent: 1 },
  });
  const restored = path.join(aFolder(), "restored");
  expect(restoreBackup({ now: NOW, folder, dataFolder: restored })).toMatchObject({
    value: { files: 2 },
  });
  expect(fs.readFileSync(storedPath(restored, stored.sha256))).toEqual(aRecording());
  fs.appendFileSync(storedPath(folder, stored.sha256), "!");
  const again = path.join(aFolder(), "again");
  expect(restoreBackup({ now: NOW, folder, dataFolder: again })).toMatchObject({
    error: { reason: "bad-value" },
  });
  fs.appendFileSync(storedPath(dataFolder, stored.sha256), "!");
  expect(makeBackup({ now: NOW, dataFolder, folder: path.join(aFolder(), "b") })).toMatchObject({
    error: { reason: "not-found" },
  });
});

test("restoreBackup() refuses a folder with anything of an office in it, and says what to do", async () => {
  const { dataFolder } = await anOfficeOnDisk();
  const folder = path.join(aFolder(), "backup");
  must(makeBackup({ now: NOW, dataFolder, folder }));
  for (const left of ["wyebook.db-wal", "wyebook.db-shm", "files", "office.json", "notes.txt"]) {
    const restored = path.join(aFolder(), "restored");
    fs.mkdirSync(path.join(restored, left), { recursive: true });
    const refused = restoreBackup({ now: NOW, folder, dataFolder: restored });
    expect(refused).toMatchObject({ error: { reason: "already-there" } });
    if (!refused.ok) {
      expect(refused.error.detail).toContain(`it holds ${left}`);
      expect(refused.error.detail).toContain(`mv ${restored} ${restored}.aside`);
    }
    expect(fs.readdirSync(restored)).toEqual([left]);
  }
});

test("restoreBackup() takes an empty folder, and names a backup inside a folder by where it will be", async () => {
  const { dataFolder } = await anOfficeOnDisk();
  const folder = path.join(dataFolder, "backups", "one");
  must(makeBackup({ now: NOW, dataFolder, folder }));
  const refused = restoreBackup({ now: NOW, folder, dataFolder });
  expect(refused.ok ? "" : refused.error.detail).toContain(
    `npm run restore -- ${path.join(`${dataFolder}.aside`, "backups", "one")}`,
  );
  const empty = path.join(aFolder(), "restored");
  fs.mkdirSync(empty);
  expect(restoreBackup({ now: NOW, folder, dataFolder: empty })).toMatchObject({ ok: true });
  expect(fs.readdirSync(empty).sort()).toEqual(["files", "office.json", "wyebook.db"]);
});

test("restoreBackup() takes what is only in the write-ahead log of a folder that was copied as it was", async () => {
  const { act, lineId, dataFolder } = await anOfficeOnDisk();
  const before = exportLine(act, lineId);
  expect(fs.statSync(path.join(dataFolder, "wyebook.db-wal")).size).toBeGreaterThan(0);
  const folder = path.join(aFolder(), "copied");
  fs.cpSync(dataFolder, folder, { recursive: true });
  const restored = path.join(aFolder(), "restored");
  must(restoreBackup({ now: NOW, folder, dataFolder: restored }));
  const db = opened(path.join(restored, "wyebook.db"));
  expect(exportLine({ db, dataFolder: restored }, lineId)).toBe(before);
});

test.each([
  ["emptied", 0],
  ["cut", 20_000],
])("makeBackup() and restoreBackup() refuse a database that was %s, in words", async (_, left) => {
  const { act, dataFolder } = await anOfficeOnDisk();
  must(openOffice(dataFolder, NOW)).$client.close();
  act.db.$client.pragma("wal_checkpoint(TRUNCATE)");
  act.db.$client.close();
  const folder = path.join(aFolder(), "backup");
  must(makeBackup({ now: NOW, dataFolder, folder }));
  for (const place of [dataFolder, folder]) {
    for (const side of ["-wal", "-shm"])
      fs.rmSync(path.join(place, `wyebook.db${side}`), { force: true });
    fs.truncateSync(path.join(place, "wyebook.db"), left);
  }
  const parent = aFolder();
  const made = makeBackup({ now: NOW, dataFolder, folder: path.join(parent, "b") });
  expect(made.ok ? "" : made.error.detail).toMatch(
    /(is empty, although|is damaged).*npm run restore/,
  );
  const restored = restoreBackup({ now: NOW, folder, dataFolder: path.join(parent, "r") });
  expect(restored.ok ? "" : restored.error.detail).toMatch(/not whole/);
  expect(fs.readdirSync(parent)).toEqual([]);
});
