import { and, eq, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { preparedOn } from "#db/prepared.ts";
import { revisions } from "#db/schema.ts";
import { ROW_TABLES, type RowTable } from "#lib/domain/facts/row-table.ts";
import type { Instant } from "#lib/domain/time/day.ts";

/** How often each table of a line was saved; 0 for one that never was. */
export function getRevisions(db: Db, lineId: string): Record<RowTable, number> {
  const saved = preparedOn(db, revisions, () =>
    db
      .select()
      .from(revisions)
      .where(eq(revisions.lineId, sql.placeholder("lineId")))
      .prepare(),
  ).all({ lineId });
  const counts = new Map(saved.map((row) => [row.table, row.revision]));
  return Object.fromEntries(ROW_TABLES.map((table) => [table, counts.get(table) ?? 0])) as Record<
    RowTable,
    number
  >;
}

/** Who saved a table last, and when; null before the first time. */
export function getLastSave(
  db: Db,
  { lineId, table }: { lineId: string; table: RowTable },
): { readonly by: string; readonly at: Instant } | null {
  const row = db
    .select({ by: revisions.by, at: revisions.at })
    .from(revisions)
    .where(and(eq(revisions.lineId, lineId), eq(revisions.table, table)))
    .get();
  return row ?? null;
}

/** Counts one more save of a table and returns the new count. */
export function countSave(
  db: Db,
  { lineId, table, by, at }: { lineId: string; table: RowTable; by: string; at: Instant },
): number {
  const row = db
    .insert(revisions)
    .values({ lineId, table, revision: 1, by, at })
    .onConflictDoUpdate({
      target: [revisions.lineId, revisions.table],
      set: { revision: sql`${revisions.revision} + 1`, by, at },
    })
    .returning({ revision: revisions.revision })
    .get();
  return row.revision;
}
