import ical, { ICalCalendarMethod } from "ical-generator";
import { db } from "#app/_db.ts";
import { getUser } from "#app/_session.ts";
import { today } from "#app/_today.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import type { Clock } from "#lib/domain/calendar/clock.ts";
import { reportOn } from "#lib/domain/file/report-on.ts";
import { MEANING_WORDS } from "../_terms.ts";

/** The line's running clocks as an iCalendar file: all-day dates, so that no zone can move them. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return new Response("Sign in first.", { status: 401 });
  const { lineId } = await params;
  const file = getLineFile(db(), lineId);
  if (file === null) return new Response("There is no such line.", { status: 404 });
  const { clocks } = reportOn(file, today());
  const address = new URL(`/lines/${lineId}/next`, request.url).toString();
  const text = calendarOf({ lineId, name: file.line.name, clocks, address });
  return new Response(text, {
    headers: {
      "Content-Type": "text/calendar; charset=utf-8",
      "Content-Disposition": 'attachment; filename="clocks.ics"',
      "Cache-Control": "no-store",
    },
  });
}

function calendarOf({
  lineId,
  name,
  clocks,
  address,
}: {
  readonly lineId: string;
  readonly name: string;
  readonly clocks: readonly Clock[];
  readonly address: string;
}): string {
  // The calendar's name is not escaped by the generator: no commas, semicolons or line ends in it.
  const calendar = ical({
    name: name.replaceAll(/[,;\r\n\\]+/g, " "),
    method: ICalCalendarMethod.PUBLISH,
    prodId: { company: "Wyebook", product: "clocks", language: "EN" },
  });
  for (const clock of clocks) {
    if (clock.settled) continue;
    calendar.createEvent({
      id: `${clock.key}@${lineId}.wyebook`,
      start: new Date(`${clock.on}T00:00:00`),
      allDay: true,
      // One stamp for one day of one clock: the same calendar comes out byte for byte.
      stamp: new Date(`${clock.startedOn}T00:00:00Z`),
      summary: `${MEANING_WORDS[clock.meaning]}: ${clock.title}, ${name}`,
      description: [clock.sentence, clock.citation].filter((part) => part !== "").join("\n"),
      url: address,
    });
  }
  return calendar.toString();
}
