import { parseCell, unsureIn } from "#app/_components/grid/cell.ts";
import type { GridColumn, GridRow } from "#app/_components/grid/column.ts";
import { textOf } from "#app/form.ts";
import { err, ok, type Result } from "#lib/result.ts";

/** What is wrong in one field of a form. */
export interface FieldProblem {
  readonly path: string;
  readonly message: string;
}

/** A row out of a form whose fields are a table's columns, read as the table's cells would be. */
export function rowFromForm(
  columns: readonly GridColumn[],
  form: FormData,
  blank: GridRow,
): Result<GridRow, FieldProblem> {
  const row: Record<string, unknown> = { ...blank };
  for (const column of columns) {
    if (column.kind === "yesno") {
      row[column.key] = form.get(column.key) !== null;
      continue;
    }
    const text = textOf(form, column.key);
    const read = readField(column, text);
    if (!read.ok) return err({ path: column.key, message: `${column.title}: ${read.error}.` });
    row[column.key] = read.value;
  }
  for (const column of columns) {
    const off = unsureIn(column, textOf(form, column.key));
    const { unsure = "" } = column;
    if (off !== null && textOf(form, unsure) === "") row[unsure] = off;
  }
  return ok(row);
}

/** A select sends the value of what was chosen, not its words. */
function readField(column: GridColumn, text: string): Result<unknown, string> {
  const chosen =
    column.kind === "choice" && text !== ""
      ? column.choices?.find(({ value }) => value === text)
      : undefined;
  return chosen === undefined ? parseCell(column, text) : ok(chosen.value);
}
