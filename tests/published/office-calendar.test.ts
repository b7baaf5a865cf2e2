import ICAL from "ical.js";
import { expect, test } from "vitest";
import { officeCalendar } from "#lib/exchange/office-calendar.ts";

// RFC 5545, Internet Calendaring and Scheduling Core Object Specification (from memory):
// 3.1 lines end in CRLF and are folded at 75 octets; 3.3.11 TEXT escapes backslash, semicolon, comma
// and line ends; 3.6 PRODID and VERSION once; 3.6.1 UID and DTSTAMP in each event, a DATE start with a
// DATE end after it; 3.8.4.7 a UID only once.

const NAME =
  "Callejón de Peña, “Heron”; back\\side 🚰 and a name that goes on and on beyond the fold";
const date = (key: string, day: string) => ({
  ...{ key, day, since: "2026-11-01", title: "Permit, side sewer: expires", path: "schedule" },
  ...{ lineId: "line-1", lineName: NAME },
});
const TEXT = officeCalendar({
  dates: [date("rule:a b", "2026-12-31"), date("rule:c", "2028-02-29")],
  papers: [],
  address: "https://office.example.com",
});

test("RFC 5545 3.1: CRLF ends every line, none is over 75 octets, and no sign is cut in two", () => {
  expect(TEXT.endsWith("END:VCALENDAR\r\n")).toBe(true);
  expect(TEXT.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  for (const line of TEXT.split("\r\n")) {
    expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(line).not.toMatch(/\p{Surrogate}/u);
  }
});

test("RFC 5545 3.3.11, 3.6.1: a parser reads words, days and links as they were written", () => {
  const calendar = new ICAL.Component(ICAL.parse(TEXT) as unknown[]);
  expect(calendar.getFirstPropertyValue("version")).toBe("2.0");
  const events = calendar.getAllSubcomponents("vevent").map((each) => new ICAL.Event(each));
  expect(events.map(({ summary }) => summary)).toEqual(
    Array.from({ length: 2 }, () => `Permit, side sewer: expires, ${NAME}`),
  );
  expect(events.map(({ startDate, endDate }) => [`${startDate}`, `${endDate}`])).toEqual([
    ["2026-12-31", "2027-01-01"],
    ["2028-02-29", "2028-03-01"],
  ]);
  expect(events.every(({ startDate }) => startDate.isDate)).toBe(true);
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(2);
  for (const event of calendar.getAllSubcomponents("vevent"))
    expect(event.getFirstPropertyValue("url")).toBe(
      "https://office.example.com/lines/line-1/schedule",
    );
});
