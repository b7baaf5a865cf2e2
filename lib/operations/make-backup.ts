import fs from "node:fs";
import path from "node:path";
import { openDb } from "#db/open.ts";
import { copyDatabase, isWhole } from "#db/queries/backup.ts";
import { listStoredHashes, listVideoHashes } from "#db/queries/upload.ts";
import { ok, type Result } from "#lib/result.ts";
import { isStored, isStoredWhole, storedPath } from "#lib/storage/store.ts";
import type { Refusal } from "./act.ts";
import { refuse } from "./change.ts";

interface BackupPlace {
  readonly dataFolder: string;
  /** Must not be there yet. */
  readonly folder: string;
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
 * Refuses where one of them is missing or changed, and leaves nothing half made; only recordings may
 * be missing, because a line file names them without their bytes.
 */
export function makeBackup({ dataFolder, folder }: BackupPlace): Result<Backup, Refusal> {
  const source = path.join(dataFolder, "wyebook.db");
  if (!fs.existsSync(source))
    return refuse("not-found", "", `there is no database in ${dataFolder}`);
  if (fs.existsSync(folder)) return refuse("already-there", "", `${folder} is there already`);
  const part = `${folder}.part`;
  fs.rmSync(part, { recursive: true, force: true });
  fs.mkdirSync(part, { recursive: true, mode: 0o700 });
  try {
    const filled = fill(part, { source, dataFolder });
    if (!filled.ok) return filled;
    fs.renameSync(part, folder);
    return ok({ folder, ...filled.value });
  } finally {
    fs.rmSync(part, { recursive: true, force: true });
  }
}

function fill(
  part: string,
  { source, dataFolder }: { source: string; dataFolder: string },
): Result<Omit<Backup, "folder">, Refusal> {
  const copied = path.join(part, "wyebook.db");
  const db = openDb(source);
  copyDatabase(db, copied);
  db.$client.close();
  const copy = openDb(copied);
  const whole = isWhole(copy);
  const videos = listVideoHashes(copy);
  const here = videos.filter((sha256) => isStored(dataFolder, sha256));
  const hashes = [...new Set([...listStoredHashes(copy), ...here])];
  copy.$client.pragma("journal_mode = DELETE");
  copy.$client.close();
  if (!whole) return refuse("bad-value", "", "the copy of the database is not whole");
  let bytes = fs.statSync(copied).size;
  for (const sha256 of hashes) {
    if (!isStoredWhole(dataFolder, sha256))
      return refuse("not-found", "", `the stored file ${sha256} is missing or was changed`);
    const place = storedPath(part, sha256);
    fs.mkdirSync(path.dirname(place), { recursive: true });
    fs.copyFileSync(storedPath(dataFolder, sha256), place);
    bytes += fs.statSync(place).size;
  }
  return ok({ files: hashes.length, bytes, absent: videos.length - here.length });
}
