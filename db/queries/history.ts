import { and, count, desc, eq, isNull, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { history } from "#db/schema.ts";
import type { HistoryEntry } from "#lib/domain/facts/history-entry.ts";

/** Adds an entry to a line's history, or to the office's own where `lineId` is null. */
export function insertHistory(db: Db, lineId: string | null, entry: HistoryEntry): void {
  db.insert(history)
    .values({ ...entry, lineId })
    .run();
}

/** What happened to the office itself (users, authorities, facts), newest first. */
export function listOfficeHistory(db: Db): HistoryEntry[] {
  return db
    .select({
      id: history.id,
      at: history.at,
      by: history.by,
      action: history.action,
      sentence: history.sentence,
      detail: history.detail,
    })
    .from(history)
    .where(isNull(history.lineId))
    .orderBy(desc(history.position))
    .all();
}

/** How many entries the history of the office has. */
export function countOfficeEntries(db: Db): number {
  const row = db.select({ many: count() }).from(history).where(isNull(history.lineId)).get();
  return row?.many ?? 0;
}

/** Who did this, or anything, to the office last, and when; null where nobody has. */
export function getLastOfficeEntry(
  db: Db,
  action?: string,
): Pick<HistoryEntry, "at" | "by"> | null {
  const row = db
    .select({ at: history.at, by: history.by })
    .from(history)
    .where(
      and(isNull(history.lineId), action === undefined ? undefined : eq(history.action, action)),
    )
    .orderBy(desc(history.position))
    .limit(1)
    .get();
  return row ?? null;
}

/** Who brought a line in with a file, and when; null where it was opened here. */
export function getImport(db: Db, lineId: string): Pick<HistoryEntry, "at" | "by"> | null {
  const row = db
    .select({ at: history.at, by: history.by })
    .from(history)
    .where(
      and(
        isNull(history.lineId),
        eq(history.action, "import-line"),
        eq(sql`json_extract(${history.detail}, '$.lineId')`, lineId),
      ),
    )
    .orderBy(desc(history.position))
    .limit(1)
    .get();
  return row ?? null;
}
