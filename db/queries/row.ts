import { and, eq, getTableColumns, max, sql } from "drizzle-orm";
import type { SQLiteColumn, SQLiteTable } from "drizzle-orm/sqlite-core";
import type { Db } from "#db/open.ts";
import { preparedOn } from "#db/prepared.ts";
import * as schema from "#db/schema.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LIST_NAMES, type ListName } from "#lib/domain/facts/list-name.ts";

/** A table of rows that belong to a line and keep the order that people gave them. */
type OwnedTable = SQLiteTable & {
  readonly lineId: SQLiteColumn;
  readonly id: SQLiteColumn;
  readonly position: SQLiteColumn;
};

/** The lists of a line's file that are kept as rows; the history is only ever added to. */
export type RowList = Exclude<ListName, "history">;

/** One row of a list, as the domain knows it. */
export type RowOf<L extends RowList> = LineFile[L][number];

const TABLES: { readonly [L in RowList]: OwnedTable } = schema;

/** The rows of one list of a line, in order, as domain objects. */
export function listRows<L extends ListName>(db: Db, list: L, lineId: string): LineFile[L] {
  return selectOf(db, list === "history" ? schema.history : TABLES[list as RowList]).all({
    lineId,
  }) as unknown as LineFile[L];
}

/** Each list's select is written and prepared once for a database. */
function selectOf(db: Db, table: OwnedTable) {
  return preparedOn(db, table, () => {
    const { lineId: _lineId, position: _position, ...columns } = getTableColumns(table);
    return db
      .select(columns as Record<string, SQLiteColumn>)
      .from(table as SQLiteTable)
      .where(eq(table.lineId, sql.placeholder("lineId")))
      .orderBy(table.position)
      .prepare();
  });
}

/** Adds a row, at the end unless a position is given. */
export function insertRow<L extends RowList>(
  db: Db,
  list: L,
  { lineId, row, position }: { lineId: string; row: RowOf<L>; position?: number },
): void {
  const at = position ?? endOf(db, list, lineId);
  db.insert(TABLES[list] as SQLiteTable)
    .values({ ...row, lineId, position: at })
    .run();
}

/** Puts a row in the place of the one with its id; says whether there was one. */
export function updateRow<L extends RowList>(
  db: Db,
  list: L,
  { lineId, row, position }: { lineId: string; row: RowOf<L>; position?: number },
): boolean {
  const { id, ...values } = row;
  const table = TABLES[list];
  const changed = db
    .update(table as SQLiteTable)
    .set(position === undefined ? values : { ...values, position })
    .where(and(eq(table.lineId, lineId), eq(table.id, id)))
    .run();
  return changed.changes > 0;
}

/** Takes a row out; says whether it was there. */
export function removeRow(
  db: Db,
  list: RowList,
  { lineId, id }: { lineId: string; id: string },
): boolean {
  const table = TABLES[list];
  const gone = db
    .delete(table as SQLiteTable)
    .where(and(eq(table.lineId, lineId), eq(table.id, id)))
    .run();
  return gone.changes > 0;
}

/**
 * Lets rows refer to one another in any order until the transaction ends, where every reference
 * must hold.
 */
export function checkReferencesAtEnd(db: Db): void {
  db.run(sql`PRAGMA defer_foreign_keys = ON`);
}

function endOf(db: Db, list: RowList, lineId: string): number {
  const table = TABLES[list];
  const last = db
    .select({ position: max(table.position) })
    .from(table as SQLiteTable)
    .where(eq(table.lineId, lineId))
    .get();
  return Number(last?.position ?? -1) + 1;
}

/** Every list of a line's file that is kept as rows. */
export const ROW_LISTS: readonly RowList[] = LIST_NAMES.filter((list) => list !== "history");
