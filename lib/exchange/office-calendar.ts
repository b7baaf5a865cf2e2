import type { LineDate } from "#lib/domain/desk/line-dates.ts";
import type { Clock } from "#lib/domain/findings/clock.ts";
import { addDays } from "#lib/domain/time/days.ts";

interface OfficeCalendar {
  readonly dates: readonly (LineDate & { readonly lineId: string; readonly lineName: string })[];
  /** The office's own papers that run out. */
  readonly papers: readonly Clock[];
  /** The office's address on the net, to which events lead; null: they lead nowhere. */
  readonly address: string | null;
}

/**
 * The days of all lines as an iCalendar text (RFC 5545): all-day events, which no zone can move, each
 * with a UID that stays while its day moves. Written out here, since a calendar of a thousand lines
 * takes the generator that the calendar of one line uses seconds, and a page server has none to give.
 */
export function officeCalendar({ dates, papers, address }: OfficeCalendar): string {
  const link = (path: string) => (address === null ? [] : [`URL:${new URL(path, address).href}`]);
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Wyebook//office calendar//EN",
    "METHOD:PUBLISH",
    "NAME:Wyebook",
    "X-WR-CALNAME:Wyebook",
    // A calendar program looks again after so long.
    "REFRESH-INTERVAL;VALUE=DURATION:PT4H",
    "X-PUBLISHED-TTL:PT4H",
    ...dates.flatMap(({ key, day, since, title, path, lineId, lineName }) =>
      eventOn(day, {
        since,
        uid: `${encodeURIComponent(key)}@${lineId}.wyebook`,
        summary: `${title}, ${lineName}`,
        link: link(`/lines/${lineId}/${path}`),
      }),
    ),
    ...papers.flatMap(({ key, on, startedOn, title }) =>
      eventOn(on, {
        since: startedOn,
        uid: `${encodeURIComponent(key)}@office.wyebook`,
        summary: `${title}: expires`,
        link: link("/office"),
      }),
    ),
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

interface Event {
  readonly since: string;
  readonly uid: string;
  readonly summary: string;
  readonly link: readonly string[];
}

/** One all-day event; it ends before the next day (RFC 5545, 3.6.1). Stamped by when its count began, so that the same days come out byte for byte. */
function eventOn(day: string, { since, uid, summary, link }: Event): string[] {
  return [
    "BEGIN:VEVENT",
    `UID:${uid}`,
    `DTSTAMP:${dateOf(since)}T000000Z`,
    `DTSTART;VALUE=DATE:${dateOf(day)}`,
    `DTEND;VALUE=DATE:${dateOf(addDays(day, 1))}`,
    `SUMMARY:${escaped(summary)}`,
    ...link,
    "TRANSP:TRANSPARENT",
    "END:VEVENT",
  ];
}

function dateOf(day: string): string {
  return day.replaceAll("-", "");
}

/** RFC 5545, 3.3.11: a backslash, semicolon, comma or line end is written with a backslash. */
function escaped(text: string): string {
  return text.replaceAll(/[\\;,]/g, "\\$&").replaceAll(/\r\n?|\n/g, "\\n");
}

const MOST_OCTETS = 75;

/** RFC 5545, 3.1: a line of more than 75 octets goes on after a line end and a blank, between signs. */
function folded(line: string): string {
  if (Buffer.byteLength(line) <= MOST_OCTETS) return line;
  const parts: string[] = [];
  let part = "";
  let octets = 0;
  for (const sign of line) {
    const more = Buffer.byteLength(sign);
    if (octets + more > MOST_OCTETS) {
      parts.push(part);
      part = " ";
      octets = 1;
    }
    part += sign;
    octets += more;
  }
  return [...parts, part].join("\r\n");
}
