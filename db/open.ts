import fs from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { drizzle } from "drizzle-orm/better-sqlite3";
import { readMigrationFiles } from "drizzle-orm/migrator";
import type { BaseSQLiteDatabase } from "drizzle-orm/sqlite-core";
import { foldText } from "./fold-text.ts";
import { guards, isGuard } from "./guards.ts";
import * as schema from "./schema.ts";

/** The open database, or a transaction on it: query functions take either. Always synchronous. */
export type Db = BaseSQLiteDatabase<"sync", Database.RunResult, typeof schema>;

/** What `openDb` returns: a database that can also be closed. */
export type OpenDb = Db & { readonly $client: Database.Database };

/** Commands run in the program's own folder; bundlers move source files, so their place says nothing. */
const MIGRATIONS = path.join(process.cwd(), "db", "migrations");

/**
 * Opens the database at `file` (`:memory:` for one that is gone when closed), makes it where it is
 * not there, and brings its tables up to date.
 */
export function openDb(file: string): OpenDb {
  if (file !== ":memory:") fs.mkdirSync(path.dirname(file), { recursive: true });
  const client = new Database(file);
  client.pragma("busy_timeout = 10000");
  client.pragma("journal_mode = WAL");
  client.pragma("synchronous = FULL");
  client.pragma("foreign_keys = ON");
  // Without it a row that is replaced by an insert is removed behind its delete trigger's back.
  client.pragma("recursive_triggers = ON");
  client.function("fold_text", { deterministic: true }, (text) => foldText(String(text ?? "")));
  bringUpToDate(client);
  return drizzle(client, { schema });
}

/**
 * Applies the migrations that are not yet applied, all or none. The page server and the worker may
 * open a new database at the same moment, so looking and applying are one locked step.
 */
function bringUpToDate(client: Database.Database): void {
  const apply = client.transaction(() => {
    client.exec(
      "CREATE TABLE IF NOT EXISTS migrations (made_at INTEGER PRIMARY KEY, hash TEXT NOT NULL)",
    );
    const last = Number(client.prepare("SELECT max(made_at) FROM migrations").pluck().get() ?? 0);
    dropGuards(client);
    for (const migration of readMigrationFiles({ migrationsFolder: MIGRATIONS })) {
      if (migration.folderMillis <= last) continue;
      for (const statement of migration.sql) client.exec(statement);
      client
        .prepare("INSERT INTO migrations VALUES (?, ?)")
        .run(migration.folderMillis, migration.hash);
    }
    for (const { sql } of guards()) client.exec(sql);
  });
  apply.immediate();
}

/** Migrations may have to touch what is guarded; the guards are made again afterwards. */
function dropGuards(client: Database.Database): void {
  const names = client.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").pluck();
  for (const name of names.all() as string[])
    if (isGuard(name)) client.exec(`DROP TRIGGER "${name}"`);
}
