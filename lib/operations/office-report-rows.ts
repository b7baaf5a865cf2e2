import type { Db } from "#db/open.ts";
import { lineIdsWith } from "#db/queries/line.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import {
  type OfficeReport,
  REPORT_KINDS,
  type ReportCell,
} from "#lib/domain/desk/office-reports.ts";
import type { Day } from "#lib/domain/time/day.ts";

/** On which lists of a line a report rests: a line without a row of any has none. */
const RESTS_ON = {
  permits: ["permits"],
  money: ["ledger"],
  replies: ["notices", "replies"],
} as const;

/** The rows of a report, one line of the office at a time, so that whoever else asks comes between. */
export async function* officeReportRows(
  db: Db,
  kind: OfficeReport,
  today: Day,
): AsyncGenerator<ReportCell[][]> {
  for (const lineId of lineIdsWith(db, RESTS_ON[kind])) {
    const file = getLineFile(db, lineId);
    if (file !== null) yield REPORT_KINDS[kind].rows(file, today);
    await new Promise((resolve) => setImmediate(resolve));
  }
}
