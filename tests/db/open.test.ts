import { fork } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { getTableName, is } from "drizzle-orm";
import { readMigrationFiles } from "drizzle-orm/migrator";
import { getTableConfig, SQLiteTable } from "drizzle-orm/sqlite-core";
import { expect, test, vi } from "vitest";
import { openDb, untilWritable } from "#db/open.ts";
import { getJob } from "#db/queries/job.ts";
import * as schema from "#db/schema.ts";
import { aProperty, aReply, aRun, aUnit } from "../support/file.ts";
import { aDb, addRows, aFolder, anAct, anOpenLine, fileOf } from "../support/office.ts";

test("openDb() opens with a write-ahead log, foreign keys and patience", () => {
  const db = openDb(path.join(aFolder(), "deep", "wyebook.db"));
  const pragma = (name: string) => db.$client.pragma(name, { simple: true });
  expect(pragma("journal_mode")).toBe("wal");
  expect(pragma("foreign_keys")).toBe(1);
  expect(pragma("busy_timeout")).toBe(10_000);
  db.$client.close();
});

test("openDb() leaves the folder and the database to their owner alone, also one made before", () => {
  const folder = path.join(aFolder(), "office");
  fs.mkdirSync(folder, { mode: 0o755 });
  fs.writeFileSync(path.join(folder, "wyebook.db"), "", { mode: 0o644 });
  const db = openDb(path.join(folder, "wyebook.db"));
  anOpenLine(anAct(db));
  const modes = fs
    .readdirSync(folder)
    .map((name) => [name, fs.statSync(path.join(folder, name)).mode & 0o777] as const);
  expect(fs.statSync(folder).mode & 0o777).toBe(0o700);
  expect(new Map(modes)).toEqual(
    new Map(["wyebook.db", "wyebook.db-shm", "wyebook.db-wal"].map((name) => [name, 0o600])),
  );
  db.$client.close();
});

test("untilWritable() waits for another program's lock while the process goes on, and is there when it is free", async () => {
  const file = path.join(aFolder(), "wyebook.db");
  const [ours, theirs] = [openDb(file), new Database(file)];
  theirs.exec("BEGIN IMMEDIATE");
  let isFree = false;
  const free = untilWritable(ours).then(() => {
    isFree = true;
  });
  // Tries of a lock that is held go by, and between them this process goes on.
  const tried = vi.spyOn(ours.$client, "exec");
  await expect.poll(() => tried.mock.calls.length).toBeGreaterThan(2);
  expect(isFree).toBe(false);
  expect(ours.$client.pragma("busy_timeout", { simple: true })).toBe(10_000);
  theirs.exec("COMMIT");
  await free;
  theirs.close();
  ours.$client.exec("BEGIN IMMEDIATE; ROLLBACK");
  ours.$client.close();
});

test("openDb() leaves what is there when it opens a database again", () => {
  const file = path.join(aFolder(), "wyebook.db");
  const first = openDb(file);
  const act = anAct(first);
  const lineId = anOpenLine(act);
  const before = fileOf(act, lineId);
  first.$client.close();
  const again = openDb(file);
  expect(fileOf(anAct(again), lineId)).toEqual(before);
  again.$client.close();
});

test("openDb() makes every table of the schema by its migrations", () => {
  const db = aDb();
  const made = db.$client
    .prepare("select name from sqlite_master where type = 'table'")
    .pluck()
    .all();
  const exported: unknown[] = Object.values(schema);
  const wanted = exported.flatMap((each) => (is(each, SQLiteTable) ? [each] : []));
  expect(wanted.length).toBeGreaterThan(40);
  for (const table of wanted) {
    expect(made).toContain(getTableName(table));
    const columns = db.$client.pragma(`table_info(${getTableName(table)})`) as { name: string }[];
    expect(columns.map(({ name }) => name).sort()).toEqual(
      getTableConfig(table)
        .columns.map(({ name }) => name)
        .sort(),
    );
  }
});

test("openDb() in two processes at the same moment sets a new database up once", async () => {
  const folder = aFolder();
  const script = path.join(folder, "open.mts");
  const source = path.resolve("db/open.ts");
  fs.writeFileSync(
    script,
    `const { openDb } = await import(${JSON.stringify(source)});\nopenDb(process.argv[2]).$client.close();\n`,
  );
  const file = path.join(folder, "wyebook.db");
  const run = () =>
    new Promise<number | null>((resolve) => {
      const child = fork(script, [file], { execArgv: ["--import", "tsx"], stdio: "ignore" });
      child.once("exit", resolve);
    });
  expect(await Promise.all([run(), run(), run()])).toEqual([0, 0, 0]);
});

