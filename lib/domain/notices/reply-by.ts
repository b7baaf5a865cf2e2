import { dayOfRule } from "../calendar/rule-day.ts";
import { LETTERS, type LetterKind } from "../facts/letter-kind.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Day } from "../time/day.ts";

/** The day by which a rule on file has an answer come, with how it was counted. */
export interface ReplyBy {
  readonly on: Day;
  readonly title: string;
  readonly sentence: string;
  readonly citation: string;
}

/**
 * By when a letter that goes today has an answer due under the authority's rules on letters; where
 * several say so, the longest of their times, since all have to be given. The letter may go by mail,
 * so the days for mail count. Null where no rule says, and for a letter that asks for no answer.
 */
export function replyByFor(
  { authority }: Pick<LineFile, "authority">,
  kind: LetterKind,
  today: Day,
): ReplyBy | null {
  const events = LETTERS[kind].answeredFrom ?? [];
  const days = (authority?.clockRules ?? [])
    .filter(
      ({ event, way, meaning }) =>
        way === "after" && meaning === "due-by" && events.includes(event),
    )
    .map((rule): ReplyBy => {
      const { on, sentence } = dayOfRule(rule, today, authority?.holidays ?? [], { mailed: true });
      return { on, sentence, title: rule.title, citation: rule.citation };
    })
    .toSorted((one, other) => one.on.localeCompare(other.on));
  return days.at(-1) ?? null;
}
