import "server-only";
import { type OpenDb, untilWritable } from "#db/open.ts";
import { readEnv } from "#lib/env.ts";
import { MOVED_AWAY, type OfficeFault, openOffice } from "#lib/operations/open-office.ts";
import { databaseInode } from "#lib/storage/data-folder.ts";

interface Kept {
  readonly db: OpenDb;
  /** Which file was opened: another one under its name is not the office's any more. */
  readonly inode: number;
}

/** A request that waits for a lock keeps every other one waiting: `writable` waits without that. */
const PATIENCE = 1_000;

const kept = globalThis as unknown as { wyebookDb?: Kept; wyebookFault?: OfficeFault };

/**
 * The process's one open database; opened on first use and kept, also over reloads in development.
 * Throws where the office's data can't be read: the error's digest says on the page what is wrong.
 */
export function db(): OpenDb {
  if (kept.wyebookFault !== undefined) throw unreadable(kept.wyebookFault);
  if (kept.wyebookDb === undefined) kept.wyebookDb = opened();
  if (inodeNow() !== kept.wyebookDb.inode) throw unreadable(MOVED_AWAY);
  return kept.wyebookDb.db;
}

/** Waits until another program that writes to the database is done, while other requests go on. */
export async function writable(): Promise<void> {
  await untilWritable(db());
}

function opened(): Kept {
  const { dataFolder } = readEnv();
  const found = openOffice(dataFolder, new Date().toISOString(), { patience: PATIENCE });
  if (!found.ok) {
    // A program that holds the file shut lets go of it again; what is damaged stays damaged.
    if (found.error.kind !== "busy") kept.wyebookFault = found.error;
    throw unreadable(found.error);
  }
  // The last one to close writes everything into the database itself and takes its log away.
  process.once("exit", () => found.value.$client.close());
  return { db: found.value, inode: inodeNow() ?? 0 };
}

function inodeNow(): number | null {
  return databaseInode(readEnv().dataFolder);
}

/** Only an error's digest comes to the page; app/error.tsx has the words for it. */
function unreadable({ kind, words }: OfficeFault): Error {
  return Object.assign(new Error(words), { digest: `OFFICE_${kind.toUpperCase()}` });
}
