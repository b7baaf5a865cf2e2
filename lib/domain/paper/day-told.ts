import type { ClockEvent } from "../facts/clock-rule.ts";
import type { DatedEvent } from "../facts/permit.ts";
import type { Day } from "../time/day.ts";
import type { LetterFacts } from "./facts.ts";
import { eventOf, hoursWords } from "./hours.ts";

/** A day as it was entered, in the words of a letter; what is missing is said to be. */
interface DayWords {
  readonly event: DatedEvent | null;
  readonly day: string;
  readonly hours: string;
  readonly where: string;
}

/** The day of an event as the letter tells it. */
export function dayOf(facts: LetterFacts, kind: ClockEvent): DayWords {
  const { words } = facts;
  const event = eventOf(facts, kind);
  return {
    event,
    day: event === null ? words.notSet : words.weekday(event.on),
    hours: hoursWords(event, words),
    where: event?.reference ?? "",
  };
}

/** An event as the day that a letter tells of; null where none is entered. */
export function eventAhead(
  facts: LetterFacts,
  kind: ClockEvent,
  what: string,
): { readonly what: string; readonly on: Day } | null {
  const event = eventOf(facts, kind);
  return event === null ? null : { what, on: event.on };
}

/** An event that a letter is about, and what of it the letter can't do without. */
interface DayNeeded {
  readonly kind: ClockEvent;
  /** What has no day, as it begins a sentence. */
  readonly what: string;
  /** The event as it is called under Schedule. */
  readonly words: string;
  readonly place: boolean;
}

/** What is not entered of the day that a letter is about; or that it is past. */
export function dayGap(facts: LetterFacts, { kind, what, words, place }: DayNeeded): string | null {
  const entered = eventOf(facts, kind);
  if (entered === null) return `${what} has no day: enter the event “${words}” under Schedule.`;
  const lacks = [
    ...(hoursWords(entered, facts.words) === "" ? ["its hours"] : []),
    ...(place && entered.reference === "" ? ["its place, under “Number or place”"] : []),
  ];
  if (lacks.length > 0) return `Of the event “${words}” is not entered: ${lacks.join(", ")}.`;
  return (entered.lastOn ?? entered.on) < facts.report.today
    ? `The event “${words}” is past: enter the new day.`
    : null;
}
