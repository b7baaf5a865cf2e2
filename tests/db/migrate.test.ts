import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { readMigrationFiles } from "drizzle-orm/migrator";
import { beforeAll, expect, test } from "vitest";
import { closedSetTriggers } from "#db/closed-sets.ts";
import { bringUpToDate, lendFunctions } from "#db/migrate.ts";
import { openDb } from "#db/open.ts";
import { aFolder } from "../support/office.ts";

const FOLDER = "db/migrations";
const MIGRATIONS = readMigrationFiles({ migrationsFolder: FOLDER });

type Rows = Readonly<Record<string, readonly unknown[]>>;

/** The demo, as the seed fills it: every kind of row that the program makes is in it. */
let demo: Buffer;

beforeAll(() => {
  const dataFolder = fs.mkdtempSync(path.join("/tmp", "wyebook-demo-"));
  const filled = spawnSync(process.execPath, ["--import", "tsx", "seed/index.ts"], {
    env: { ...process.env, WYEBOOK_DATA: dataFolder },
    encoding: "utf8",
  });
  if (filled.status !== 0) throw new Error(filled.stderr);
  const file = path.join(dataFolder, "wyebook.db");
  const filledDb = new Database(file);
  // A database in memory has no write-ahead log.
  filledDb.pragma("journal_mode = DELETE");
  filledDb.close();
  demo = fs.readFileSync(file);
  fs.rmSync(dataFolder, { recursive: true, force: true });
});

/** The demo's rows in a database with the first `count` migrations, as far as it has room for them. */
function demoAt(count: number): Database.Database {
  const full = new Database(demo);
  const old = new Database(":memory:");
  lendFunctions(old);
  old.exec("CREATE TABLE migrations (made_at INTEGER PRIMARY KEY, hash TEXT NOT NULL)");
  for (const { sql, folderMillis, hash } of MIGRATIONS.slice(0, count)) {
    const triggers = triggersOf(old);
    for (const statement of sql) old.exec(statement);
    // As the program does it: triggers outlive a table that is built anew.
    if (!/\bTRIGGER\b/.test(sql.join()))
      for (const each of triggers)
        if (!triggersOf(old).some(({ name }) => name === each.name)) old.exec(each.sql);
    old.prepare("INSERT INTO migrations VALUES (?, ?)").run(folderMillis, hash);
  }
  old.pragma("foreign_keys = OFF");
  for (const table of tablesOf(old).filter((each) => tablesOf(full).includes(each))) {
    const columns = infoOf(old, table);
    const there = columnsOf(full, table);
    const values = columns.map((each) => (there.includes(each.name) ? `"${each.name}"` : ""));
    const names = columns.map(({ name }) => `"${name}"`).join(", ");
    const fill = old.prepare(
      `INSERT OR IGNORE INTO "${table}" (${names}) VALUES (${columns.map(() => "?").join(", ")})`,
    );
    const picked = values.map((value, at) => value || standIn(columns[at])).join(", ");
    for (const row of full.prepare(`SELECT ${picked} FROM "${table}"`).raw().all()) fill.run(row);
  }
  removeOrphans(old);
  old.pragma("foreign_keys = ON");
  full.close();
  return old;
}

/** Kept beside the facts, and made from them. */
const MADE = ["line_summaries", "due_things", "tallies", "search_texts"];

/** Every table of facts: not the full-text index, which SQLite keeps in tables of its own. */
function tablesOf(db: Database.Database): string[] {
  return db
    .prepare<[], string>(
      "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'search_index%' AND name <> 'migrations' ORDER BY name",
    )
    .pluck()
    .all()
    .filter((name) => !MADE.includes(name));
}

interface Column {
  readonly name: string;
  readonly type: string;
  readonly notnull: 0 | 1;
}

function infoOf(db: Database.Database, table: string): Column[] {
  return db.pragma(`table_info("${table}")`) as Column[];
}

function columnsOf(db: Database.Database, table: string): string[] {
  return infoOf(db, table).map(({ name }) => name);
}

/** What a column holds that the demo's version no longer has. */
function standIn(column: Column | undefined): string {
  if (!column?.notnull) return "NULL";
  return column.type.toLowerCase() === "text" ? "'[]'" : "0";
}

