import type { GridColumn } from "./column.ts";
import { areHeadings, matchHeadings } from "./headings.ts";

/** Rows that were pasted, as they would go into a table. */
export interface Pasted {
  /** Without headings and without empty rows. */
  readonly body: readonly (readonly string[])[];
  /** The first row, where it is one of headings. */
  readonly headings: readonly string[] | null;
  /** Where each pasted column goes; null: nowhere yet. */
  readonly into: readonly (GridColumn | null)[];
  /** Pasted columns, from 0, that hold something and that no column is known for. */
  readonly open: readonly number[];
}

/**
 * Where pasted rows go: by their headings where the first row has some, else one beside the other
 * from the cell on that they were pasted into. What has no place is left open, never left out.
 */
export function readPasted(
  cells: readonly (readonly string[])[],
  columns: readonly GridColumn[],
  { from, heads = areHeadings(cells, columns) }: { from: number; heads?: boolean },
): Pasted {
  const [first = [], ...rest] = cells;
  const body = (heads ? rest : cells).filter((row) => row.some((cell) => cell !== ""));
  const width = cells.reduce((most, row) => Math.max(most, row.length), 0);
  const places = Array.from({ length: width }, (_none, place) => place);
  const named = heads ? matchHeadings(first, columns) : columns.slice(from);
  const into = places.map((place) => named[place] ?? null);
  const open = places.filter(
    (place) => into[place] === null && body.some((row) => (row[place] ?? "") !== ""),
  );
  return { body, headings: heads ? first : null, into, open };
}

/** What a pasted column is called where it has no heading: by its place, as sheets count. */
export function letterOf(at: number): string {
  const letter = String.fromCharCode(65 + (at % 26));
  return `Column ${at < 26 ? letter : String.fromCharCode(64 + Math.floor(at / 26)) + letter}`;
}

/** The first things that stand in a column, to tell it by. */
export function firstValues(rows: readonly (readonly string[])[], at: number): string {
  const values = rows.map((row) => row[at] ?? "").filter((text) => text !== "");
  return values.length === 0 ? "nothing" : values.slice(0, 3).join(" · ");
}
