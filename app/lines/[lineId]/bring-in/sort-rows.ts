import { parseCell, unsureIn } from "#app/_components/grid/cell.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { areHeadings, matchHeadings } from "#app/_components/grid/headings.ts";
import type { ListedRow } from "#lib/domain/party/listed-row.ts";

/** Of a column that holds something and of which nobody has said yet what it is. */
export const UNSAID = "?";

/** Which column of ours each column of the file is; null: it is left out. */
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
  /** Of a list of owners: what the row comes to. */
  readonly listed?: ListedRow;
}

/** The rows of a file in three heaps. */
export interface Heaps {
  readonly ready: readonly SheetRow[];
  readonly mend: readonly SheetRow[];
  /** At a place where the record or run, or an earlier row, has the same. */
  readonly doubles: readonly SheetRow[];
}

export function isWrong({ problems }: Pick<SheetRow, "problems">): boolean {
  return Object.keys(problems).length > 0;
}

type Cells = readonly (readonly string[])[];

/** Titles often stand over the headings. */
const HEADS_WITHIN = 15;

/** Finds the row of headings and what they mean; without one, nothing is matched. */
export function readingOf(rows: Cells, columns: readonly GridColumn[]): Reading {
  const width = widthOf(rows);
  const head = rows
    .slice(0, HEADS_WITHIN)
    .findIndex(
      (row, at) => (row.length > 1 || width === 1) && areHeadings(rows.slice(at), columns),
    );
  return readingAt(rows, columns, head === -1 ? null : head);
}

/** What the headings of a chosen row mean; what they do not name is left for a person to say. */
export function readingAt(
  rows: Cells,
  columns: readonly GridColumn[],
  head: number | null,
): Reading {
  const body = rows.slice(head === null ? 0 : head + 1);
  const named = matchHeadings(head === null ? [] : (rows[head] ?? []), columns);
  const match = Array.from({ length: widthOf(rows) }, (_none, at) => {
    const holds = body.some((row) => (row[at] ?? "").trim() !== "");
    return named[at]?.key ?? (holds ? UNSAID : null);
  });
  return { head, match, everywhere: {} };
}

/** The match with one column of the file given another meaning; one that had it has to be said anew. */
export function withMeaning(match: Match, at: number, key: string | null): Match {
  return match.map((old, place) => {
    if (place === at) return key;
    return old === key && key !== null ? UNSAID : old;
  });
}

/** Columns of the file, from 0, of which nobody has said what they are. */
export function unsaidIn(match: Match): number[] {
  return match.flatMap((key, at) => (key === UNSAID ? [at] : []));
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
    const own = match.flatMap((key, at) =>
      key === null || key === UNSAID ? [] : [[key, cells[at] ?? ""] as const],
    );
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
    const off = unsureIn(column, text);
    const { unsure = "" } = column;
    if (off !== null && (texts[unsure] ?? "").trim() === "") fields[unsure] = off;
  }
  return { fields, problems };
}
