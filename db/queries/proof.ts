import Database from "better-sqlite3";
import { sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { guards } from "../guards.ts";

/**
 * The guards of a database file that are missing or not as they should be: somebody took them away.
 * Opening the office puts them back, so that this is asked before.
 */
export function missingGuards(file: string): string[] {
  const client = new Database(file, { readonly: true });
  try {
    const there = client.prepare("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'");
    const found = new Map(
      (there.all() as { name: string; sql: string }[]).map(({ name, sql: text }) => [name, text]),
    );
    return guards().flatMap(({ name, sql: text }) => (found.get(name) === text ? [] : [name]));
  } finally {
    client.close();
  }
}

/** Tables whose rows are numbered from 1 without a gap, because none is ever removed. */
const NUMBERED = {
  history: "the history",
  link_visits: "the visits of links",
  sign_ins: "the log of sign-ins",
};

/** Numbered tables from which rows were taken out, with how many. */
export function takenOut(db: Db): { readonly words: string; readonly count: number }[] {
  return Object.entries(NUMBERED).flatMap(([table, words]) => {
    const [row] = db.all<{ given: number | null; there: number }>(
      sql.raw(
        `SELECT (SELECT seq FROM sqlite_sequence WHERE name = '${table}') AS given, (SELECT count(*) FROM "${table}") AS there`,
      ),
    );
    const count = Number(row?.given ?? 0) - Number(row?.there ?? 0);
    return count > 0 ? [{ words, count }] : [];
  });
}
