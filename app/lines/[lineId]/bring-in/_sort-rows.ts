import { parseCell } from "#app/_components/grid/cell.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { headingsOf } from "#app/_components/grid/paste.ts";

/** Which column of ours each column of the file is; null: it stays outside. */
export type Match = readonly (string | null)[];

/** How a sheet is read: where its headings are and what they mean. */
export interface Reading {
  /** Number of the row with the headings, from 0; null where there is none. */
  readonly head: number | null;
  readonly match: Match;
  /** What every row gets in a column that no column of the file is. */
  readonly everywhere: Readonly<Record<string, string>>;
}

/** A row of the sheet as it would come in. */
export interface SheetRow {
  /** Its number in the file, from 1. */
  readonly number: number;
  readonly texts: Readonly<Record<string, string>>;
  readonly fields: Readonly<Record<string, unknown>>;
  readonly problems: Readonly<Record<string, string>>;
}

type Cells = readonly (readonly string[])[];

/** Titles often stand over the headings. */
const HEADS_WITHIN = 15;

/** Finds the row of headings and what they mean; without one, nothing is matched. */
export function readingOf(rows: Cells, columns: readonly GridColumn[]): Reading {
  const width = widthOf(rows);
  for (const [head, row] of rows.slice(0, HEADS_WITHIN).entries()) {
    const found = row.length < 2 && width > 1 ? null : headingsOf([...row], columns);
    if (found !== null) return { head, match: matched(found, width), everywhere: {} };
  }
  return { head: null, match: Array.from({ length: width }, () => null), everywhere: {} };
}

/** What the headings of a chosen row mean; what nothing names stays outside. */
export function readingAt(
  rows: Cells,
  columns: readonly GridColumn[],
  head: number | null,
): Reading {
  const width = widthOf(rows);
  const row = head === null ? undefined : rows[head];
  // One by one: the row was chosen by a person, whatever is in it.
  const found = (row ?? []).map((cell) => headingsOf([cell], columns)?.[0] ?? null);
  return { head, match: matched(found, width), everywhere: {} };
}

/** Each of our columns once, the first that names it. */
function matched(found: readonly (GridColumn | null)[], width: number): Match {
  const taken = new Set<string>();
  return Array.from({ length: width }, (_none, at) => {
    const key = found[at]?.key;
    if (key === undefined || taken.has(key)) return null;
    taken.add(key);
    return key;
  });
}

/** The match with one column of the file given another meaning, which no other keeps. */
export function withMeaning(match: Match, at: number, key: string | null): Match {
  return match.map((old, place) => {
    if (place === at) return key;
    return old === key ? null : old;
  });
}

export function widthOf(rows: Cells): number {
  return rows.reduce((most, row) => Math.max(most, row.length), 0);
}

/** The rows under the headings that hold something, with what a person has typed since. */
export function sheetRows(
  rows: Cells,
  { head, match, everywhere }: Reading,
  {
    columns,
    edits,
  }: {
    columns: readonly GridColumn[];
    edits: Readonly<Record<number, Readonly<Record<string, string>>>>;
  },
): SheetRow[] {
  const first = head === null ? 0 : head + 1;
  return rows.slice(first).flatMap((cells, index) => {
    const number = first + index + 1;
    const own = match.flatMap((key, at) => (key === null ? [] : [[key, cells[at] ?? ""] as const]));
    if (own.every(([, text]) => text.trim() === "") && edits[number] === undefined) return [];
    const texts = { ...everywhere, ...Object.fromEntries(own), ...edits[number] };
    return [{ number, texts, ...readRow(columns, texts) }];
  });
}

/** A row's fields, and what is wrong in the cells that cannot be read. */
function readRow(
  columns: readonly GridColumn[],
  texts: Readonly<Record<string, string>>,
): Pick<SheetRow, "fields" | "problems"> {
  const fields: Record<string, unknown> = {};
  const problems: Record<string, string> = {};
  for (const column of columns) {
    const text = texts[column.key] ?? "";
    // What the file leaves out gets the usual value, except where a row means nothing without it.
    if (text.trim() === "" && column.required !== true) continue;
    const read = parseCell(column, text);
    if (read.ok) fields[column.key] = read.value;
    else problems[column.key] = read.error;
  }
  return { fields, problems };
}
