import "server-only";
import type { Stopped } from "#app/action.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Act } from "#lib/operations/act.ts";
import { readFile } from "#lib/operations/line-report.ts";
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

type RowsChange = (
  rows: readonly { readonly id: string }[],
  file: LineFile,
) => Result<Rows, Stopped>;

/** Changes a table as it is now, for forms that stand beside it; says what is to be fixed. */
export function changeRows(act: Act, place: TablePlace, change: RowsChange): Result<null, Stopped> {
  // Nobody else saves between reading and writing: their rows would be gone.
  return act.db.transaction((db) => changeIn({ ...act, db }, place, change), {
    behavior: "immediate",
  });
}

function changeIn(
  act: Act,
  { lineId, table }: TablePlace,
  change: RowsChange,
): Result<null, Stopped> {
  const read = readFile(act.db, lineId);
  if (read === null) return err({ reason: "not-found", path: "", detail: "" });
  const { file, revisions } = read;
  const base = revisions[table];
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
