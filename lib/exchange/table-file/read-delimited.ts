import { CsvError, parse } from "csv-parse/sync";
import { err, ok, type Result } from "#lib/result.ts";
import { MOST_ROWS, tooLong } from "./sheet.ts";

const SEPARATORS = [",", ";", "\t", "|"] as const;

/** Rows and letters that are looked at to find the separator. */
const SAMPLE = 50;
const SAMPLE_LETTERS = 50_000;

/** Lines of a text that can hold the rows that come in at once, some cells with lines of their own. */
const MOST_LINES = 20 * MOST_ROWS;

/** No row of so many cells as come in at once is as long as this. */
const LONGEST_ROW = 400_000;

const LONG_ROW =
  "A row of the file is longer than 100 columns allow. Save only the columns you need.";

/**
 * Rows of cells out of a text with a comma, semicolon, tab or bar between the cells, whichever cuts
 * the rows most alike. Cells may be quoted; an inch mark inside a cell is no quote. Empty rows stay,
 * so that rows count as a spreadsheet counts them; rows beyond `MOST_ROWS` come without
 * their cells, so that only their number is known.
 */
export function readDelimited(text: string): Result<string[][], string> {
  if (longestRow(text) > LONGEST_ROW) return err(LONG_ROW);
  const lines = text.split("\n");
  if (lines.length > MOST_LINES) {
    const filled = lines.findLastIndex((line) => /[^\s,;|"]/.test(line)) + 1;
    if (filled > MOST_LINES) return err(tooLong("The file", filled));
    return readDelimited(lines.slice(0, MOST_LINES).join("\n"));
  }
  const [first = ""] = text.split(/\r?\n/, 1);
  const named = /^sep=(.)$/i.exec(first)?.[1];
  if (named !== undefined) {
    const rest = readWith(text.slice(first.length).replace(/^\r?\n/, ""), named);
    return rest.ok ? ok([[], ...rest.value]) : rest;
  }
  return readWith(text, separatorOf(text));
}

function separatorOf(text: string): string {
  const sample = text
    .slice(0, SAMPLE_LETTERS)
    .split(/\r\n|\r|\n/, SAMPLE)
    .join("\n");
  // A separator that cuts through quoted cells leaves quotes where none may stand.
  const sound = SEPARATORS.filter((separator) => readWith(sample, separator, "strict").ok);
  const among = sound.length === 0 ? SEPARATORS : sound;
  const scored = among.map((separator) => ({ separator, score: alike(sample, separator) }));
  const [best] = scored.sort((a, b) => b.score - a.score);
  return best === undefined || best.score === 0 ? "," : best.separator;
}

/** How many rows have the number of cells that most have; the wider wins among equals. */
function alike(sample: string, separator: string): number {
  const read = readWith(sample, separator);
  if (!read.ok) return 0;
  const counts = new Map<number, number>();
  for (const row of read.value) {
    if (row.length > 1) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  }
  return Math.max(0, ...[...counts].map(([width, rows]) => rows + width / 1_000));
}

function readWith(
  text: string,
  separator: string,
  quotes: "strict" | "loose" = "loose",
): Result<string[][], string> {
  let number = 0;
  let filled = 0;
  try {
    const rows: string[][] = parse(text, {
      delimiter: separator,
      relax_column_count: true,
      relax_quotes: quotes === "loose",
      on_record: (row: string[]) => {
        number += 1;
        const cells = row.map((cell) => cell.trim());
        if (cells.some((cell) => cell !== "")) filled = number;
        return number > MOST_ROWS + 1 ? null : cells;
      },
    });
    if (filled > rows.length) {
      const rest = Array.from({ length: filled - rows.length - 1 }, (): string[] => []);
      return ok([...rows, ...rest, ["…"]]);
    }
    return ok(rows);
  } catch (problem) {
    if (!(problem instanceof CsvError)) throw problem;
    return err(wordsOf(problem));
  }
}

function longestRow(text: string): number {
  let longest = 0;
  for (let at = 0; at < text.length; ) {
    const end = text.indexOf("\n", at);
    const next = end === -1 ? text.length : end;
    longest = Math.max(longest, next - at);
    at = next + 1;
  }
  return longest;
}

function wordsOf({ code }: CsvError): string {
  return code === "CSV_QUOTE_NOT_CLOSED"
    ? "A cell opens with a quotation mark that never closes, so the rest of the file can’t be read. Close it, or save the file as XLSX."
    : "The rows can’t be separated. Save the file again as CSV or XLSX.";
}
