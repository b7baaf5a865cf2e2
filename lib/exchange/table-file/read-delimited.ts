import { CsvError, parse } from "csv-parse/sync";
import { err, ok, type Result } from "#lib/result.ts";

const SEPARATORS = [",", ";", "\t", "|"] as const;

/** Rows that are looked at to find the separator. */
const SAMPLE = 50;

/**
 * Rows of cells out of a text with a comma, semicolon, tab or bar between the cells, whichever cuts
 * the rows most alike. Cells may be quoted; an inch mark inside a cell is no quote. Empty rows stay,
 * so that rows count as a spreadsheet counts them.
 */
export function readDelimited(text: string): Result<string[][], string> {
  const [first = ""] = text.split(/\r?\n/, 1);
  const named = /^sep=(.)$/i.exec(first)?.[1];
  if (named !== undefined) {
    const rest = readWith(text.slice(first.length).replace(/^\r?\n/, ""), named);
    return rest.ok ? ok([[], ...rest.value]) : rest;
  }
  return readWith(text, separatorOf(text));
}

function separatorOf(text: string): string {
  const sample = text.split(/\r\n|\r|\n/, SAMPLE).join("\n");
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
  try {
    const rows: string[][] = parse(text, {
      delimiter: separator,
      relax_column_count: true,
      relax_quotes: quotes === "loose",
    });
    return ok(rows.map((row) => row.map((cell) => cell.trim())));
  } catch (problem) {
    if (!(problem instanceof CsvError)) throw problem;
    return err(wordsOf(problem));
  }
}

function wordsOf({ code }: CsvError): string {
  return code === "CSV_QUOTE_NOT_CLOSED"
    ? "A cell opens with a quotation mark that never closes, so the rest of the file cannot be told apart. Close it, or save the file as XLSX."
    : "The rows cannot be told apart. Save the file again as CSV or XLSX.";
}
