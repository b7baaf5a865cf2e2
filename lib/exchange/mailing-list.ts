import { stringify } from "csv-stringify/sync";
import writeWorkbook from "write-excel-file/node";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { LIST_HEAD, mailingList } from "#lib/domain/mailing/mailing-list.ts";

/**
 * The mailing list as a CSV file that a spreadsheet opens rightly: with a byte order mark, and with
 * what would be read as a formula marked as text.
 */
export function mailingListCsv(file: LineFile, notices: readonly Notice[]): string {
  return stringify([[...LIST_HEAD], ...mailingList(file, notices)], {
    bom: true,
    escape_formulas: true,
    record_delimiter: "windows",
  });
}

/** The same as an XLSX file; every cell is text, so that no ZIP code loses its zeros and nothing is a formula. */
export async function mailingListXlsx(
  file: LineFile,
  notices: readonly Notice[],
): Promise<Uint8Array> {
  const cell = (value: string) => ({ value, type: String });
  const head = LIST_HEAD.map((value) => ({ ...cell(value), fontWeight: "bold" as const }));
  const rows = mailingList(file, notices).map((row) => row.map(cell));
  const columns = LIST_HEAD.map((title) => ({ width: WIDE.has(title) ? 30 : 14 }));
  return await writeWorkbook([head, ...rows], { columns, sheet: "Mailing list" }).toBuffer();
}

const WIDE = new Set<string>(["Name", "Street", "About", "Letter", "Email"]);
