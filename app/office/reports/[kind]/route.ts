import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { getOffice } from "#db/queries/office.ts";
import { OFFICE_REPORTS, REPORT_KINDS } from "#lib/domain/desk/office-reports.ts";
import { reportCsv, reportXlsx } from "#lib/exchange/office-report.ts";
import { officeReportRows } from "#lib/operations/office-report-rows.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** A report over all lines as CSV, sent line by line, or, with `as=xlsx`, for a spreadsheet. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ kind: string }> },
): Promise<Response> {
  const user = await getUser();
  if (user === null) return signedOut();
  const asked = (await params).kind;
  const kind = OFFICE_REPORTS.find((each) => each === asked);
  if (kind === undefined) return refusedRequest(404, "There is no such report.");
  const isXlsx = new URL(request.url).searchParams.get("as") === "xlsx";
  const made = { on: today(), by: user.name, office: getOffice(db())?.name ?? "" };
  const rows = officeReportRows(db(), kind, made.on);
  const body = isXlsx ? await reportXlsx(kind, rows, made) : streamed(reportCsv(kind, rows, made));
  const name = `${REPORT_KINDS[kind].title} ${made.on}.${isXlsx ? "xlsx" : "csv"}`;
  return new Response(body as BodyInit, {
    headers: {
      "Content-Type": isXlsx ? XLSX : "text/csv; charset=utf-8",
      "Content-Disposition": contentDisposition("attachment", name),
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}

/** Sent as it is read; what nobody takes any more is not worked out. */
function streamed(parts: AsyncGenerator<string>): ReadableStream<Uint8Array> {
  const bytes = new TextEncoder();
  return new ReadableStream({
    async pull(stream) {
      const { done, value } = await parts.next();
      if (done) stream.close();
      else stream.enqueue(bytes.encode(value));
    },
    async cancel() {
      await parts.return(undefined);
    },
  });
}
