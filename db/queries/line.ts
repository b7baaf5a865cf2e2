import { eq, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { lines } from "#db/schema.ts";
import type { LineFacts } from "#lib/domain/facts/line.ts";

export function getLine(db: Db, lineId: string): LineFacts | null {
  return db.select().from(lines).where(eq(lines.id, lineId)).get() ?? null;
}

/** Every line: open ones first, the newest first among them. */
export function listLines(db: Db): LineFacts[] {
  return db
    .select()
    .from(lines)
    .orderBy(sql`${lines.closedOn} is not null`, sql`${lines.openedOn} desc`, lines.name)
    .all();
}

export function insertLine(db: Db, line: LineFacts): void {
  db.insert(lines).values(line).run();
}

export function updateLine(db: Db, { id, ...facts }: LineFacts): void {
  db.update(lines).set(facts).where(eq(lines.id, id)).run();
}
