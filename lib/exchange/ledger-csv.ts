import { stringify } from "csv-stringify/sync";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { CSV_HEAD, csvRows } from "#lib/domain/ledger/csv.ts";

/**
 * The money book as a CSV file that a spreadsheet opens rightly: with a byte order mark, and with
 * what would be read as a formula marked as text.
 */
export function ledgerCsv(
  file: Pick<LineFile, "ledger" | "properties" | "parties" | "splits">,
): string {
  return stringify([[...CSV_HEAD], ...csvRows(file)], {
    bom: true,
    escape_formulas: true,
    record_delimiter: "windows",
  });
}
