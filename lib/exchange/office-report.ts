import { stringify } from "csv-stringify/sync";
import writeWorkbook from "write-excel-file/node";
import {
  type OfficeReport,
  REPORT_KINDS,
  type ReportCell,
} from "#lib/domain/desk/office-reports.ts";

/** Who took a report out, and of which day it is. */
export interface ReportMade {
  readonly on: string;
  readonly by: string;
  readonly office: string;
}

const CSV = { escape_formulas: true, record_delimiter: "windows" } as const;

/**
 * A report as the text of a CSV file, a line of the office after the other, so that none waits for
 * all: with a byte order mark, and with what would be read as a formula marked as text. Each row ends
 * with its day and who made it, wherever it is copied to.
 */
export async function* reportCsv(
  kind: OfficeReport,
  rows: AsyncIterable<readonly ReportCell[][]>,
  made: ReportMade,
): AsyncGenerator<string> {
  yield stringify([[...REPORT_KINDS[kind].head, "As of", "Made by"]], { ...CSV, bom: true });
  for await (const some of rows)
    if (some.length > 0)
      yield stringify(
        some.map((row) => [...row, made.on, made.by]),
        CSV,
      );
}

/** The same as an XLSX file; words are text, never formulas, and a second sheet says of what day it is. */
export async function reportXlsx(
  kind: OfficeReport,
  rows: AsyncIterable<readonly ReportCell[][]>,
  made: ReportMade,
): Promise<Uint8Array> {
  const { title, head } = REPORT_KINDS[kind];
  const all: ReportCell[][] = [];
  for await (const some of rows) all.push(...some);
  const bold = (value: string) => ({ ...cell(value), fontWeight: "bold" as const });
  const about = [
    ["Report", title],
    ["Office", made.office],
    ["As of", made.on],
    ["Made by", made.by],
  ];
  return await writeWorkbook([
    {
      data: [head.map(bold), ...all.map((row) => row.map(cell))],
      sheet: "Report",
      columns: head.map((name) => ({ width: WIDE.has(name) ? 30 : 14 })),
      stickyRowsCount: 1,
    },
    {
      data: about.map(([name = "", value = ""]) => [bold(name), cell(value)]),
      sheet: "About",
      columns: [{ width: 12 }, { width: 40 }],
    },
  ]).toBuffer();
}

const WIDE = new Set<string>([
  "Line",
  "Authority",
  "Permit",
  "Status",
  "Property",
  "Party",
  "Letter",
  "What is due",
]);

/** Whole numbers as they are, anything else as text. */
function cell(value: ReportCell) {
  if (typeof value === "string") return { value, type: String };
  return Number.isInteger(value)
    ? { value, type: Number }
    : { value, type: Number, format: "#,##0.00" };
}
