import fs from "node:fs";
import path from "node:path";
import { openDb } from "#db/open.ts";
import { isWhole } from "#db/queries/backup.ts";
import { listStoredHashes, listVideoHashes } from "#db/queries/upload.ts";
import { ok, type Result } from "#lib/result.ts";
import { isStored, isStoredWhole } from "#lib/storage/store.ts";
import type { Refusal } from "./act.ts";
import { refuse } from "./change.ts";

interface RestorePlace {
  readonly folder: string;
  /** Must hold no database. */
  readonly dataFolder: string;
}

/**
 * Puts a backup into a data folder that holds no database yet. Looks it through first: a backup that
 * is not whole is refused, and nothing is put anywhere.
 */
export function restoreBackup({
  folder,
  dataFolder,
}: RestorePlace): Result<{ files: number }, Refusal> {
  const source = path.join(folder, "wyebook.db");
  if (!fs.existsSync(source)) return refuse("not-found", "", `there is no backup in ${folder}`);
  if (fs.existsSync(path.join(dataFolder, "wyebook.db")))
    return refuse(
      "already-there",
      "",
      `${dataFolder} holds an office already; move it away first, or name another folder with WYEBOOK_DATA`,
    );
  const filling = `${dataFolder}.filling`;
  fs.rmSync(filling, { recursive: true, force: true });
  fs.cpSync(folder, filling, { recursive: true });
  try {
    const looked = lookThrough(filling);
    if (!looked.ok) return looked;
    fs.mkdirSync(path.dirname(dataFolder), { recursive: true });
    fs.cpSync(filling, dataFolder, { recursive: true });
    return looked;
  } finally {
    fs.rmSync(filling, { recursive: true, force: true });
  }
}

function lookThrough(folder: string): Result<{ files: number }, Refusal> {
  const db = openDb(path.join(folder, "wyebook.db"));
  const whole = isWhole(db);
  const here = listVideoHashes(db).filter((sha256) => isStored(folder, sha256));
  const hashes = [...new Set([...listStoredHashes(db), ...here])];
  db.$client.pragma("journal_mode = DELETE");
  db.$client.close();
  if (!whole) return refuse("bad-value", "", "the backup's database is not whole");
  const broken = hashes.find((sha256) => !isStoredWhole(folder, sha256));
  if (broken !== undefined)
    return refuse("bad-value", "", `the backup's file ${broken} is missing or was changed`);
  return ok({ files: hashes.length });
}
