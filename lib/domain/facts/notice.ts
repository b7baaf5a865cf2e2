import { LANGUAGES } from "../say/language.ts";
import {
  day,
  instant,
  late,
  maybe,
  oneOf,
  type RowOf,
  ref,
  row,
  text,
  timeOfDay,
  usually,
  words,
} from "./field.ts";
import { LETTER_KINDS, type LetterKind } from "./letter-kind.ts";

export { LETTER_KINDS, type LetterKind };

const NOTICE_STATES = ["draft", "sent"] as const;

/** A letter to one party. Frozen once sent: what was sent is `frozen`, byte for byte. */
export type Notice = RowOf<typeof NOTICE>;

export const NOTICE = row({
  one: "letter",
  fields: {
    kind: oneOf(LETTER_KINDS),
    partyId: ref("parties"),
    propertyId: maybe(ref("properties")),
    tieInId: maybe(ref("tieIns")),
    splitId: maybe(ref("splits")),
    /** The language that comes first, and the only one where `alsoIn` is null. */
    language: usually(oneOf(LANGUAGES), "en"),
    /** The same letter again in this language, behind the first in one document. */
    alsoIn: maybe(oneOf(LANGUAGES)),
    state: usually(oneOf(NOTICE_STATES), "draft"),
    createdOn: day,
    createdBy: words,
    replyBy: maybe(day),
    /** Words that the office adds above the standing text. */
    ownWords: words,
    /** The letter as composed when sent (letter/letter.ts, as JSON); null while a draft. */
    frozen: maybe(text),
    frozenHash: maybe(text),
    sentAt: maybe(instant),
    uploadId: maybe(ref("uploads")),
    /** The statutory paper that it gives; empty: none. */
    paperId: late(words),
  },
});

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
export type Delivery = RowOf<typeof DELIVERY>;

export const DELIVERY = row({
  one: "delivery",
  fields: {
    noticeId: ref("notices", "notice"),
    method: oneOf(DELIVERY_METHODS),
    sentOn: day,
    by: words,
    tracking: words,
    outcome: usually(oneOf(DELIVERY_OUTCOMES), "on-its-way"),
    outcomeOn: maybe(day),
    proofUploadId: maybe(ref("uploads")),
    note: words,
    /** The time of day at which it was done, where somebody noted it. */
    at: late(timeOfDay),
    /** Where it was handed over, posted or left. */
    place: late(words),
    /** Who took it, for a letter that was handed over. */
    handedTo: late(words),
    /** The declaration of this delivery, as it was signed on paper. */
    declaredUploadId: maybe(ref("uploads")),
  },
});

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

/** What came back to a letter or to an invoice sent without one, and what the office did about it. */
export type Reply = RowOf<typeof REPLY>;

export const REPLY = row({
  one: "reply",
  fields: {
    /** The letter that it answers; null where that was an invoice without one. */
    noticeId: maybe(ref("notices", "notice")),
    /** The invoice that it answers, where that came without a letter. */
    entryId: maybe(ref("ledger", "invoice")),
    kind: oneOf(REPLY_KINDS),
    receivedOn: day,
    takenBy: words,
    words,
    /** A day that suits them, for a test or a visit; null where none was named. */
    suitsOn: maybe(day),
    uploadId: maybe(ref("uploads")),
    /** Who dealt with it; empty while it waits. */
    dealtBy: late(words),
    dealtOn: maybe(day),
    dealtHow: maybe(oneOf(DEALT_HOWS)),
    /** What was said or done. */
    dealtWords: late(words),
  },
});
