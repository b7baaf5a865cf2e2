import { err, ok, type Result } from "#lib/result.ts";
import { decodeText } from "./decode-text.ts";
import { readDelimited } from "./read-delimited.ts";
import { readWorkbook } from "./read-workbook.ts";
import {
  MOST_BYTES,
  MOST_COLUMNS,
  MOST_ROWS,
  type Sheet,
  type TableFile,
  TOO_WIDE,
  tooLong,
} from "./sheet.ts";

/**
 * The rows of a table that a person chose: CSV with any separator, text with tabs, or XLSX. Cells
 * are text, as typed. Refuses in a sentence: what it is, and what to do.
 */
export async function readTableFile(bytes: Uint8Array): Promise<Result<TableFile, string>> {
  if (bytes.byteLength === 0)
    return err("The file is empty. Choose a file with a heading row and data rows.");
  if (bytes.byteLength > MOST_BYTES)
    return err("The file is larger than 4 MB. Save only the rows you need and choose that.");
  const strange = strangeKind(bytes);
  if (strange !== null) return err(strange);
  if (begins(bytes, "PK\u0003\u0004")) {
    const sheets = await readWorkbook(bytes);
    return sheets.ok ? limited(sheets.value, false) : sheets;
  }
  return readText(bytes);
}

function readText(bytes: Uint8Array): Result<TableFile, string> {
  const decoded = decodeText(bytes);
  if (decoded === null)
    return err("This file is not a table. Choose a CSV, XLSX or tab-separated text file.");
  const rows = readDelimited(decoded.text);
  return rows.ok ? limited([{ name: "", rows: rows.value }], decoded.guessed) : rows;
}

/** Files that people take for a table: what they are, and what to do. */
function strangeKind(bytes: Uint8Array): string | null {
  if (begins(bytes, "\u00d0\u00cf\u0011\u00e0"))
    return "This is an old spreadsheet (XLS), or one locked with a password. Open it, save it as XLSX or CSV without a password, and choose that.";
  if (begins(bytes, "%PDF"))
    return "This is a PDF, which has no rows. Ask for the table as CSV or XLSX, or type it in.";
  if (begins(bytes, "\u0089PNG") || begins(bytes, "\u00ff\u00d8\u00ff"))
    return "This is a picture, which has no rows. Ask for the table as CSV or XLSX, or type it in.";
  return null;
}

function begins(bytes: Uint8Array, letters: string): boolean {
  return [...letters].every((letter, at) => bytes[at] === letter.charCodeAt(0));
}

function limited(sheets: readonly Sheet[], guessed: boolean): Result<TableFile, string> {
  const filled = sheets.map(cut).filter(({ rows }) => rows.length > 0);
  if (filled.length === 0)
    return err("The file has no data. Choose a file with a heading row and data rows.");
  const long = filled.find(({ rows }) => rows.length > MOST_ROWS);
  if (long !== undefined)
    return err(
      tooLong(long.name === "" ? "The file" : `The sheet “${long.name}”`, long.rows.length),
    );
  if (filled.some(({ rows }) => rows.some((row) => row.length > MOST_COLUMNS)))
    return err(TOO_WIDE);
  return ok({ sheets: filled, guessed });
}

/** Without the empty rows and cells that follow the last filled one. */
function cut({ name, rows }: Sheet): Sheet {
  const short = rows.map((row) => row.slice(0, row.findLastIndex((cell) => cell !== "") + 1));
  return { name, rows: short.slice(0, short.findLastIndex((row) => row.length > 0) + 1) };
}
