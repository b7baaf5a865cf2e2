import { spawn } from "node:child_process";
import { createHash, randomBytes } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { openDb } from "#db/open.ts";
import { putOffice } from "#db/queries/office.ts";
import { addUpload } from "#lib/operations/add-upload.ts";
import { makeBackup } from "#lib/operations/make-backup.ts";
import { keepBytes } from "#lib/storage/keep-bytes.ts";
import { anOffice } from "../../support/file.ts";
import { aFolder, anAct, anOpenLine, must } from "../../support/office.ts";

const FILES = 60;

/** An office with so many stored files that copying them takes a while. */
function anOfficeWithFiles(): string {
  const dataFolder = path.join(aFolder(), "data");
  const db = openDb(path.join(dataFolder, "wyebook.db"));
  putOffice(db, anOffice());
  const act = anAct(db, { dataFolder });
  const lineId = anOpenLine(act);
  for (let at = 0; at < FILES; at += 1) {
    const bytes = randomBytes(200_000);
    const sha256 = createHash("sha256").update(bytes).digest("hex");
    keepBytes(dataFolder, sha256, bytes);
    const stored = { type: "application/pdf", bytes: bytes.length, sha256 } as const;
    must(addUpload(act, { lineId, name: `card ${at}.pdf`, stored, note: "" }));
  }
  db.$client.close();
  return dataFolder;
}

interface Ended {
  readonly code: number | null;
  readonly said: string;
}

/** Runs a command; with `killAt`, kills it as soon as that is so. */
function run(
  command: string,
  { args, dataFolder, killAt }: { args: string[]; dataFolder: string; killAt?: () => boolean },
): Promise<Ended> {
  const child = spawn(
    process.execPath,
    ["--import", "tsx", `lib/commands/${command}.ts`, ...args],
    {
      env: { ...process.env, WYEBOOK_DATA: dataFolder },
      stdio: ["ignore", "pipe", "pipe"],
    },
  );
  let said = "";
  for (const stream of [child.stdout, child.stderr])
    stream.on("data", (chunk: Buffer) => {
      said += chunk.toString();
    });
  const timer = setInterval(() => {
    if (killAt?.()) child.kill("SIGKILL");
  }, 1);
  return new Promise((resolve) =>
    child.once("close", (code) => {
      clearInterval(timer);
      resolve({ code, said });
    }),
  );
}

/** How many files lie anywhere under a folder. */
function filesUnder(folder: string): number {
  if (!fs.existsSync(folder)) return 0;
  try {
    const all = fs.readdirSync(folder, { recursive: true, withFileTypes: true });
    return all.filter((each) => each.isFile()).length;
  } catch {
    return 0;
  }
}

/** Moments at which a copy is killed: as its folder appears, and after so many of its files. */
const MOMENTS = [0, 1, 2, 15, 40, FILES, FILES + 1];

test("a backup that is killed at any moment is not there, and the next one is whole", async () => {
  const dataFolder = anOfficeWithFiles();
  const parent = aFolder();
  const folder = path.join(parent, "backup");
  let killed = 0;
  for (const moment of MOMENTS) {
    const killAt = () => fs.existsSync(`${folder}.part`) && filesUnder(`${folder}.part`) >= moment;
    const { code } = await run("backup", { args: [folder], dataFolder, killAt });
    if (code === null) killed += 1;
    expect(fs.existsSync(folder) && filesUnder(folder) !== FILES + 1).toBe(false);
    fs.rmSync(folder, { recursive: true, force: true });
  }
  expect(killed).toBeGreaterThanOrEqual(5);
  expect((await run("backup", { args: [folder], dataFolder })).code).toBe(0);
  expect(fs.readdirSync(parent)).toEqual(["backup"]);
  expect(filesUnder(folder)).toBe(FILES + 1);
});

test("a restore that is killed at any moment is whole or not there, and the next one works", async () => {
  const folder = path.join(aFolder(), "backup");
  must(makeBackup({ dataFolder: anOfficeWithFiles(), folder, now: "2026-11-25T18:00:00.000Z" }));
  const parent = aFolder();
  const dataFolder = path.join(parent, "data");
  const whole = FILES + 2;
  let killed = 0;
  for (const moment of MOMENTS) {
    const filling = `${dataFolder}.filling`;
    const killAt = () => fs.existsSync(filling) && filesUnder(filling) >= moment;
    const { code } = await run("restore", { args: [folder], dataFolder, killAt });
    if (code === null) killed += 1;
    if (fs.existsSync(dataFolder)) {
      expect(filesUnder(dataFolder)).toBe(whole);
      fs.rmSync(dataFolder, { recursive: true });
    }
  }
  expect(killed).toBeGreaterThanOrEqual(5);
  const done = await run("restore", { args: [folder], dataFolder });
  expect(done).toMatchObject({ code: 0 });
  expect(fs.readdirSync(parent)).toEqual(["data"]);
  expect(filesUnder(dataFolder)).toBe(whole);
});

test("backup and restore refuse in a sentence, without a stack", async () => {
  const dataFolder = anOfficeWithFiles();
  const again = await run("restore", { args: [aFolder()], dataFolder });
  expect(again).toMatchObject({ code: 1 });
  expect(again.said).toMatch(/^Nothing was restored: there is no backup in .*\.\n$/);
  fs.truncateSync(path.join(dataFolder, "wyebook.db"), 0);
  const emptied = await run("backup", { args: [path.join(aFolder(), "b")], dataFolder });
  expect(emptied.code).toBe(1);
  expect(emptied.said).toMatch(/^No backup was made: The office's database .* is empty, although/);
  expect(emptied.said).not.toContain("    at ");
});
