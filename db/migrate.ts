import path from "node:path";
import type Database from "better-sqlite3";
import { readMigrationFiles } from "drizzle-orm/migrator";
import { testIdFrom } from "#lib/domain/testing/test-day-results.ts";
import { closedSetTriggers, holdsClosedSet } from "./closed-sets.ts";
import { guards, isGuard } from "./guards.ts";
import { currentTriggers, keepsCurrent } from "./kept-current.ts";

/** Commands run in the program's own folder; bundlers move source files, so their place says nothing. */
const MIGRATIONS = path.join(process.cwd(), "db", "migrations");

interface Migration {
  readonly sql: string[];
  readonly folderMillis: number;
  readonly hash: string;
}

interface Trigger {
  readonly name: string;
  readonly table: string;
  readonly sql: string;
}

/** The triggers that are made from lists in the code, not by a migration. */
function listedTriggers(): readonly Pick<Trigger, "name" | "sql">[] {
  return [...closedSetTriggers(), ...guards(), ...currentTriggers()];
}

function isListed(name: string): boolean {
  return holdsClosedSet(name) || isGuard(name) || keepsCurrent(name);
}

/**
 * Applies the migrations of `folder` that are not yet applied, and brings the triggers that hold
 * closed sets and proof up to date, all or none. The page server and the worker may open a new database at the same
 * moment, so looking and applying are one locked step; where nothing is to be done, nothing is
 * locked. Foreign keys are off meanwhile, since a table that others refer to cannot be built anew
 * under them, and every reference is checked before anything counts: throws where one is broken.
 */
export function bringUpToDate(client: Database.Database, folder = MIGRATIONS): void {
  const migrations = readMigrationFiles({ migrationsFolder: folder });
  if (isUpToDate(client, migrations)) return;
  lendFunctions(client);
  // Inside of a transaction this pragma does nothing.
  client.pragma("foreign_keys = OFF");
  try {
    client.transaction(() => apply(client, migrations)).immediate();
  } finally {
    client.pragma("foreign_keys = ON");
  }
}

/** What migrations ask of the core, since SQL has no such sum. */
export function lendFunctions(client: Database.Database): void {
  client.function("planned_test_id", { deterministic: true }, (id) => testIdFrom(String(id)));
}

function isUpToDate(client: Database.Database, migrations: readonly Migration[]): boolean {
  if (!hasTable(client, "migrations")) return false;
  return pendingOf(client, migrations).length === 0 && staleTriggers(client).length === 0;
}

function apply(client: Database.Database, migrations: readonly Migration[]): void {
  client.exec(
    "CREATE TABLE IF NOT EXISTS migrations (made_at INTEGER PRIMARY KEY, hash TEXT NOT NULL)",
  );
  const pending = pendingOf(client, migrations);
  // Migrations may rename words and touch what is guarded; what counts is how it is in the end.
  for (const { name } of triggersIn(client)) if (isListed(name)) drop(client, name);
  for (const migration of pending) {
    applyOne(client, migration);
    client
      .prepare("INSERT INTO migrations VALUES (?, ?)")
      .run(migration.folderMillis, migration.hash);
  }
  for (const { sql } of listedTriggers()) client.exec(sql);
  if (pending.length === 0) return;
  const broken = client.pragma("foreign_key_check") as { table: string; parent: string }[];
  const [first] = broken;
  if (first !== undefined)
    throw new Error(
      `After the migrations, ${broken.length} rows would name what is not there, first one of ${first.table} in ${first.parent}; nothing was changed`,
    );
}

function pendingOf(client: Database.Database, migrations: readonly Migration[]): Migration[] {
  const applied = new Set(client.prepare("SELECT made_at FROM migrations").pluck().all());
  return migrations.filter(({ folderMillis }) => !applied.has(folderMillis));
}

/**
 * A table that is built anew loses its triggers, and one that is away while others are renamed
 * breaks those that name it. So triggers are put away and back, unless the migration is about them.
 */
function applyOne(client: Database.Database, { sql }: Migration): void {
  const away = sql.some((each) => /\b(CREATE|DROP)\s+TRIGGER\b/i.test(each))
    ? []
    : triggersIn(client);
  for (const { name } of away) drop(client, name);
  for (const statement of sql) client.exec(statement);
  for (const trigger of away) if (hasTable(client, trigger.table)) client.exec(trigger.sql);
}

/** Which of the listed triggers are missing, changed, or too many. */
function staleTriggers(client: Database.Database): string[] {
  const there = new Map(triggersIn(client).map(({ name, sql }) => [name, sql]));
  const wanted = new Map(listedTriggers().map(({ name, sql }) => [name, sql]));
  const changed = [...wanted].flatMap(([name, sql]) => (there.get(name) === sql ? [] : [name]));
  const extra = [...there.keys()].filter((name) => isListed(name) && !wanted.has(name));
  return [...changed, ...extra];
}

function triggersIn(client: Database.Database): Trigger[] {
  return client
    .prepare<[], Trigger>(
      "SELECT name, tbl_name AS \"table\", sql FROM sqlite_master WHERE type = 'trigger' ORDER BY rowid",
    )
    .all();
}

function drop(client: Database.Database, name: string): void {
  client.exec(`DROP TRIGGER "${name}"`);
}

function hasTable(client: Database.Database, name: string): boolean {
  const found = client.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = ?");
  return found.get(name) !== undefined;
}