/** Every row of every table, by the tables and columns that `like` has too. */
function rowsOf(db: Database.Database, like = db): Rows {
  const shared = tablesOf(db).filter((table) => tablesOf(like).includes(table));
  const rows = shared.map((table) => {
    const there = columnsOf(like, table);
    const columns = columnsOf(db, table).filter((each) => there.includes(each));
    const names = columns.sort().map((each) => `"${each}"`);
    const found = db.prepare(`SELECT ${names.join(", ")} FROM "${table}"`).all();
    return [table, found.map((row) => JSON.stringify(row)).sort()];
  });
  return Object.fromEntries(rows) as Rows;
}

function triggersOf(db: Database.Database): { readonly name: string; readonly sql: string }[] {
  return db
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_master WHERE type = 'trigger' ORDER BY name",
    )
    .all();
}

/** A folder with the program's migrations and one more behind them. */
function withMigration(sql: string): string {
  const folder = path.join(aFolder(), "migrations");
  fs.cpSync(FOLDER, folder, { recursive: true });
  const journal = path.join(folder, "meta", "_journal.json");
  const { entries, ...rest } = JSON.parse(fs.readFileSync(journal, "utf8"));
  const last = entries.at(-1);
  entries.push({ ...last, idx: last.idx + 1, when: last.when + 1, tag: "next" });
  fs.writeFileSync(journal, JSON.stringify({ ...rest, entries }));
  fs.writeFileSync(path.join(folder, "next.sql"), sql);
  return folder;
}

/** What the migration tool writes to build a table anew. */
function rebuild(db: Database.Database, table: string): string {
  const made = db
    .prepare<[string], string>("SELECT sql FROM sqlite_master WHERE type = 'table' AND name = ?")
    .pluck()
    .get(table);
  const names = columnsOf(db, table)
    .map((each) => `"${each}"`)
    .join(", ");
  return [
    `CREATE TABLE \`__new_${table}\` ${made?.slice(made.indexOf("("))}`,
    `INSERT INTO \`__new_${table}\` (${names}) SELECT ${names} FROM \`${table}\``,
    `DROP TABLE \`${table}\``,
    `ALTER TABLE \`__new_${table}\` RENAME TO \`${table}\``,
  ].join(";--> statement-breakpoint\n");
}

test("the demo has rows in the tables that others refer to", () => {
  const db = demoAt(MIGRATIONS.length);
  const { lines, parties, notices, deliveries, consents, history } = rowsOf(db);
  for (const rows of [lines, parties, notices, deliveries, consents, history])
    expect(rows?.length).toBeGreaterThan(0);
  const full = new Database(demo);
  expect(rowsOf(db)).toEqual(rowsOf(full));
  full.close();
  db.close();
});

test.each(MIGRATIONS.map((_, at) => at + 1))(
  "a full database with %i migrations comes up to date and loses nothing",
  (count) => {
    const db = demoAt(count);
    const newest = openDb(":memory:");
    const old = new Database(db.serialize());
    const before = rowsOf(db, newest.$client);
    expect(total(before)).toBeGreaterThan(300);
    bringUpToDate(db);
    expect(rowsOf(db, old)).toEqual(before);
    expect(db.pragma("foreign_key_check")).toEqual([]);
    expect(db.pragma("foreign_keys", { simple: true })).toBe(1);
    expect(triggersOf(db)).toEqual(triggersOf(newest.$client));
    newest.$client.close();
    old.close();
    db.close();
  },
);

function total(rows: Rows): number {
  return Object.values(rows).reduce((sum, each) => sum + each.length, 0);
}

function removeOrphans(db: Database.Database): void {
  for (;;) {
    const orphans = db.pragma("foreign_key_check") as { table: string; rowid: number }[];
    if (orphans.length === 0) return;
    for (const { table, rowid } of orphans)
      db.prepare(`DELETE FROM "${table}" WHERE rowid = ?`).run(rowid);
  }
}

