import fs from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { openDb } from "#db/open.ts";
import { putOffice } from "#db/queries/office.ts";
import { makeBackup } from "#lib/operations/make-backup.ts";
import { openOffice } from "#lib/operations/open-office.ts";
import { anOffice } from "../../support/file.ts";
import { aFolder, anAct, anOpenLine, must } from "../../support/office.ts";

const NOW = "2026-11-25T18:00:00.000Z";

/** A data folder in which an office was set up, with nobody at work. */
function aSetUpFolder(): { dataFolder: string; file: string } {
  const dataFolder = path.join(aFolder(), "data");
  const db = must(openOffice(dataFolder, NOW));
  putOffice(db, anOffice());
  const act = anAct(db);
  for (let at = 0; at < 40; at += 1) anOpenLine({ ...act, newId: () => `line-${at}` });
  db.$client.close();
  must(openOffice(dataFolder, NOW)).$client.close();
  return { dataFolder, file: path.join(dataFolder, "wyebook.db") };
}

function faultAt(dataFolder: string): { kind: string; words: string } {
  const opened = openOffice(dataFolder, NOW);
  if (!opened.ok) return opened.error;
  opened.value.$client.close();
  return { kind: "none", words: "" };
}

test("openOffice() makes a new database in a new folder, and opens it again before any set-up", () => {
  const dataFolder = path.join(aFolder(), "data");
  expect(faultAt(dataFolder)).toEqual({ kind: "none", words: "" });
  expect(faultAt(dataFolder)).toEqual({ kind: "none", words: "" });
  expect(fs.existsSync(path.join(dataFolder, "office.json"))).toBe(false);
});

test("openOffice() stamps the folder of an office, also of one from before there were stamps", () => {
  const dataFolder = aFolder();
  const db = openDb(path.join(dataFolder, "wyebook.db"));
  putOffice(db, anOffice());
  db.$client.close();
  expect(faultAt(dataFolder).kind).toBe("none");
  expect(fs.readFileSync(path.join(dataFolder, "office.json"), "utf8")).toContain("2026-11-25");
});

const HARMS: Readonly<Record<string, readonly [kind: string, harm: (file: string) => void]>> = {
  emptied: ["lost", (file) => fs.truncateSync(file, 0)],
  removed: ["lost", (file) => fs.rmSync(file)],
  "removed without its log, the stamp too": [
    "lost",
    (file) => {
      fs.renameSync(file, `${file}-wal`);
      fs.rmSync(path.join(path.dirname(file), "office.json"));
    },
  ],
  "replaced by a new one": [
    "lost",
    (file) => {
      fs.rmSync(file);
      openDb(file).$client.close();
    },
  ],
  "cut in the middle": ["damaged", (file) => fs.truncateSync(file, fs.statSync(file).size / 2)],
  "cut inside its first page": ["damaged", (file) => fs.truncateSync(file, 700)],
  "overwritten with junk": ["damaged", (file) => fs.writeFileSync(file, "junk ".repeat(5_000))],
  "zeroed over one page": [
    "damaged",
    (file) => {
      const handle = fs.openSync(file, "r+");
      fs.writeSync(handle, Buffer.alloc(4_096), 0, 4_096, 4_096 * 3);
      fs.closeSync(handle);
    },
  ],
  "replaced by another program's": [
    "foreign",
    (file) => {
      fs.rmSync(file);
      new Database(file).exec("CREATE TABLE notes (text TEXT)").close();
    },
  ],
};

test.each(Object.entries(HARMS))(
  "openOffice() says so where the database was %s, and makes nothing in its place",
  (_, [kind, harm]) => {
    const { dataFolder, file } = aSetUpFolder();
    must(makeBackup({ dataFolder, folder: path.join(dataFolder, "backups", "last"), now: NOW }));
    harm(file);
    const before = fs.existsSync(file) ? fs.readFileSync(file) : null;
    const fault = faultAt(dataFolder);
    expect(fault.kind).toBe(kind);
    expect(fs.existsSync(file) ? fs.readFileSync(file) : null).toEqual(before);
    expect(fault.words).toContain(file);
    if (kind !== "foreign")
      expect(fault.words).toContain(
        `mv ${dataFolder} ${dataFolder}.aside) and put a backup back: WYEBOOK_DATA=${dataFolder} npm run restore -- ${dataFolder}.aside/backups/last.`,
      );
  },
);
