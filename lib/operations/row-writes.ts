import type { Db } from "#db/open.ts";
import { countSave } from "#db/queries/revision.ts";
import { checkReferencesAtEnd, insertRow, removeRow, updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Act } from "./act.ts";
import { tell } from "./change.ts";
import { type RowChanges, rowChanges, tellChanges } from "./row-changes.ts";

/** A table that was written, how it changed and its new revision. */
export interface WrittenTable extends RowChanges {
  readonly table: RowTable;
  readonly revision: number;
}

/** Writes what differs in these tables between two states of a file; tables that do not differ stay. */
export function writeTables(
  act: Act,
  { before, after, tables }: { before: LineFile; after: LineFile; tables: readonly RowTable[] },
): WrittenTable[] {
  const lineId = after.line.id;
  const changes = [...new Set(tables)]
    .map((table) => ({ table, ...rowChanges(before[table], after[table]) }))
    .filter(({ any }) => any);
  if (changes.length === 0) return [];
  checkReferencesAtEnd(act.db);
  for (const change of changes) writeRows(act.db, lineId, change);
  return changes.map((change) => ({
    ...change,
    revision: countSave(act.db, {
      lineId,
      table: change.table,
      by: act.actor.name,
      at: act.now,
    }),
  }));
}

/** The same, told in the history as one save. */
export function saveTables(
  act: Act,
  states: { before: LineFile; after: LineFile; tables: readonly RowTable[] },
): WrittenTable[] {
  const written = writeTables(act, states);
  const lineId = states.after.line.id;
  if (written.length > 0)
    tell(act, { lineId, action: "save-rows", ...tellChanges(states, written) });
  return written;
}

function writeRows(
  db: Db,
  lineId: string,
  { table, removed, placed }: RowChanges & { table: RowTable },
): void {
  for (const { id } of removed) removeRow(db, table, { lineId, id });
  for (const { row, position, isNew } of placed) {
    const place = { lineId, row: row as never, position };
    if (isNew) insertRow(db, table, place);
    else updateRow(db, table, place);
  }
}
