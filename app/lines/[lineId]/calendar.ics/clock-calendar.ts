import ical, { ICalCalendarMethod } from "ical-generator";
import type { Clock } from "#lib/domain/findings/clock.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { MEANING_WORDS } from "../terms.ts";

interface ClockCalendar {
  readonly lineId: string;
  readonly name: string;
  readonly clocks: readonly Clock[];
  /** The office’s own papers that run out. */
  readonly papers: readonly Clock[];
  /** Where their dates are entered. */
  readonly office: string;
  /** Where the clocks can be read in full. */
  readonly address: string;
}

/**
 * The running clocks as an iCalendar text. Every clock is an all-day event that keeps its UID as
 * long as it is the same clock, so that taking the file in again moves it and doubles nothing. The
 * office’s own papers have one UID in the calendar of every line: whoever adds two has each once.
 */
export function clockCalendar({
  lineId,
  name,
  clocks,
  papers,
  office,
  address,
}: ClockCalendar): string {
  // The generator does not escape the calendar's own name: no commas, semicolons or line ends in it.
  const calendar = ical({
    name: name.replaceAll(/[,;\r\n\\]+/g, " "),
    method: ICalCalendarMethod.PUBLISH,
    prodId: { company: "Wyebook", product: "clocks", language: "EN" },
  });
  const running = clocks.filter(({ settled }) => !settled);
  for (const clock of running)
    calendar.createEvent(
      eventOf(clock, { owner: lineId, what: `${clock.title}, ${name}`, url: address }),
    );
  for (const clock of papers)
    calendar.createEvent(eventOf(clock, { owner: "office", what: clock.title, url: office }));
  return calendar.toString();
}

function eventOf(
  clock: Clock,
  { owner, what, url }: { readonly owner: string; readonly what: string; readonly url: string },
) {
  return {
    id: `${encodeURIComponent(uidOf(clock))}@${owner}.wyebook`,
    // All-day events take the day in UTC, whatever the machine's zone.
    start: new Date(`${clock.on}T12:00:00Z`),
    allDay: true,
    // One stamp for one clock, so that the same file comes out byte for byte.
    stamp: new Date(`${clock.startedOn}T00:00:00Z`),
    summary: `${MEANING_WORDS[clock.meaning]}${clock.at === "" ? "" : ` ${formatTime(clock.at)}`}: ${what}`,
    description: [clock.sentence, clock.citation].filter((part) => part !== "").join("\n"),
    url,
  };
}

/** The rule and what it is about: the day may move, the event stays the same. */
function uidOf(clock: Clock): string {
  return clock.key.replace(/:\d{4}-\d{2}-\d{2}$/, "");
}
