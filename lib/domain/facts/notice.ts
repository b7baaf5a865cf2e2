import type { Language } from "../say/language.ts";
import type { Day, Instant } from "../time/day.ts";

/** Letter kinds of the trade; A to L in the office's own list. */
export const LETTER_KINDS = [
  "finding",
  "tie-in-inquiry",
  "test-visit",
  "proposed-split",
  "entry-consent",
  "joint-agreement",
  "work-start",
  "drain-pause",
  "spill",
  "share-demand",
  "authority-response",
  "close-out",
] as const;
export type LetterKind = (typeof LETTER_KINDS)[number];

export const NOTICE_STATES = ["draft", "sent"] as const;
type NoticeState = (typeof NOTICE_STATES)[number];

/** A letter to one party. Frozen once sent: what was sent is `frozen`, byte for byte. */
export interface Notice {
  readonly id: string;
  readonly kind: LetterKind;
  readonly partyId: string;
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly splitId: string | null;
  /** The language that comes first, and the only one where `alsoIn` is null. */
  readonly language: Language;
  /** The same letter again in this language, behind the first in one document. */
  readonly alsoIn: Language | null;
  readonly state: NoticeState;
  readonly createdOn: Day;
  readonly createdBy: string;
  readonly replyBy: Day | null;
  /** Words that the office adds above the standing text. */
  readonly ownWords: string;
  /** The letter as composed when sent (letter/letter.ts, as JSON); null while a draft. */
  readonly frozen: string | null;
  readonly frozenHash: string | null;
  readonly sentAt: Instant | null;
  readonly uploadId: string | null;
}

export const DELIVERY_METHODS = [
  "first-class",
  "certified",
  "mail-message",
  "by-hand",
  "posted",
  "door-hanger",
] as const;
export type DeliveryMethod = (typeof DELIVERY_METHODS)[number];

export const DELIVERY_OUTCOMES = [
  "on-its-way",
  "delivered",
  "returned",
  "unclaimed",
  "failed",
] as const;
export type DeliveryOutcome = (typeof DELIVERY_OUTCOMES)[number];

/** One attempt to deliver a notice, with its proof. */
export interface Delivery {
  readonly id: string;
  readonly noticeId: string;
  readonly method: DeliveryMethod;
  readonly sentOn: Day;
  readonly by: string;
  readonly tracking: string;
  readonly outcome: DeliveryOutcome;
  readonly outcomeOn: Day | null;
  readonly proofUploadId: string | null;
  readonly note: string;
}

export const REPLY_KINDS = [
  "agrees",
  "disagrees",
  "asks",
  "offers-a-record",
  "books-a-test",
  "wants-another-day",
  "wants-paper",
  /** Wants to be let go from a promise to pay that binds already. */
  "asks-release",
  "accepts-tie-in",
  "other",
] as const;
export type ReplyKind = (typeof REPLY_KINDS)[number];

/** How a named person dealt with a reply. */
export const DEALT_HOWS = ["called-back", "answered", "changed-file", "nothing-to-do"] as const;
export type DealtHow = (typeof DEALT_HOWS)[number];

/** What came back to a letter, and what the office did about it. */
export interface Reply {
  readonly id: string;
  readonly noticeId: string;
  readonly kind: ReplyKind;
  readonly receivedOn: Day;
  readonly takenBy: string;
  readonly words: string;
  /** A day that suits them, for a test or a visit; null where none was named. */
  readonly suitsOn: Day | null;
  readonly uploadId: string | null;
  /** Who dealt with it; empty while it waits. */
  readonly dealtBy: string;
  readonly dealtOn: Day | null;
  readonly dealtHow: DealtHow | null;
  /** What was said or done. */
  readonly dealtWords: string;
}
