import type { ClockRule } from "../facts/clock-rule.ts";
import { sayList } from "../say/say-list.ts";
import { addBusinessDays, type Holidays, rollDay, whyNotBusiness } from "../time/business-days.ts";
import type { Day } from "../time/day.ts";
import { addDays, addMonths, weekday } from "../time/days.ts";
import { formatDay, formatFullDay } from "../time/format-day.ts";
import { formatTime } from "../time/time-of-day.ts";
import { hoursEnd } from "./hours.ts";
import { daysInDoubt } from "./in-doubt.ts";

/** What a count says, apart from where it is written and what it is called. */
export type ClockCount = Pick<
  ClockRule,
  "count" | "unit" | "way" | "countsEventDay" | "fullDays" | "roll" | "mailDays" | "meaning"
>;

/** Where a rule's count ends, and how it got there. */
export interface RuleDay {
  /** The day that counts; for `not-before` the first allowed day. */
  readonly on: Day;
  /** For hours: the time of that day, as `16:05`; empty where the whole day counts. */
  readonly at: string;
  /** How it was counted, in one sentence. */
  readonly sentence: string;
}

/** The count as far as it has come. */
interface Counting {
  readonly rule: ClockCount;
  readonly event: Day;
  /** The event's time of day; empty where none is noted. */
  readonly time: string;
  readonly holidays: Holidays;
  readonly on: Day;
  readonly at: string;
  readonly words: readonly string[];
}

/**
 * The day on which a rule's count from an event ends.
 *
 * The event's own day is day 0, unless the rule counts it. A day that is not a business day is
 * rolled as the rule says; days for mail are added after that, and the sum is rolled again (the
 * order of Fed. R. Civ. P. 6(a) and 6(d)). With full days, the day after the last counted one is
 * the first allowed (for a count backwards: the day before it is the last allowed).
 * Hours run from the event's time of day (`at`); where none is noted, from whichever end of its day
 * cannot come out too late or too early (hours.ts). Refuses a count that is negative or not whole.
 *
 * A holiday of which it is not known whether it is kept (in-doubt.ts) is counted both ways: what has to
 * be waited for is the later day, everything else the earlier one, and the sentence says so.
 */
export function dayOfRule(
  rule: ClockCount,
  event: Day,
  holidays: Holidays,
  options: RuleOptions,
): RuleDay {
  const kept = dayWith(rule, event, holidays, options);
  const doubted = daysInDoubt(holidays);
  if (doubted.length === 0) return kept;
  const sure = holidays.filter((holiday) => !doubted.includes(holiday));
  const notKept = dayWith(rule, event, sure, options);
  const [first, last] = momentOf(kept) < momentOf(notKept) ? [kept, notKept] : [notKept, kept];
  if (momentOf(first) === momentOf(last)) return kept;
  const waits = rule.meaning === "not-before";
  const safe = waits ? last : first;
  const other = formatFullDay((waits ? first : last).on);
  return {
    ...safe,
    sentence: `${safe.sentence} Whether this authority keeps ${doubtWords(doubted, [kept.on, notKept.on, event])} is not known; counted the other way it is ${other}. The ${waits ? "later" : "earlier"} day is the safe one.`,
  };
}

/** Days compare by themselves; within one, a time comes before the whole day’s end. */
function momentOf({ on, at }: RuleDay): string {
  return `${on} ${at === "" ? "99:99" : at}`;
}

/** The doubted days that the count passes: from its event to either end. */
function doubtWords(doubted: Holidays, days: readonly Day[]): string {
  const [from = "", to = ""] = [days.toSorted().at(0), days.toSorted().at(-1)];
  const passed = doubted.filter(({ day }) => day >= from && day <= to);
  return sayList((passed.length === 0 ? doubted : passed).map(({ name }) => name));
}

interface RuleOptions {
  readonly mailed: boolean;
  readonly at?: string;
}

function dayWith(rule: ClockCount, event: Day, holidays: Holidays, options: RuleOptions): RuleDay {
  if (!Number.isInteger(rule.count) || rule.count < 0)
    throw new RangeError(`Cannot count a rule: count must be whole and >= 0, got ${rule.count}`);
  const time = options.at ?? "";
  let counting: Counting = { rule, event, time, holidays, on: event, at: "", words: [] };
  counting = rolled(fullDayPast(counted(counting)));
  if (options.mailed && rule.mailDays > 0) counting = rolled(mailed(counting));
  return { on: counting.on, at: counting.at, sentence: sentenceOf(counting) };
}

function step({ rule }: Counting): 1 | -1 {
  return rule.way === "before" ? -1 : 1;
}

function counted(counting: Counting): Counting {
  return counting.rule.unit === "hours" ? countedHours(counting) : countedDays(counting);
}

