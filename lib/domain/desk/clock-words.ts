import type { LineFile } from "../facts/line-file.ts";
import type { Clock } from "../findings/clock.ts";
import { sayCount } from "../say/count.ts";
import { businessDaysBetween } from "../time/business-days.ts";
import type { Day } from "../time/day.ts";
import { daysBetween } from "../time/days.ts";
import { formatNearDay } from "../time/format-day.ts";
import { formatTime } from "../time/time-of-day.ts";
import { repeatsReplies, ruleOf } from "./clock-rows.ts";

/** Several clocks that say the same of the same day, told as one. */
export interface ClockGroup {
  readonly clock: Clock;
  readonly count: number;
  readonly kind: "reply" | "locate" | "inspection" | "other";
}

type Clocked = Pick<
  LineFile,
  "locateTickets" | "inspections" | "authority" | "notices" | "deliveries" | "parties"
>;

/**
 * Clocks that still run, the earliest first; replies that are due the same day count as one, and a
 * rule that only repeats them does not count.
 */
export function runningClocks(file: Clocked, clocks: readonly Clock[]): ClockGroup[] {
  const groups = new Map<string, ClockGroup>();
  const running = clocks.filter((clock) => !clock.settled && !repeatsReplies(file, clock));
  for (const clock of running) {
    const kind = kindOf(file, clock);
    const key = kind === "reply" ? `${kind} ${clock.on}` : clock.key;
    groups.set(key, { clock, kind, count: (groups.get(key)?.count ?? 0) + 1 });
  }
  return [...groups.values()].toSorted((one, other) => one.clock.on.localeCompare(other.clock.on));
}

function kindOf(file: Clocked, clock: Clock): ClockGroup["kind"] {
  if (clock.key.startsWith("reply:")) return "reply";
  if (clock.key.startsWith("inspection:")) return "inspection";
  return file.locateTickets.some(({ id }) => id === clock.subjectId) ? "locate" : "other";
}

/** `reply due in 3 days`, `locate window opens Thursday`. */
export function clockWords(file: Clocked, group: ClockGroup, today: Day): string {
  const { clock, kind } = group;
  if (kind === "reply") return replyWords(file, group, today);
  if (kind === "inspection") return `${lowered(clock.title)} ${momentOf(clock, today)}`;
  const verb = kind === "locate" ? locateVerb(clock, today) : null;
  if (verb !== null) return `locate ${verb} ${momentOf(clock, today)}`;
  return otherWords(file, clock, today);
}

function replyWords(file: Clocked, { clock, count }: ClockGroup, today: Day): string {
  if (clock.on < today)
    return `${sayCount(count, "reply", "replies")} overdue since ${formatNearDay(clock.on, today)}`;
  const replies = count === 1 ? "reply due" : `replies due on ${count} letters`;
  return `${replies} ${inDays(file, clock, today)}`;
}

function locateVerb({ meaning, on }: Clock, today: Day): string | null {
  if (meaning === "not-before") return "window opens";
  if (meaning === "not-after") return on < today ? "window closed" : "window closes";
  if (meaning === "expires") return on < today ? "ticket expired" : "ticket expires";
  return null;
}

function otherWords(file: Clocked, clock: Clock, today: Day): string {
  const title = clock.title;
  const when = momentOf(clock, today);
  if (clock.meaning === "not-before") return `${title}: starting ${when}`;
  if (clock.on < today) {
    const days = sayCount(daysBetween(clock.on, today), "day");
    return clock.meaning === "expires"
      ? `${title}: expired ${when}`
      : `${title}: overdue by ${days}`;
  }
  if (clock.meaning === "not-after") return `${title}: no later than ${when}`;
  if (clock.meaning === "expires") return `${title}: ${when}`;
  return `${title}: due ${inDays(file, clock, today)}`;
}

/** `today`, `tomorrow`, `in 9 days`; `in 3 business days` where they are what counts; beyond ten the day itself. */
function inDays(file: Clocked, clock: Clock, today: Day): string {
  const { on } = clock;
  const ahead = daysBetween(today, on);
  if (ahead === 0 || ahead === 1) return momentOf(clock, today);
  const inBusiness = ruleOf(file, clock)?.unit === "business-days";
  const count = inBusiness ? businessDaysBetween(today, on, file.authority?.holidays ?? []) : ahead;
  if (count === 0 || count > 10) return formatNearDay(on, today);
  return `in ${sayCount(count, inBusiness ? "business day" : "day")}`;
}

/** `Thursday`; `Thursday at 4:00 PM` where the clock runs to an hour. */
function momentOf({ on, at }: Clock, today: Day): string {
  const day = formatNearDay(on, today);
  return at === "" ? day : `${day} at ${formatTime(at)}`;
}

function lowered(title: string): string {
  return `${title.slice(0, 1).toLowerCase()}${title.slice(1)}`;
}
