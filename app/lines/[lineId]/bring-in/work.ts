import type { GridColumn } from "#app/_components/grid/column.ts";
import type { CellChange } from "#app/_components/typed-cell.ts";
import type { RecordEntry } from "#lib/domain/facts/record.ts";
import type { Observation, Run } from "#lib/domain/facts/run.ts";
import { isSameEntry, isSameRun, isSameSeen } from "#lib/domain/facts/same-place.ts";
import type { ListPlace } from "#lib/domain/party/listed-row.ts";
import type { TableFile } from "#lib/exchange/table-file/sheet.ts";
import type { Work } from "./kept.ts";
import { peopleHeaps } from "./people-heaps.ts";
import {
  type Heaps,
  isWrong,
  type Reading,
  readingOf,
  type SheetRow,
  sheetRows,
} from "./sort-rows.ts";

export type Table = "entries" | "observations" | "runs" | "people";

/** Where the rows go. */
export interface Aim {
  readonly table: Table;
  readonly to: string;
  readonly there: readonly object[];
  /** What is on the line, where the rows are people. */
  readonly place?: ListPlace | null;
}

/** A file that was just read: the first sheet, its headings as far as they name our columns. */
export function workOn(file: TableFile, fileName: string, columns: readonly GridColumn[]): Work {
  const start = {
    fileName,
    guessed: file.guessed,
    sheets: file.sheets,
    sheet: 0,
    reading: { head: null, match: [], everywhere: {} },
    edits: {},
    gone: [],
    mend: [],
    found: {},
  };
  return onSheet(start, 0, columns);
}

/** The same file on another of its sheets; what was typed on the old one goes. */
export function onSheet(work: Work, sheet: number, columns: readonly GridColumn[]): Work {
  const rows = work.sheets[sheet]?.rows ?? [];
  const fresh = { ...work, sheet, edits: {}, gone: [], found: {} };
  return withReading(fresh, readingOf(rows, columns), columns);
}

/** The same rows read in another way: which of them are to be mended is judged anew. */
export function withReading(work: Work, reading: Reading, columns: readonly GridColumn[]): Work {
  const rows = rowsIn({ ...work, reading, found: {} }, columns);
  return { ...work, reading, found: {}, mend: rows.filter(isWrong).map(({ number }) => number) };
}

/** Cells typed over; the row's name is its number in the file. */
export function typedIn(work: Work, changes: readonly CellChange[]): Work {
  const edits: Record<number, Record<string, string>> = { ...work.edits };
  const found: Record<number, Readonly<Record<string, string>>> = { ...work.found };
  for (const { key, column, text } of changes) {
    const number = Number(key);
    edits[number] = { ...edits[number], [column]: text };
    const { [column]: _mended, ...rest } = found[number] ?? {};
    found[number] = rest;
  }
  return { ...work, edits, found };
}

/** Rows that are still outside, with what reading or saving found wrong in them. */
export function rowsIn(work: Work, columns: readonly GridColumn[]): SheetRow[] {
  const gone = new Set(work.gone);
  const rows = work.sheets[work.sheet]?.rows ?? [];
  return sheetRows(rows, work.reading, { columns, edits: work.edits })
    .filter(({ number }) => !gone.has(number))
    .map((row) => ({ ...row, problems: { ...work.found[row.number], ...row.problems } }));
}

/** Which rows can come in, which are to be mended, and which are there already. */
export function heapsOf(
  work: Work,
  columns: readonly GridColumn[],
  { table, to, there, place = null }: Aim,
): Heaps {
  if (place !== null) return peopleHeaps(work, rowsIn(work, columns), place);
  const kept = new Set(work.mend);
  const before = [...there];
  const heaps: { [H in keyof Heaps]: SheetRow[] } = { ready: [], mend: [], doubles: [] };
  for (const row of rowsIn(work, columns)) {
    const filled = placed(table, to, row.fields);
    const wrong = isWrong(row);
    const double = !wrong && before.some((other) => isSame(table, other, filled));
    if (wrong || (kept.has(row.number) && !double)) heaps.mend.push(row);
    else if (double) heaps.doubles.push(row);
    else heaps.ready.push(row);
    if (!wrong && !double) before.push(filled);
  }
  return heaps;
}

/** What a row is compared by, with the usual values where the file says nothing. */
function placed(table: Table, to: string, fields: Readonly<Record<string, unknown>>): object {
  if (table === "runs") return { name: "", ...fields };
  return table === "entries"
    ? { recordId: to, label: "", distance: null, side: "unknown", ...fields }
    : { runId: to, clock: null, ...fields };
}

function isSame(table: Table, a: object, b: object): boolean {
  if (table === "runs") return isSameRun(a as Run, b as Run);
  return table === "entries"
    ? isSameEntry(a as RecordEntry, b as RecordEntry)
    : isSameSeen(a as Observation, b as Observation);
}
