import type { ClockEvent } from "../facts/clock-rule.ts";
import { isRoundTheClock, type OpenHours } from "../facts/open-hours.ts";
import type { DatedEvent } from "../facts/permit.ts";
import { formatPhone } from "../party/phone.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterWords } from "./words-en.ts";

/** The event of a kind that letters speak of: the one entered last; null where there is none. */
export function eventOf({ file }: LetterFacts, kind: ClockEvent): DatedEvent | null {
  return file.events.filter(({ event }) => event === kind).at(-1) ?? null;
}

/** `9:00 am to 3:30 pm`; empty while one end is not noted. */
export function hoursWords(
  event: Pick<DatedEvent, "at" | "until"> | null,
  words: LetterWords,
): string {
  return event === null || event.at === "" || event.until === ""
    ? ""
    : words.span(event.at, event.until);
}

function openWords({ days, from, to }: OpenHours, words: LetterWords): string {
  const on = words.openDays[days];
  return from === "" || to === "" ? on : `${on}, ${words.span(from, to)}`;
}

/**
 * The office's phone with its hours as far as they were entered, and the on-call number. “Day and
 * night” stands only beside a number that is said to be answered so.
 */
export function phoneRows({ office, words }: LetterFacts): string[][] {
  const { phone, hours, onCallPhone, onCallHours } = office;
  const own =
    phone === ""
      ? []
      : [
          [
            words.frame.telephone,
            words.phoneAt(formatPhone(phone), hours === null ? "" : openWords(hours, words)),
          ],
        ];
  if (onCallPhone === "" || onCallHours === null) return own;
  const number = formatPhone(onCallPhone);
  return isRoundTheClock(onCallHours)
    ? [...own, [words.dayAndNight, number]]
    : [...own, [words.onCall, words.phoneAt(number, openWords(onCallHours, words))]];
}
