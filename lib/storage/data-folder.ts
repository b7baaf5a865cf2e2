import fs from "node:fs";
import path from "node:path";
import type { Instant } from "#lib/domain/time/day.ts";
import { makeFolder, writeWhole } from "./durable.ts";

/** Says beside the database that an office was set up in this folder, and when. */
const STAMP = "office.json";

/** Where the database of a data folder lies. */
export function databaseOf(dataFolder: string): string {
  return path.join(dataFolder, "wyebook.db");
}

/** Which file lies under the database's name; null where none does, or an empty one. */
export function databaseInode(dataFolder: string): number | null {
  const stat = fs.statSync(databaseOf(dataFolder), { throwIfNoEntry: false });
  return stat === undefined || stat.size === 0 ? null : stat.ino;
}

/**
 * The day on which the folder became an office's, whatever is left of its database; empty where the
 * stamp can't be read; null where there never was one. A folder with stored files, or with a log of
 * writes whose database is gone, was an office's too.
 */
export function officeSince(dataFolder: string): string | null {
  const stamp = path.join(dataFolder, STAMP);
  if (!fs.existsSync(stamp)) return hasRemains(dataFolder) ? "" : null;
  const [day] = /\d{4}-\d{2}-\d{2}/.exec(fs.readFileSync(stamp, "utf8")) ?? [];
  return day ?? "";
}

/** Stamps the folder as an office's, once. */
export function stampOffice(dataFolder: string, at: Instant): void {
  const stamp = path.join(dataFolder, STAMP);
  if (fs.existsSync(stamp)) return;
  makeFolder(dataFolder);
  writeWhole(stamp, `${JSON.stringify({ program: "Wyebook", officeSince: at })}\n`);
}

/** Whether there is something that only an office leaves. */
function hasRemains(dataFolder: string): boolean {
  const log = `${databaseOf(dataFolder)}-wal`;
  if (!fs.existsSync(databaseOf(dataFolder)) && fs.existsSync(log)) return true;
  const files = path.join(dataFolder, "files");
  return fs.existsSync(files) && fs.readdirSync(files).some((name) => /^[0-9a-f]{2}$/.test(name));
}

/** Where backups go that nobody named a folder for. */
export function backupsOf(dataFolder: string): string {
  return path.join(dataFolder, "backups");
}

/** The newest backup in the data folder itself; null where there is none. */
export function newestBackup(dataFolder: string): string | null {
  const folder = backupsOf(dataFolder);
  if (!fs.existsSync(folder)) return null;
  const whole = fs.readdirSync(folder).filter((name) => !name.endsWith(".part"));
  const newest = whole.sort().at(-1);
  return newest === undefined ? null : path.join(folder, newest);
}

/** A folder name beside this one that is free, to move it to. */
export function freeNameBeside(folder: string): string {
  for (let at = 1; ; at += 1) {
    const name = `${folder}.aside${at === 1 ? "" : `-${at}`}`;
    if (!fs.existsSync(name)) return name;
  }
}
