import { db } from "#app/db.ts";
import { getUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getOffice } from "#db/queries/office.ts";
import { pressingPapers } from "#lib/domain/clocks/paper-clocks.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { clockCalendar } from "./clock-calendar.ts";

/** The line's running clocks as an iCalendar file: all-day dates, so that no zone can move them. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return new Response("Sign in first.", { status: 401 });
  const { lineId } = await params;
  const file = getLineFile(db(), lineId);
  if (file === null) return new Response("There is no such line.", { status: 404 });
  const day = today();
  const { clocks } = reportOn(file, day);
  const firm = getOffice(db());
  const papers = firm === null ? [] : pressingPapers(firm, day);
  const address = new URL(`/lines/${lineId}/schedule`, request.url).toString();
  const office = new URL("/office", request.url).toString();
  const { name } = file.line;
  const text = clockCalendar({ lineId, name, clocks, papers, office, address });
  return new Response(text, {
    headers: {
      "Content-Type": "text/calendar; charset=utf-8",
      "Content-Disposition": 'attachment; filename="clocks.ics"',
      "Cache-Control": "no-store",
    },
  });
}
