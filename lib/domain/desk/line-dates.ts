import type { ClockMeaning } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { sayCount } from "../say/count.ts";
import type { Day } from "../time/day.ts";
import { formatTime } from "../time/time-of-day.ts";
import type { DueThing, Question } from "./answer.ts";
import { runningClocks } from "./clock-words.ts";
import { ROLL_CALL_PAGE } from "./roll-call-things.ts";

/** A day of a line as the office's calendar has it: without the name of anybody who lives there. */
export interface LineDate {
  /** Stays the same while the day of the same thing moves. */
  readonly key: string;
  readonly day: Day;
  /** The day on which its count began. */
  readonly since: Day;
  readonly title: string;
  /** Where it is settled, as a path under the line. */
  readonly path: string;
}

const MEANINGS: Record<ClockMeaning, string> = {
  "due-by": "due",
  "not-before": "not before",
  "not-after": "not after",
  expires: "expires",
};

/**
 * The days that a line has coming or overdue: clocks that run (the authority's, inspections, locate
 * tickets), how many replies are due, and tasks of the office with a day. None on a closed file.
 */
export function lineDates(file: LineFile, report: Report, things: readonly DueThing[]): LineDate[] {
  if (file.line.closedOn !== null) return [];
  return [...clockDates(file, report), ...taskDates(things, report.today)];
}

function clockDates(file: LineFile, { clocks }: Report): LineDate[] {
  return runningClocks(file, clocks).map(({ clock, count, kind }) => {
    const { on: day, startedOn: since, at, meaning } = clock;
    // The title of a reply's clock names its reader.
    if (kind === "reply") {
      const title = `${sayCount(count, "reply", "replies")} due`;
      return { key: `replies:${day}`, day, since, title, path: "notices" };
    }
    const time = at === "" ? "" : ` at ${formatTime(at)}`;
    const said = meaning === "due-by" && kind === "inspection" ? "" : `: ${MEANINGS[meaning]}`;
    const title = `${clock.title}${said}${time}`;
    return { key: keyOf(clock.key), day, since, title, path: "schedule" };
  });
}

/** The rule and what it is about: the day may move, the date stays the same. */
function keyOf(key: string): string {
  return key.replace(/:\d{4}-\d{2}-\d{2}$/, "");
}

const TASKS: Partial<Record<Question, string>> = {
  schedule: "Call every door before the drain shutdown",
  reconcile: "Ruling on a connection: to be done",
};

/** What the office has to do by a day that is no clock. */
function taskDates(things: readonly DueThing[], today: Day): LineDate[] {
  return things.flatMap(({ on, question, where, waitsOn }) => {
    const title = TASKS[question];
    const isTask = where === ROLL_CALL_PAGE || question === "reconcile";
    if (on === null || on < today || title === undefined || !isTask) return [];
    if (waitsOn !== "office") return [];
    return [{ key: `task:${question}:${on}`, day: on, since: on, title, path: where ?? question }];
  });
}
