import { sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";

/**
 * Writes the database as it stands to a new file, in one step: one that another process keeps
 * writing to would keep a copy page by page from ever ending.
 */
export function copyDatabase(db: Db, file: string): void {
  db.run(sql`VACUUM INTO ${file}`);
}

/** Whether SQLite finds the database whole, and every reference in it kept. */
export function isWhole(db: Db): boolean {
  const [check] = db.all<{ integrity_check: string }>(sql`PRAGMA integrity_check`);
  const broken = db.all(sql`PRAGMA foreign_key_check`);
  return check?.integrity_check === "ok" && broken.length === 0;
}