test.each([["lines"], ["parties"], ["notices"], ["tie_ins"], ["history"], ["signatures"]])(
  "a full database comes through a new %s table with its rows, references and triggers",
  (table) => {
    const db = demoAt(MIGRATIONS.length);
    bringUpToDate(db);
    const rows = rowsOf(db);
    const triggers = triggersOf(db);
    bringUpToDate(db, withMigration(rebuild(db, table)));
    expect(rowsOf(db)).toEqual(rows);
    expect(triggersOf(db)).toEqual(triggers);
    expect(db.pragma("foreign_key_check")).toEqual([]);
    expect(() => db.prepare("DELETE FROM lines").run()).toThrow("FOREIGN KEY constraint failed");
    expect(() => db.prepare("DELETE FROM history").run()).toThrow("append-only");
    db.close();
  },
);

test("a migration that would break a reference changes nothing at all", () => {
  const db = demoAt(MIGRATIONS.length);
  bringUpToDate(db);
  const rows = rowsOf(db);
  const folder = withMigration(
    "DELETE FROM deliveries;--> statement-breakpoint\nDELETE FROM notices",
  );
  expect(() => bringUpToDate(db, folder)).toThrow(/would name what is not there.*notices/);
  expect(rowsOf(db)).toEqual(rows);
  expect(db.pragma("foreign_keys", { simple: true })).toBe(1);
  db.close();
});

test("a word that was added to a closed set is taken by an older database, without a migration", () => {
  const db = demoAt(MIGRATIONS.length);
  bringUpToDate(db);
  const [trigger] = closedSetTriggers().filter(({ name }) => name === "notices_words_updated");
  // As a version without the last of its words had it.
  db.exec("DROP TRIGGER notices_words_updated");
  db.exec((trigger?.sql ?? "").replace(/`kind` NOT IN \([^)]*\)/, "`kind` NOT IN ('notice')"));
  const change = db.prepare("UPDATE notices SET kind = kind");
  expect(() => change.run()).toThrow("closed set: notices.kind");
  bringUpToDate(db);
  expect(change.run().changes).toBeGreaterThan(0);
  db.close();
});

test("a database that is up to date is opened while another program writes to it", () => {
  const file = path.join(aFolder(), "wyebook.db");
  openDb(file).$client.close();
  const other = new Database(file);
  other.exec("BEGIN IMMEDIATE");
  // Whatever would write has to wait for the other, and then gives up.
  expect(() => openDb(file).$client.close()).not.toThrow();
  other.close();
});

test("the kind of work is said where a title names one kind and no other", () => {
  const before = MIGRATIONS.findIndex(({ sql }) =>
    sql.some((each) => /scope_items.*ADD `kind`/.test(each)),
  );
  const db = demoAt(before);
  const like = db.prepare("SELECT * FROM scope_items LIMIT 1").get() as Record<string, unknown>;
  const names = Object.keys(like);
  const add = db.prepare(
    `INSERT INTO scope_items (${names.join(", ")}) VALUES (${names.map((name) => `@${name}`).join(", ")})`,
  );
  const titles = {
    "Dig and replace, 10 to 18 ft": "dig-and-replace",
    "Line the pipe, 10 to 70 ft": "line",
    "Liner (6 in)": "line",
    "Pipe bursting": "burst",
    "Spot repair of the crack": "spot-repair",
    "Cut roots": "clear",
    "Hydro jet, then jet again": "clean",
    "Reconnect T2": "reconnect",
    "Permit fee": "permit-fee",
    Mobilization: "other",
    "Line the pipe and open each tie-in again": "unknown",
    "Dig permit": "unknown",
    "Repair of the line": "unknown",
  };
  for (const [at, title] of Object.keys(titles).entries())
    add.run({ ...like, id: `w${at}`, title });
  bringUpToDate(db);
  const kinds = db
    .prepare("SELECT title, kind FROM scope_items WHERE id GLOB 'w[0-9]*'")
    .raw()
    .all();
  expect(Object.fromEntries(kinds as [string, string][])).toEqual(titles);
  db.close();
});

test("a license entered under the column's old name is there under its new one", () => {
  const before = MIGRATIONS.findIndex(({ sql }) => sql.join().includes("TO `license`"));
  const db = demoAt(before);
  db.prepare("UPDATE office SET licence = 'L-1', licence_expires_on = '2027-01-31'").run();
  bringUpToDate(db);
  const found = db.prepare("SELECT license, license_expires_on FROM office").raw().all();
  expect(found).toEqual([["L-1", "2027-01-31"]]);
  db.close();
});

