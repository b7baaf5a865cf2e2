import "server-only";
import type { Stopped } from "#app/action.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getRevisions } from "#db/queries/revision.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Act } from "#lib/operations/act.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { err, ok, type Result } from "#lib/result.ts";

interface TablePlace {
  readonly lineId: string;
  readonly table: RowTable;
}

type Rows = readonly object[];

/** Adds rows to a table as it is now, for forms that stand beside it; says how many. */
export function appendRows(
  act: Act,
  place: TablePlace,
  rowsFor: (file: LineFile) => Result<Rows, Stopped>,
): Result<{ count: number }, Stopped> {
  let count = 0;
  const changed = changeRows(act, place, (before, file) => {
    const rows = rowsFor(file);
    if (!rows.ok) return rows;
    count = rows.value.length;
    return ok(count === 0 ? before : [...before, ...rows.value]);
  });
  return changed.ok ? ok({ count }) : changed;
}

/** Changes a table as it is now, for forms that stand beside it; says what is to be fixed. */
export function changeRows(
  act: Act,
  { lineId, table }: TablePlace,
  change: (rows: readonly { readonly id: string }[], file: LineFile) => Result<Rows, Stopped>,
): Result<null, Stopped> {
  const file = getLineFile(act.db, lineId);
  if (file === null) return err({ reason: "not-found", path: "", detail: "" });
  const base = getRevisions(act.db, lineId)[table];
  const rows = change(file[table], file);
  if (!rows.ok) return rows;
  if (rows.value === file[table]) return ok(null);
  const saved = saveRows(act, { lineId, table, base, rows: rows.value });
  if (saved.ok) return ok(null);
  const { reason, by, cells } = saved.error;
  if (reason !== "bad-rows") return err({ reason, path: "", detail: by });
  const [cell] = cells;
  return err({
    path: cell?.column ?? "",
    message: cell?.message ?? "Not saved: check the row again.",
  });
}
