import "server-only";
import path from "node:path";
import { type Db, openDb } from "#db/open.ts";
import { readEnv } from "#lib/env.ts";

const kept = globalThis as unknown as { wyebookDb?: Db };

/** The process's one open database; opened on first use and kept, also over reloads in development. */
export function db(): Db {
  kept.wyebookDb ??= openDb(path.join(readEnv().dataFolder, "wyebook.db"));
  return kept.wyebookDb;
}