test("an office from before there were summaries has one of each line, and its words are found", () => {
  const before = MIGRATIONS.findIndex(({ sql }) => sql.join().includes("line_summaries"));
  const db = demoAt(before);
  bringUpToDate(db);
  const lines = db.prepare("SELECT count(*) FROM lines").pluck().get();
  const stale = db.prepare("SELECT count(*) FROM line_summaries WHERE stale = 1").pluck().get();
  expect(stale).toBe(lines);
  const counted = db.prepare("SELECT sum(count) FROM tallies WHERE name IN ('open', 'closed')");
  expect(counted.pluck().get()).toBe(lines);
  const found = db.prepare("SELECT count(*) FROM search_index WHERE search_index MATCH ?").pluck();
  expect(found.get('"fennel" *')).toBeGreaterThan(0);
  // What was gathered by the migration is taken out again by the triggers.
  db.prepare("UPDATE parties SET name = 'Nobody'").run();
  expect(found.get('"nobody" *')).toBe(db.prepare("SELECT count(*) FROM parties").pluck().get());
  db.close();
});

test("tickets and permits from before white-lining and posted cards say nothing of either", () => {
  const before = MIGRATIONS.findIndex(({ sql }) => sql.join().includes("`white_lined_on`"));
  const db = demoAt(before);
  const numbers = () =>
    db.prepare("SELECT number FROM locate_tickets ORDER BY rowid").pluck().all();
  const was = numbers();
  bringUpToDate(db);
  expect(was.length).toBeGreaterThan(0);
  expect(numbers()).toEqual(was);
  const lined = "white_lined_on, white_lined_by, white_lined_how, white_line_photo_id";
  expect(db.prepare(`SELECT DISTINCT ${lined} FROM locate_tickets`).raw().all()).toEqual([
    [null, "", null, null],
  ]);
  const posted = "SELECT DISTINCT posted_on, posted_by, posted_place FROM permits";
  expect(db.prepare(posted).raw().all()).toEqual([[null, "", ""]]);
  db.close();
});

test("replies from before they could be to an invoice are all there, and to none", () => {
  const before = MIGRATIONS.findIndex(({ sql }) => sql.join().includes("`__new_replies`"));
  const db = demoAt(before);
  const rows = (columns: string) =>
    db.prepare(`SELECT ${columns} FROM replies ORDER BY line_id, id`).all();
  const columns = columnsOf(db, "replies").join(", ");
  const was = rows(columns);
  bringUpToDate(db);
  expect(was.length).toBeGreaterThan(0);
  expect(columns).not.toContain("entry_id");
  expect(rows(columns)).toEqual(was);
  expect(rows("entry_id")).toEqual(was.map(() => ({ entry_id: null })));
  db.close();
});

test("what named nothing before every reference was held names nothing afterward, and the rest stays", () => {
  const before = MIGRATIONS.findIndex(({ sql }) => sql.join().includes("`__new_observations`"));
  const db = demoAt(before);
  const column = (table: string, name: string) =>
    db.prepare(`SELECT ${name} FROM ${table} ORDER BY rowid`).pluck().all();
  const pictures = column("observations", "picture_id");
  for (const guard of ["splits_kept_change"]) db.exec(`DROP TRIGGER IF EXISTS ${guard}`);
  db.exec("UPDATE observations SET picture_id = 'gone' WHERE picture_id IS NULL");
  db.exec("UPDATE scope_items SET option_id = 'gone', dropped_by_id = 'gone'");
  db.exec("UPDATE splits SET option_id = 'gone'");
  db.exec("UPDATE lines SET option_id = 'gone', rule_id = 'gone'");
  bringUpToDate(db);
  expect(column("observations", "picture_id")).toEqual(pictures);
  for (const [table, name] of [
    ["scope_items", "option_id"],
    ["scope_items", "dropped_by_id"],
    ["splits", "option_id"],
    ["lines", "option_id"],
    ["lines", "rule_id"],
  ] as const)
    expect(column(table, name).filter((each) => each !== null)).toEqual([]);
  expect(() => db.exec("UPDATE lines SET option_id = 'gone'")).toThrow("FOREIGN KEY");
  db.close();
});
