import { stringify } from "csv-stringify/sync";
import writeWorkbook from "write-excel-file/node";
import type { LineTable, TableCell } from "#lib/domain/packet/line-table.ts";

/** Of which line a table is, of which day, and who took it out. */
export interface TableMade {
  readonly line: string;
  readonly on: string;
  readonly by: string;
  readonly office: string;
}

/**
 * A table of a line’s file as a CSV file that a spreadsheet opens rightly: with a byte order mark, and
 * with what would be read as a formula marked as text. Each row ends with its day and who made it,
 * wherever it is copied to.
 */
export function lineTableCsv({ head, rows }: LineTable, made: TableMade): string {
  return stringify(
    [[...head, "As of", "Made by"], ...rows.map((row) => [...row, made.on, made.by])],
    { bom: true, escape_formulas: true, record_delimiter: "windows" },
  );
}

/** The same as an XLSX file; words are text, never formulas, and a second sheet says what it is. */
export async function lineTableXlsx(table: LineTable, made: TableMade): Promise<Uint8Array> {
  const { title, head, rows, wide, notes } = table;
  const bold = (value: string) => ({ ...cell(value), fontWeight: "bold" as const });
  const about = [
    ["Table", title],
    ["Line", made.line],
    ["Office", made.office],
    ["As of", made.on],
    ["Made by", made.by],
    ...notes.map((note) => ["Note", note]),
  ];
  return await writeWorkbook([
    {
      data: [
        head.map((name) => ({ ...bold(name), wrap: true })),
        ...rows.map((row) => row.map(cell)),
      ],
      sheet: title,
      columns: head.map((name) => ({ width: wide.has(name) ? 34 : 13 })),
      stickyRowsCount: 1,
    },
    {
      data: about.map(([name = "", value = ""]) => [bold(name), { ...cell(value), wrap: true }]),
      sheet: "About",
      columns: [{ width: 12 }, { width: 80 }],
    },
  ]).toBuffer();
}

/** Whole numbers as they are, lengths with their decimals, anything else as text. */
function cell(value: TableCell) {
  if (typeof value === "string") return { value, type: String };
  return Number.isInteger(value)
    ? { value, type: Number }
    : { value, type: Number, format: "0.0##" };
}
