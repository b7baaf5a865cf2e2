import { cellsOf } from "./delimited.ts";

/** What was copied from a sheet or a text file, as rows of cells; a single cell as one row of one. */
export function readClipboard(text: string): string[][] {
  const plain = text.replace(/^\uFEFF/, "").replace(/[\r\n]+$/, "");
  return readSeparated(plain, separatorOf(plain));
}

/** Tab where there is one; else a comma or semicolon that cuts every line alike; else none. */
function separatorOf(text: string): string {
  if (text.includes("\t")) return "\t";
  for (const separator of [",", ";"]) {
    const counts = readSeparated(text, separator).map((row) => row.length);
    const [first = 1] = counts;
    if (counts.length > 1 && first > 1 && counts.every((count) => count === first))
      return separator;
  }
  return "\t";
}

/** Rows of cells; an inch mark inside a cell is no quote, and one that never closes is a letter. */
function readSeparated(text: string, separator: string): string[][] {
  const rows =
    cellsOf(text, { separator, quotes: true }) ?? cellsOf(text, { separator, quotes: false });
  return trimmed(rows ?? []);
}

function trimmed(rows: string[][]): string[][] {
  return rows.length === 0 ? [[""]] : rows.map((row) => row.map((cell) => cell.trim()));
}
