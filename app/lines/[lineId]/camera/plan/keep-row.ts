import type { GridRow } from "#app/_components/grid/column.ts";
import type { SaveRows } from "#app/_components/grid/use-rows.ts";
import { done, type FormState, refused } from "#app/form.ts";

/** The table as the page has it. */
interface Table {
  readonly base: number;
  readonly rows: readonly GridRow[];
}

/** What a form sent, and what is said once it is done. */
interface Said {
  readonly form: FormData;
  readonly words: string;
}

/**
 * Adds one row to a table, or puts it in the place of the row with its id. Where somebody saved the
 * table meanwhile, it goes once more on top of what they saved: a row of its own takes nothing from them.
 */
export function keepRow(
  save: SaveRows,
  table: Table,
  row: GridRow,
  said: Said,
): Promise<FormState> {
  return changeTable(save, table, (rows) => withRow(rows, row), said);
}

/** Takes one row out of a table, in the same way. */
export function dropRow(save: SaveRows, table: Table, id: string, said: Said): Promise<FormState> {
  return changeTable(save, table, (rows) => rows.filter((each) => each["id"] !== id), said);
}

async function changeTable(
  save: SaveRows,
  { base, rows }: Table,
  change: (rows: readonly GridRow[]) => readonly GridRow[],
  { form, words }: Said,
): Promise<FormState> {
  const first = await save(base, change(rows), rows);
  const answer =
    first.status === "changed-meanwhile"
      ? await save(first.revision, change(first.rows), first.rows)
      : first;
  if (answer.status === "saved") return done(words);
  if (answer.status === "changed-meanwhile")
    return refused("Someone else is saving this table right now. Try again.", form);
  const [cell] = answer.cells;
  return cell === undefined
    ? refused(answer.message || "Not saved. Reload the page and try again.", form)
    : refused(`${cell.message}.`, form, cell.column);
}

function withRow(rows: readonly GridRow[], row: GridRow): readonly GridRow[] {
  const known = rows.some((each) => each["id"] === row["id"]);
  return known ? rows.map((each) => (each["id"] === row["id"] ? row : each)) : [...rows, row];
}
