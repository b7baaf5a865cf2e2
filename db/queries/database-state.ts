import fs from "node:fs";
import Database from "better-sqlite3";

/**
 * What a database file is before anything is made in it: not there, empty (nothing was ever made in
 * it, or all was lost), ours, another program's, held shut by another program, or damaged.
 */
export type DatabaseState = "absent" | "empty" | "ours" | "foreign" | "busy" | "damaged";

/** Tables that every version of the program has. */
const OURS = ["migrations", "lines", "history"];

/** How long another program's hold on the file is waited for, in milliseconds. */
const PATIENCE = 2_000;

/** Looks a database file through, every page of it, and changes nothing. */
export function databaseState(file: string): DatabaseState {
  if (!fs.existsSync(file)) return "absent";
  if (fs.statSync(file).size === 0 && !fs.existsSync(`${file}-wal`)) return "empty";
  let client: Database.Database | null = null;
  try {
    client = new Database(file, { timeout: PATIENCE });
    const tables = client
      .prepare("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
      .pluck()
      .all();
    if (tables.length === 0) return "empty";
    if (!OURS.every((name) => tables.includes(name))) return "foreign";
    // Whatever is wrong is said row by row; a sound file answers in one word.
    return client.pragma("quick_check(1)", { simple: true }) === "ok" ? "ours" : "damaged";
  } catch (error) {
    const code = codeOf(error);
    if (code.startsWith("SQLITE_BUSY") || code.startsWith("SQLITE_LOCKED")) return "busy";
    if (code.startsWith("SQLITE_CORRUPT") || code.startsWith("SQLITE_NOTADB")) return "damaged";
    throw error;
  } finally {
    client?.close();
  }
}

/**
 * SQLite's own code of an error, such as `SQLITE_FULL`, also where it is the cause of another error;
 * empty for errors of another kind.
 */
export function codeOf(error: unknown): string {
  if (error instanceof Database.SqliteError) return error.code;
  return error instanceof Error && error.cause !== undefined ? codeOf(error.cause) : "";
}
