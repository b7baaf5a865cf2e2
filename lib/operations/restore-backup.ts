import fs from "node:fs";
import path from "node:path";
import { openDb } from "#db/open.ts";
import { isWhole } from "#db/queries/backup.ts";
import { databaseState } from "#db/queries/database-state.ts";
import { getOffice } from "#db/queries/office.ts";
import { listStoredHashes, listVideoHashes } from "#db/queries/upload.ts";
import type { Instant } from "#lib/domain/time/day.ts";
import { ok, type Result } from "#lib/result.ts";
import { databaseOf, freeNameBeside, stampOffice } from "#lib/storage/data-folder.ts";
import { copyToDisk, makeFolder, putUnder, syncToDisk } from "#lib/storage/durable.ts";
import { isStored, isStoredWhole, storedPath } from "#lib/storage/store.ts";
import type { Refusal } from "./act.ts";
import { refuse } from "./change.ts";

interface RestorePlace {
  readonly folder: string;
  /** Must be empty, or not there. */
  readonly dataFolder: string;
  readonly now: Instant;
}

/**
 * Puts a backup into a data folder that is empty or not there. It is copied beside that folder,
 * looked through, and renamed when all of it is on the disk: the office is there whole or not at
 * all, whenever the work ends. Refuses a folder with anything in it, because what another office
 * left there (a write-ahead log, say) would get into the restored one, and a backup that is not whole.
 */
export function restoreBackup({
  folder,
  dataFolder,
  now,
}: RestorePlace): Result<{ files: number }, Refusal> {
  if (!fs.existsSync(databaseOf(folder)))
    return refuse("not-found", "", `there is no backup in ${folder}`);
  const taken = takenWords({ folder, dataFolder });
  if (taken !== null) return refuse("already-there", "", taken);
  const filling = `${dataFolder}.filling`;
  fs.rmSync(filling, { recursive: true, force: true });
  makeFolder(filling);
  try {
    const filled = fill(filling, { folder, now });
    if (!filled.ok) return filled;
    return putInPlace(filling, dataFolder) ? filled : refuse("bad-value", "", oddPlace(dataFolder));
  } finally {
    fs.rmSync(filling, { recursive: true, force: true });
  }
}

/** What stands in the way, and what to do about it; null for an empty folder or none. */
function takenWords({ folder, dataFolder }: { folder: string; dataFolder: string }): string | null {
  if (!fs.existsSync(dataFolder)) return null;
  if (!fs.statSync(dataFolder).isDirectory()) return `${dataFolder} is no folder`;
  const [first, ...more] = fs.readdirSync(dataFolder).sort();
  if (first === undefined) return null;
  const names = more.length === 0 ? first : `${first} and ${more.length} more`;
  const aside = freeNameBeside(dataFolder);
  const inside = path.relative(dataFolder, folder);
  const moved = inside.startsWith("..") ? folder : path.join(aside, inside);
  return `${dataFolder} is not empty (it holds ${names}), and a backup goes only into an empty folder. Stop the program if it runs, move the whole folder aside (mv ${dataFolder} ${aside}), then restore: npm run restore -- ${moved}. Or name another folder with WYEBOOK_DATA=…`;
}

function fill(
  filling: string,
  { folder, now }: { folder: string; now: Instant },
): Result<{ files: number }, Refusal> {
  const copied = databaseOf(filling);
  copyToDisk(databaseOf(folder), copied);
  // Of a folder that is no backup but a copy of a data folder, the newest writes are in here.
  if (fs.existsSync(`${databaseOf(folder)}-wal`))
    copyToDisk(`${databaseOf(folder)}-wal`, `${copied}-wal`);
  const state = databaseState(copied);
  if (state !== "ours") return refuse("bad-value", "", notWhole(state));
  const db = openDb(copied);
  const whole = isWhole(db);
  const here = listVideoHashes(db).filter((sha256) => isStored(folder, sha256));
  const hashes = [...new Set([...listStoredHashes(db), ...here])];
  const isOffice = getOffice(db) !== null;
  db.$client.pragma("journal_mode = DELETE");
  db.$client.close();
  if (!whole) return refuse("bad-value", "", notWhole("damaged"));
  syncToDisk(copied);
  for (const sha256 of hashes) {
    if (!isStoredWhole(folder, sha256))
      return refuse("bad-value", "", `the backup's file ${sha256} is missing or was changed`);
    const place = storedPath(filling, sha256);
    makeFolder(path.dirname(place));
    copyToDisk(storedPath(folder, sha256), place);
    syncToDisk(path.dirname(place));
  }
  if (isOffice) stampOffice(filling, now);
  syncToDisk(filling);
  return ok({ files: hashes.length });
}

function notWhole(state: string): string {
  return state === "foreign"
    ? "the backup's database is another program's"
    : "the backup's database is not whole; take an earlier backup";
}

/** False where the folder can't be replaced, as the root of a disk can't. */
function putInPlace(filling: string, dataFolder: string): boolean {
  try {
    putUnder(filling, dataFolder);
    return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "EXDEV" || code === "EBUSY") return false;
    throw error;
  }
}

function oddPlace(dataFolder: string): string {
  return `${dataFolder} is a disk of its own and can't be put in place in one step; name a folder on it: WYEBOOK_DATA=${path.join(dataFolder, "office")}`;
}
