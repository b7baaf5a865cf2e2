import fs from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { drizzle } from "drizzle-orm/better-sqlite3";
import type { BaseSQLiteDatabase } from "drizzle-orm/sqlite-core";
import { foldText } from "./fold-text.ts";
import { bringUpToDate } from "./migrate.ts";
import * as schema from "./schema.ts";

/** The open database, or a transaction on it: query functions take either. Always synchronous. */
export type Db = BaseSQLiteDatabase<"sync", Database.RunResult, typeof schema>;

/** What `openDb` returns: a database that can also be closed. */
export type OpenDb = Db & { readonly $client: Database.Database };

/** How long another program's lock is waited for, in milliseconds. */
const PATIENCE = 10_000;

/** After how long a lock is tried again while others are served, in milliseconds; most are held shortly. */
const AGAIN = [2, 5, 10, 20, 50];

// Of an error on the server a page is told the digest alone. SQLite's own code says what a person can
// do about it (app/_components/fault.ts has the words).
Object.defineProperty(Database.SqliteError.prototype, "digest", {
  // The module is there more than once in a built server.
  configurable: true,
  get(this: { readonly code: string }) {
    return this.code;
  },
});

/**
 * Opens the database at `file` (`:memory:`, or the bytes of one, for one that is gone when closed),
 * makes it where it is not there, and brings its tables up to date. While it waits for a lock of
 * another program, nothing else goes on in the process: `patience` says for how long, in milliseconds.
 */
export function openDb(file: string | Buffer, { patience = PATIENCE } = {}): OpenDb {
  if (typeof file === "string" && file !== ":memory:") makePrivate(file);
  const client = new Database(file);
  client.pragma(`busy_timeout = ${patience}`);
  client.pragma("journal_mode = WAL");
  client.pragma("synchronous = FULL");
  client.pragma("foreign_keys = ON");
  // Without it a row that is replaced by an insert is removed behind its delete trigger's back.
  client.pragma("recursive_triggers = ON");
  client.function("fold_text", { deterministic: true }, (text) => foldText(String(text ?? "")));
  bringUpToDate(client);
  return drizzle(client, { schema });
}

/** The folder and the database are the owner's alone; SQLite makes its log files like the database. */
function makePrivate(file: string): void {
  fs.mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
  fs.closeSync(fs.openSync(file, "a", 0o600));
  for (const [place, mode] of [
    [path.dirname(file), 0o700],
    [file, 0o600],
  ] as const)
    if ((fs.statSync(place).mode & 0o777) !== mode) tryChange(place, mode);
}

/** What somebody else owns is left as it is. */
function tryChange(place: string, mode: number): void {
  try {
    fs.chmodSync(place, mode);
  } catch {
    return;
  }
}

/**
 * Waits until nobody else holds the database's lock for writing, at most as long as a worker would,
 * while the process goes on serving. Throws SQLite's own error where it never came free.
 */
export async function untilWritable({ $client: client }: OpenDb): Promise<void> {
  const end = Date.now() + PATIENCE;
  for (let tries = 0; !isWritable(client, Date.now() >= end); tries += 1)
    await new Promise((resolve) => setTimeout(resolve, AGAIN[tries] ?? AGAIN.at(-1)));
}

function isWritable(client: Database.Database, last: boolean): boolean {
  if (client.inTransaction) return true;
  const patience = client.pragma("busy_timeout", { simple: true });
  client.pragma("busy_timeout = 0");
  try {
    client.exec("BEGIN IMMEDIATE; ROLLBACK");
    return true;
  } catch (error) {
    if (!(error instanceof Database.SqliteError) || error.code !== "SQLITE_BUSY" || last)
      throw error;
    return false;
  } finally {
    client.pragma(`busy_timeout = ${patience}`);
  }
}