function countedHours(counting: Counting): Counting {
  const { rule, event, time } = counting;
  const { on, at, remark } = hoursEnd(rule, event, time);
  const way = rule.way === "before" ? "before" : "after";
  const from =
    time === "" ? formatFullDay(event) : `${formatTime(time)} on ${formatFullDay(event)}`;
  const whole = rule.meaning === "not-before" ? "" : "the end of ";
  const end = `${at === "" ? whole : ""}${sayMoment({ ...counting, at }, on)}`;
  return { ...counting, on, at, words: [`${countWords(rule)} ${way} ${from} is ${end}${remark}`] };
}

function countedDays(counting: Counting): Counting {
  const { rule, event } = counting;
  const on = rawDay(counting);
  const way = rule.way === "before" ? "before" : "after";
  const own = countsOwnDay(rule) ? ", counting that day," : "";
  const first = `${countWords(rule)} ${way} ${formatFullDay(event)}${own} is ${say(counting, on)}`;
  return { ...counting, on, words: [first] };
}

function rawDay(counting: Counting): Day {
  const { rule, event, holidays } = counting;
  const way = step(counting);
  if (rule.unit === "business-days") {
    const from = countsOwnDay(rule) ? addDays(event, -way) : event;
    return addBusinessDays(from, way * rule.count, holidays);
  }
  const plain =
    rule.unit === "months" ? addMonths(event, way * rule.count) : addDays(event, way * rule.count);
  return countsOwnDay(rule) ? addDays(plain, -way) : plain;
}

function countsOwnDay({ countsEventDay, count }: ClockCount): boolean {
  return countsEventDay && count > 0;
}

function fullDayPast(counting: Counting): Counting {
  if (!counting.rule.fullDays) return counting;
  const on = addDays(counting.on, step(counting));
  const passed = counting.rule.way === "before" ? "before it is" : "after it has passed is";
  return { ...counting, on, words: [...counting.words, `${passed} ${sayMoment(counting, on)}`] };
}

function mailed(counting: Counting): Counting {
  const { mailDays } = counting.rule;
  const on = addDays(counting.on, step(counting) * mailDays);
  const words = `${mailDays === 1 ? "1 day" : `${mailDays} days`} for mail give${mailDays === 1 ? "s" : ""}`;
  return { ...counting, on, words: [...counting.words, `${words} ${sayMoment(counting, on)}`] };
}

function rolled(counting: Counting): Counting {
  const { rule, holidays } = counting;
  if (rule.roll === "none") return counting;
  const on = rollDay(counting.on, rule.roll === "backwards" ? -1 : 1, holidays);
  if (on === counting.on) return counting;
  const words = `since that is ${whyNotBusiness(counting.on, holidays)}, moved ${rule.roll === "forwards" ? "forward" : "back"} to ${sayMoment(counting, on)}`;
  return { ...counting, on, words: [...counting.words, words] };
}

function sentenceOf({ rule, words, holidays, on }: Counting): string {
  const year = on.slice(0, 4);
  const counts = rule.unit === "business-days" || rule.roll !== "none";
  const known = holidays.some((holiday) => holiday.day.startsWith(year));
  const caution = counts && !known ? ` No holidays are entered for ${year}.` : "";
  return `${words.join("; ")}.${caution}`;
}

/** `7:00 AM on Friday, December 4`; the day alone where all of it counts. */
function sayMoment(counting: Counting, day: Day): string {
  const { at } = counting;
  return at === "" ? say(counting, day) : `${formatTime(at)} on ${say(counting, day)}`;
}

function say({ event }: Counting, day: Day): string {
  const short = formatDay(day, event);
  return short.startsWith(weekday(day)) ? short : formatFullDay(day);
}

const UNIT_WORDS: Record<ClockRule["unit"], readonly [string, string]> = {
  "calendar-days": ["calendar day", "calendar days"],
  "business-days": ["business day", "business days"],
  hours: ["hour", "hours"],
  months: ["month", "months"],
};

/** `2 full business days`, `1 month`. */
function countWords({
  count,
  unit,
  fullDays,
}: Pick<ClockRule, "count" | "unit" | "fullDays">): string {
  const [one, many] = UNIT_WORDS[unit];
  return `${count} ${fullDays ? "full " : ""}${count === 1 ? one : many}`;
}

/**
 * The last day on which the event may happen so that the rule's count still ends by `target`:
 * when to call so that digging may begin then. Null when no day of the year before does.
 */
export function latestEventFor(rule: ClockCount, target: Day, holidays: Holidays): Day | null {
  for (let back = 0; back <= 366; back += 1) {
    const event = addDays(target, -back);
    if (dayOfRule(rule, event, holidays, { mailed: false }).on <= target) return event;
  }
  return null;
}

/**
 * The first day from `from` on on which the event may happen so that the rule's count backwards
 * still ends on `from` or later: the earliest start when a notice can only go out today.
 */
export function earliestEventFor(rule: ClockCount, from: Day, holidays: Holidays): Day | null {
  for (let ahead = 0; ahead <= 366; ahead += 1) {
    const event = addDays(from, ahead);
    if (dayOfRule(rule, event, holidays, { mailed: false }).on >= from) return event;
  }
  return null;
}
