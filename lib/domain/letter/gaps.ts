import { demanded } from "./body-money.ts";
import { workBegins } from "./common.ts";
import { type LetterFacts, type LetterInput, letterFacts } from "./facts.ts";
import type { DeliveryMethod, LetterKind } from "./notice.ts";
import { mayBeDemanded } from "./recipients.ts";

type Check = (facts: LetterFacts) => string | null;

/** A finding informs: a day to answer by is the office's choice there. */
const TO_ANSWER: readonly LetterKind[] = [
  "tie-in-inquiry",
  "proposed-split",
  "entry-consent",
  "joint-agreement",
  "share-demand",
];

/** Carried by the post. */
const POSTED: readonly DeliveryMethod[] = ["first-class", "certified"];

const CHECKS: readonly Check[] = [
  hasReplyBy,
  hasVisitDay,
  hasPauseHours,
  hasWorkDay,
  hasShare,
  isOpen,
  isFresh,
  isDemandable,
  hasTieIn,
];

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
  const checks = POSTED.includes(method) ? [...CHECKS, hasAddress] : CHECKS;
  return checks.flatMap((check) => {
    const gap = check(facts);
    return gap === null ? [] : [gap];
  });
}

function hasReplyBy({ notice }: LetterFacts): string | null {
  const asks = TO_ANSWER.includes(notice.kind) && notice.replyBy === null;
  return asks ? "No day is set by which an answer is asked for." : null;
}

function hasAddress({ party, property }: LetterFacts): string | null {
  const address = party.mailing ?? property?.address;
  if (address && address.street !== "" && address.zip !== "") return null;
  return `The address of ${party.name} has no street or no ZIP code.`;
}

function hasVisitDay({ notice, file }: LetterFacts): string | null {
  if (notice.kind !== "test-visit") return null;
  return file.events.some(({ event }) => event === "tenant-entry")
    ? null
    : "The day of the visit is not set: enter the event “tenant entry” with its hours in the note.";
}

function hasPauseHours({ notice, file }: LetterFacts): string | null {
  if (notice.kind !== "drain-pause") return null;
  const event = file.events.filter((each) => each.event === "drains-paused").at(-1);
  if (!event) return "The day of the pause is not set: enter the event “drains paused”.";
  return event.note === ""
    ? "The hours of the pause are not set: enter them in the event’s note."
    : null;
}

function hasWorkDay(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "work-start" || workBegins(facts) !== null) return null;
  return "The first day of work is not set: enter it with the locate ticket.";
}

function hasShare({ notice, split, share, place }: LetterFacts): string | null {
  if (notice.kind !== "proposed-split" && notice.kind !== "share-demand") return null;
  if (split === null) return "No split has been chosen yet.";
  return share === null ? `The split has no share for ${place}.` : null;
}

function isOpen(facts: LetterFacts): string | null {
  const { notice, share, place } = facts;
  if (notice.kind !== "share-demand" || share === null || demanded(facts) > 0) return null;
  return `Nothing is open for ${place}: it is paid, by the money book.`;
}

function isFresh({ notice, split, outcome }: LetterFacts): string | null {
  if (notice.kind !== "proposed-split" || split === null || outcome !== null) return null;
  return "The split is stale: facts have changed since it was chosen. Choose it again first.";
}

function isDemandable({ notice, own, report, place }: LetterFacts): string | null {
  if (notice.kind !== "share-demand") return null;
  return own.some((finding) => mayBeDemanded(finding, report))
    ? null
    : `Nothing on file shows well enough that ${place} is on the line; a demand needs level 5 or the owner’s word.`;
}

function hasTieIn({ notice, asked }: LetterFacts): string | null {
  return notice.kind === "tie-in-inquiry" && asked === null
    ? "The letter does not say which tie-in it asks about."
    : null;
}
