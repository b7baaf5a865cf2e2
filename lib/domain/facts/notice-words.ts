import type { ConsentKind, ConsentState } from "./consent.ts";
import { LETTER_KINDS, LETTERS, type LetterKind } from "./letter-kind.ts";
import type { DealtHow, DeliveryMethod, DeliveryOutcome, ReplyKind } from "./notice.ts";

// Letters, their delivery and what comes back, in the words of a US office, as they stand inside a
// sentence: one list for screens, history and packet.

export const LETTER_SAID = Object.fromEntries(
  LETTER_KINDS.map((kind) => [kind, LETTERS[kind].said]),
) as Readonly<Record<LetterKind, string>>;

export const METHOD_WORDS: Record<DeliveryMethod, string> = {
  "first-class": "first-class mail",
  certified: "certified mail",
  "mail-message": "email",
  "by-hand": "hand delivered",
  posted: "posted on site",
  "door-hanger": "door hanger",
};

export const OUTCOME_WORDS: Record<DeliveryOutcome, string> = {
  "on-its-way": "in transit",
  delivered: "delivered",
  returned: "returned to sender",
  unclaimed: "unclaimed",
  failed: "not delivered",
};

export const REPLY_WORDS: Record<ReplyKind, string> = {
  agrees: "agrees",
  disagrees: "disagrees",
  asks: "has a question",
  "offers-a-record": "has a record",
  "books-a-test": "wants to schedule a test",
  "wants-another-day": "wants another day",
  "wants-paper": "wants it on paper",
  "asks-release": "asks to be released from paying",
  "accepts-tie-in": "accepts the tie-in",
  other: "other",
};

/** What somebody does who replies so, after their name. */
export const REPLY_VERBS: Record<ReplyKind, string> = { ...REPLY_WORDS, other: "replied" };

export const DEALT_WORDS: Record<DealtHow, string> = {
  "called-back": "called back",
  answered: "answered",
  "changed-file": "changed the file",
  "nothing-to-do": "no action needed",
};

export const CONSENT_WORDS: Record<ConsentKind, string> = {
  enter: "entry",
  dig: "digging",
  pay: "payment",
  "agreement-signed": "agreement signed",
  "agreement-notarised": "agreement notarized",
  "agreement-recorded": "agreement recorded",
};

export const CONSENT_STATE_WORDS: Record<ConsentState, string> = {
  asked: "requested",
  given: "given",
  refused: "refused",
  withdrawn: "withdrawn",
  "name-held": "signed, name to be checked",
  "name-refused": "signed, name not accepted",
};
