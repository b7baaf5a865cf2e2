import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { getOffice } from "#db/queries/office.ts";
import { lineTableCsv, lineTableXlsx } from "#lib/exchange/line-table.ts";
import { lineReport } from "#lib/operations/line-report.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";
import { TABLES } from "../taken.ts";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** The schedule of connections or the camera log as CSV or, with `as=xlsx`, for a spreadsheet. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ lineId: string; table: string }> },
): Promise<Response> {
  const user = await getUser();
  if (user === null) return signedOut();
  const { lineId, table: asked } = await params;
  if (asked !== "connections" && asked !== "log")
    return refusedRequest(404, "There is no such table.");
  const line = lineReport(db(), lineId, today());
  if (line === null) return refusedRequest(404, "There is no such line.");
  const { file, report } = line;
  const table = TABLES[asked](file, report);
  const made = {
    line: file.line.name,
    on: today(),
    by: user.name,
    office: getOffice(db())?.name ?? "",
  };
  const isXlsx = new URL(request.url).searchParams.get("as") === "xlsx";
  const bytes = isXlsx ? await lineTableXlsx(table, made) : lineTableCsv(table, made);
  const name = `${table.title} ${made.on} ${made.line}.${isXlsx ? "xlsx" : "csv"}`;
  return new Response(bytes as BodyInit, {
    headers: {
      "Content-Type": isXlsx ? XLSX : "text/csv; charset=utf-8",
      "Content-Disposition": contentDisposition("attachment", name),
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}
