import { parseCell } from "./cell.ts";
import type { GridColumn } from "./column.ts";
import { valueAt } from "./field-path.ts";
import type { GridAction, GridLine, GridState } from "./grid-state.ts";
import { idOf, isSame } from "./merge.ts";

/** What is to be mended in a cell, in words; null where nothing is. */
export function problemIn(line: GridLine, column: GridColumn): string | null {
  if (column.computed !== undefined) return null;
  const typed = line.raw[column.key];
  if (typed !== undefined) {
    const read = parseCell(column, typed);
    return read.ok ? null : read.error;
  }
  const found = line.problems[column.key];
  if (found !== undefined) return found;
  const value = valueAt(line.values, column.key);
  const empty = value === null || value === undefined || value === "";
  return empty && column.readOnly !== true ? emptyProblem(column) : null;
}

export interface Place {
  readonly row: number;
  readonly column: number;
}

/** Where something is to be mended, row by row. */
export function problemPlaces(
  { lines }: Pick<GridState, "lines">,
  columns: readonly GridColumn[],
): Place[] {
  return lines.flatMap((line, row) =>
    columns.flatMap((column, at) =>
      problemIn(line, column) === null ? [] : [{ row, column: at }],
    ),
  );
}

/**
 * Where what was typed could not be read. The row still holds what stood there before, so that it is
 * not sent: what was meant would be lost and something else kept in its place.
 */
export function unreadPlaces(
  { lines }: Pick<GridState, "lines">,
  columns: readonly GridColumn[],
): Place[] {
  return problemPlaces({ lines }, columns).filter(({ row, column }) => {
    const key = columns[column]?.key;
    return key !== undefined && lines[row]?.raw[key] !== undefined;
  });
}

/** The next place after one, the first again after the last; null where there is none. */
export function placeAfter(places: readonly Place[], last: Place | null): Place | null {
  const next = places.find(
    ({ row, column }) =>
      last === null || row > last.row || (row === last.row && column > last.column),
  );
  return next ?? places[0] ?? null;
}

function emptyProblem(column: GridColumn): string | null {
  const read = parseCell(column, "");
  return read.ok ? null : read.error;
}

export function withProblems(
  lines: readonly GridLine[],
  { rows, cells }: Extract<GridAction, { readonly do: "refused" }>,
): readonly GridLine[] {
  const sent = new Map(rows.map((row) => [idOf(row), row]));
  return lines.map((line) => {
    const mine = cells.filter((cell) => cell.id === line.id);
    if (mine.length === 0 || !isSame(line.values, sent.get(line.id))) return line;
    return {
      ...line,
      problems: Object.fromEntries(mine.map((cell) => [cell.column, cell.message])),
    };
  });
}
