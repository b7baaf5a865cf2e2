import type { DeliveryMethod } from "../facts/notice.ts";
import { formatDate } from "../time/format-day.ts";
import { copyGaps, isCopy } from "./copy.ts";
import { type LetterFacts, type LetterInput, letterFacts } from "./facts.ts";
import { LETTER_PLANS } from "./kinds/index.ts";
import { wordingGaps } from "./worded.ts";

/** Carried by the post. */
const POSTED: readonly DeliveryMethod[] = ["first-class", "certified"];

/**
 * What a letter still lacks before it should go out, each in a sentence that says what to enter. A
 * street address is asked for where the post carries it.
 * The letter composes all the same, with “not yet set” in its place.
 */
export function letterGaps(
  input: LetterInput,
  { method = "first-class" }: { readonly method?: DeliveryMethod } = {},
): string[] {
  const facts = letterFacts(input);
  const { gaps } = LETTER_PLANS[facts.notice.kind];
  if (isCopy(facts.file, facts.notice))
    return [
      ...copyGaps(facts),
      ...(POSTED.includes(method) ? [hasAddress(facts) ?? []].flat() : []),
    ];
  const checks = [
    hasReplyBy,
    repliesBefore,
    ...gaps,
    ...(POSTED.includes(method) ? [hasAddress] : []),
  ];
  return [...checks.flatMap((check) => check(facts) ?? []), ...wordingGaps(facts)];
}

function hasReplyBy({ notice }: LetterFacts): string | null {
  const { wantsReply } = LETTER_PLANS[notice.kind];
  return wantsReply && notice.replyBy === null ? "No reply-by date is set." : null;
}

/** Who is asked for an answer is asked for it before what the letter tells of. */
function repliesBefore(facts: LetterFacts): string | null {
  const { replyBy, kind } = facts.notice;
  const { ahead, choices } = LETTER_PLANS[kind];
  const told = ahead?.(facts) ?? null;
  if (told === null || replyBy === null || replyBy < told.on) return null;
  if (choices(facts).length === 0) return null;
  return `The reply-by date, ${formatDate(replyBy)}, is too late: ${told.what} on ${formatDate(told.on)}. Choose an earlier day.`;
}

function hasAddress({ party, property }: LetterFacts): string | null {
  const address = party.mailing ?? property?.address;
  if (address && address.street !== "" && address.zip !== "") return null;
  return `The address of ${party.name} has no street or no ZIP code.`;
}
