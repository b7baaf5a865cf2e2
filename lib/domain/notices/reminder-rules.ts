import { LETTER_KINDS, LETTERS, type LetterKind } from "../facts/letter-kind.ts";
import type { Notice } from "../facts/notice.ts";
import { sayCount } from "../say/count.ts";
import type { Day, Instant } from "../time/day.ts";
import { addDays } from "../time/days.ts";

/** When the office reminds of letters of a kind, and whether it sends such reminders by itself. */
export interface ReminderRule {
  readonly kind: LetterKind;
  /** Days after the reply-by day of the first letter. */
  readonly daysAfter: number;
  /** Days after each reminder was sent, until the next. */
  readonly every: number;
  /** At most so many reminders to one party about one thing. */
  readonly most: number;
  /** Email goes out without a release by a person. */
  readonly sends: boolean;
  /** Who last turned sending on or off, and when; empty: nobody did. */
  readonly sendsBy: string;
  readonly sendsAt: Instant | "";
}

/** Kinds of letter that ask for an answer, so that there is something to remind of. */
export const REMINDED_KINDS: readonly LetterKind[] = LETTER_KINDS.filter(
  (kind) => LETTERS[kind].answeredFrom !== undefined,
);

/** A rule in words, after the letter's name. */
export function ruleSentence({ daysAfter, every, most, sends }: ReminderRule): string {
  const out = sends ? "emailed without a release" : "sent only when released";
  return `${sayCount(daysAfter, "day")} after the reply was due, then every ${sayCount(every, "day")}, at most ${sayCount(most, "reminder")}; ${out}`;
}

/**
 * Whether the next reminder of a letter that was not answered is due by its kind's rule. Every letter
 * after the first to the same party about the same thing counts as a reminder, by whomever it was sent.
 */
export function isReminderDue(
  rule: Pick<ReminderRule, "daysAfter" | "every" | "most">,
  { sent, today }: { readonly sent: readonly { notice: Notice; on: Day }[]; readonly today: Day },
): boolean {
  const [last] = sent.toSorted((one, other) => other.on.localeCompare(one.on));
  const replyBy = last?.notice.replyBy ?? null;
  if (last === undefined || replyBy === null || replyBy >= today) return false;
  const given = sent.length - 1;
  if (given >= rule.most) return false;
  return (
    addDays(given === 0 ? replyBy : last.on, given === 0 ? rule.daysAfter : rule.every) <= today
  );
}