test("the history takes entries, and neither changes nor removals", () => {
  const db = aDb();
  const act = anAct(db);
  const lineId = anOpenLine(act);
  const before = fileOf(act, lineId).history;
  expect(before).toHaveLength(1);
  expect(() => db.$client.prepare("update history set sentence = 'x'").run()).toThrow(
    "history is append-only",
  );
  expect(() => db.$client.prepare("delete from history").run()).toThrow("history is append-only");
  expect(() =>
    db.$client.prepare("insert or replace into history select * from history").run(),
  ).toThrow();
  expect(fileOf(act, lineId).history).toEqual(before);
});

test("the database itself refuses a word outside of its closed set and a row that names nothing", () => {
  const db = aDb();
  const act = anAct(db);
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "properties" }, [aProperty("12")]);
  addRows(act, { lineId, table: "runs" }, [aRun("run")]);
  addRows(act, { lineId, table: "units" }, [aUnit("u", "12")]);
  const run = (sql: string) => () => db.$client.prepare(sql).run();
  expect(run("update runs set looks = 'sideways'")).toThrow("closed set: runs.looks");
  expect(run("update units set property_id = 'nowhere'")).toThrow("FOREIGN KEY constraint failed");
  expect(run("delete from properties")).toThrow("FOREIGN KEY constraint failed");
});

test("openDb() brings a database of the first version up to date and keeps what is in it", () => {
  const file = path.join(aFolder(), "wyebook.db");
  const old = new Database(file);
  old.exec("CREATE TABLE migrations (made_at INTEGER PRIMARY KEY, hash TEXT NOT NULL)");
  for (const each of readMigrationFiles({ migrationsFolder: "db/migrations" }).slice(0, 2)) {
    for (const statement of each.sql) old.exec(statement);
    old.prepare("INSERT INTO migrations VALUES (?, ?)").run(each.folderMillis, each.hash);
  }
  old.exec(`
    INSERT INTO lines (id, name, town, opened_on, material, main_note, note)
      VALUES ('l1', 'Alley', 'Quillhaven', '2026-10-29', 'unknown', '', '');
    INSERT INTO runs (line_id, id, position, name, ran_on, operator, access_point, direction,
        zero_at, from_counter_cft, crossing_seen, note)
      VALUES ('l1', 'r1', 0, 'Run 1', '2026-11-03', '', '', 'upstream', '', 0, 'no', '');
    INSERT INTO observations (line_id, id, position, run_id, kind, counter_cft, material, fitting,
        code, note)
      VALUES ('l1', 'o1', 0, 'r1', 'tie-in', 2410, 'unknown', 'unknown', '', 'seen');
    INSERT INTO parties (line_id, id, position, kind, name, email, phone, language, needs, note)
      VALUES ('l1', 'p1', 0, 'person', 'Ada', '', '', 'en', '', '');
    INSERT INTO notices (line_id, id, position, kind, party_id, language, state, created_on,
        created_by, own_words)
      VALUES ('l1', 'n1', 0, 'finding', 'p1', 'en', 'sent', '2026-11-16', 'Dana Okafor', '');
    INSERT INTO replies (line_id, id, position, notice_id, kind, received_on, taken_by, words)
      VALUES ('l1', 'y1', 0, 'n1', 'disagrees', '2026-11-20', 'Dana Okafor', 'Not my pipe');
    INSERT INTO jobs (id, line_id, kind, notice_ids_json, state, attempts, next_try_at, problem,
        asked_by, asked_at)
      VALUES ('j1', 'l1', 'letters', '["n1"]', 'done', 1, '', '', 'Dana Okafor', '');
  `);
  old.close();
  const db = openDb(file);
  const lineFile = fileOf(anAct(db), "l1");
  expect(lineFile.runs).toMatchObject([
    {
      id: "r1",
      looks: "upstream",
      measuredFrom: "access",
      selfLeveling: "unknown",
      ended: "unknown",
    },
  ]);
  expect(lineFile.observations).toMatchObject([
    { id: "o1", counter: 2410, reading: "read", quote: "", pictureId: null, note: "seen" },
  ]);
  expect(lineFile.replies).toEqual([
    aReply("y1", "n1", { kind: "disagrees", receivedOn: "2026-11-20", words: "Not my pipe" }),
  ]);
  expect(getJob(db, "j1")).toMatchObject({ kind: "letters", subjectIds: ["n1"], state: "done" });
  db.$client.close();
});
