import { desc, isNull } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { history } from "#db/schema.ts";
import type { HistoryEntry } from "#lib/domain/file/line-file.ts";

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
