import ical, { ICalCalendarMethod } from "ical-generator";
import type { Clock } from "#lib/domain/findings/clock.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { MEANING_WORDS } from "../terms.ts";

interface ClockCalendar {
  readonly lineId: string;
  readonly name: string;
  readonly clocks: readonly Clock[];
  /** Where the clocks can be read in full. */
  readonly address: string;
}

/**
 * The running clocks as an iCalendar text. Every clock is an all-day event that keeps its UID as
 * long as it is the same clock, so that taking the file in again moves it and doubles nothing.
 */
export function clockCalendar({ lineId, name, clocks, address }: ClockCalendar): string {
  // The generator does not escape the calendar's own name: no commas, semicolons or line ends in it.
  const calendar = ical({
    name: name.replaceAll(/[,;\r\n\\]+/g, " "),
    method: ICalCalendarMethod.PUBLISH,
    prodId: { company: "Wyebook", product: "clocks", language: "EN" },
  });
  for (const clock of clocks) {
    if (clock.settled) continue;
    calendar.createEvent({
      id: `${encodeURIComponent(uidOf(clock))}@${lineId}.wyebook`,
      // All-day events take the day in UTC, whatever the machine's zone.
      start: new Date(`${clock.on}T12:00:00Z`),
      allDay: true,
      // One stamp for one clock, so that the same file comes out byte for byte.
      stamp: new Date(`${clock.startedOn}T00:00:00Z`),
      summary: `${MEANING_WORDS[clock.meaning]}${clock.at === "" ? "" : ` ${formatTime(clock.at)}`}: ${clock.title}, ${name}`,
      description: [clock.sentence, clock.citation].filter((part) => part !== "").join("\n"),
      url: address,
    });
  }
  return calendar.toString();
}

/** The rule and what it is about: the day may move, the event stays the same. */
function uidOf(clock: Clock): string {
  return clock.key.replace(/:\d{4}-\d{2}-\d{2}$/, "");
}
