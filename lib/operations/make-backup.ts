import fs from "node:fs";
import path from "node:path";
import { openDb } from "#db/open.ts";
import { copyDatabase, isWhole } from "#db/queries/backup.ts";
import { getOffice } from "#db/queries/office.ts";
import { listStoredHashes, listVideoHashes } from "#db/queries/upload.ts";
import type { Instant } from "#lib/domain/time/day.ts";
import { ok, type Result } from "#lib/result.ts";
import { databaseOf } from "#lib/storage/data-folder.ts";
import { copyToDisk, makeFolder, putUnder, syncToDisk } from "#lib/storage/durable.ts";
import { isStored, isStoredWhole, storedPath } from "#lib/storage/store.ts";
import type { Refusal } from "./act.ts";
import { refuse } from "./change.ts";
import { openOffice } from "./open-office.ts";

interface BackupPlace {
  readonly dataFolder: string;
  /** Must not be there yet. */
  readonly folder: string;
  readonly now: Instant;
}

export interface Backup {
  readonly folder: string;
  readonly files: number;
  readonly bytes: number;
  /** Recordings that a line names and this store does not hold: came with a line file, or were lost. */
  readonly absent: number;
}

/**
 * Copies the database and every stored file that it names into a new folder, while the office works
 * on. The database is copied first: files are only ever added, so the copy's files are all there.
 * The folder is filled under another name and renamed when all of it is on the disk: it is there
 * whole or not at all, whenever the work ends. Refuses where there is no office, its database is
 * damaged, or a stored file is missing or changed; only recordings may be missing, because a line
 * file names them without their bytes.
 */
export function makeBackup({ dataFolder, folder, now }: BackupPlace): Result<Backup, Refusal> {
  if (!fs.existsSync(databaseOf(dataFolder)))
    return refuse("not-found", "", `there is no database in ${dataFolder}`);
  if (fs.existsSync(folder)) return refuse("already-there", "", `${folder} is there already`);
  const part = `${folder}.part`;
  fs.rmSync(part, { recursive: true, force: true });
  makeFolder(part);
  try {
    const filled = fill(part, { dataFolder, now });
    if (!filled.ok) return filled;
    putUnder(part, folder);
    return ok({ folder, ...filled.value });
  } finally {
    fs.rmSync(part, { recursive: true, force: true });
  }
}

function fill(
  part: string,
  { dataFolder, now }: { dataFolder: string; now: Instant },
): Result<Omit<Backup, "folder">, Refusal> {
  const copied = databaseOf(part);
  const opened = openOffice(dataFolder, now);
  if (!opened.ok) return refuse("bad-value", "", opened.error.words);
  const isOffice = getOffice(opened.value) !== null;
  if (isOffice) copyDatabase(opened.value, copied);
  opened.value.$client.close();
  if (!isOffice) return refuse("not-found", "", `no office was set up in ${dataFolder} yet`);
  const copy = openDb(copied);
  const whole = isWhole(copy);
  const videos = listVideoHashes(copy);
  const here = videos.filter((sha256) => isStored(dataFolder, sha256));
  const hashes = [...new Set([...listStoredHashes(copy), ...here])];
  copy.$client.pragma("journal_mode = DELETE");
  copy.$client.close();
  if (!whole) return refuse("bad-value", "", "the copy of the database is not whole");
  syncToDisk(copied);
  let bytes = fs.statSync(copied).size;
  for (const sha256 of hashes) {
    if (!isStoredWhole(dataFolder, sha256))
      return refuse("not-found", "", `the stored file ${sha256} is missing or was changed`);
    const place = storedPath(part, sha256);
    makeFolder(path.dirname(place));
    copyToDisk(storedPath(dataFolder, sha256), place);
    syncToDisk(path.dirname(place));
    bytes += fs.statSync(place).size;
  }
  syncToDisk(part);
  return ok({ files: hashes.length, bytes, absent: videos.length - here.length });
}
