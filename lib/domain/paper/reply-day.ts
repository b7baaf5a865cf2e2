import { usualRow } from "../facts/field.ts";
import type { LetterKind } from "../facts/letter-kind.ts";
import { NOTICE } from "../facts/notice.ts";
import { type ReplyBy, replyByFor } from "../notices/reply-by.ts";
import type { Day } from "../time/day.ts";
import { addDays } from "../time/days.ts";
import { formatDate } from "../time/format-day.ts";
import { type LetterInput, letterFacts } from "./facts.ts";
import { LETTER_PLANS } from "./kinds/index.ts";
import { recipientsOf } from "./recipients.ts";

/**
 * By when a letter that is written today asks for its answer: the day of the authority's rules, or
 * the day before what the letter tells of (a visit, a meeting) where the rules leave more time than
 * there is. Null where no rule says a day.
 */
export function replyDayFor(
  { file, report, office }: Omit<LetterInput, "notice">,
  kind: LetterKind,
): ReplyBy | null {
  const byRule = replyByFor(file, kind, report.today);
  const { ahead } = LETTER_PLANS[kind];
  if (byRule === null || ahead === undefined) return byRule;
  const told = recipientsOf(file, report, kind)
    .flatMap(({ partyId, propertyId, tieInId, splitId }) => {
      const to = { partyId, propertyId, tieInId, splitId };
      const notice = { ...usualRow(NOTICE), ...to, id: "", kind, createdOn: report.today };
      return ahead(letterFacts({ file, report, office, notice })) ?? [];
    })
    .toSorted((one, other) => one.on.localeCompare(other.on))[0];
  if (told === undefined || byRule.on < told.on) return byRule;
  return {
    ...byRule,
    on: dayBefore(told.on, report.today),
    sentence: `${byRule.sentence} That is too late: ${told.what} on ${formatDate(told.on)}, so the day before is asked for.`,
  };
}

function dayBefore(day: Day, today: Day): Day {
  const before = addDays(day, -1);
  return before < today ? today : before;
}
