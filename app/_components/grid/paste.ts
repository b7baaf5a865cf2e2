import type { GridColumn } from "./column.ts";

/** What was copied from a sheet or a text file, as rows of cells; a single cell as one row of one. */
export function readClipboard(text: string): string[][] {
  const plain = text
    .replace(/^\uFEFF/, "")
    .replace(/\r\n?/g, "\n")
    .replace(/\n+$/, "");
  return readSeparated(plain, separatorOf(plain));
}

/** Tab where there is one; else a comma or semicolon that cuts every line alike; else none. */
function separatorOf(text: string): string {
  if (text.includes("\t")) return "\t";
  const lines = text.split("\n");
  if (lines.length < 2) return "\t";
  for (const separator of [",", ";"]) {
    const counts = readSeparated(text, separator).map((row) => row.length);
    const [first = 1] = counts;
    if (first > 1 && counts.every((count) => count === first)) return separator;
  }
  return "\t";
}

const CELLS: Record<string, RegExp> = {
  "\t": /(?:"((?:[^"]|"")*)"|([^\t\n]*))(\t|\n|$)/gy,
  ",": /(?:"((?:[^"]|"")*)"|([^,\n]*))(,|\n|$)/gy,
  ";": /(?:"((?:[^"]|"")*)"|([^;\n]*))(;|\n|$)/gy,
};

/** Rows of cells; a quoted cell may hold separators, line ends and doubled quotes. */
function readSeparated(text: string, separator: string): string[][] {
  const rows: string[][] = [[]];
  for (const found of text.matchAll(CELLS[separator] ?? /$/g)) {
    const [, quoted, plain = "", end] = found;
    rows.at(-1)?.push(quoted === undefined ? plain.trim() : quoted.replaceAll('""', '"'));
    if (end === "") break;
    if (end === "\n") rows.push([]);
  }
  return rows;
}

/**
 * Which column each pasted cell belongs to, if the first pasted row is a row of headings: at least
 * two of its cells, and more than half of the filled ones, are names of columns. Null: it is not.
 */
export function headingsOf(
  firstRow: readonly string[],
  columns: readonly GridColumn[],
): (GridColumn | null)[] | null {
  const named = firstRow.map((cell) => columnNamed(cell, columns));
  const filled = firstRow.filter((cell) => cell !== "").length;
  const known = named.filter((column) => column !== null).length;
  const enough = known >= Math.min(2, firstRow.length) && known * 2 > filled;
  return enough ? named : null;
}

function columnNamed(cell: string, columns: readonly GridColumn[]): GridColumn | null {
  const wanted = folded(cell);
  if (wanted === "") return null;
  return columns.find((column) => namesOf(column).includes(wanted)) ?? null;
}

function namesOf(column: GridColumn): string[] {
  return [column.title, column.key, ...(column.pasteHeadings ?? [])].map(folded);
}

/** Lower case, without units, spaces and signs: `Station (ft)` and `Station, feet` are `station`. */
function folded(text: string): string {
  return text
    .toLowerCase()
    .replace(/\([^)]*\)/g, "")
    .replace(/[\s,]+(ft|feet|foot|in|inch|inches|o[’']?clock)\.?\s*$/, "")
    .replace(/[^\p{L}\p{N}]+/gu, "");
}
