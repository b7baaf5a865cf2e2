import type { Instant } from "../time/day.ts";

export const OUTGOING_STATES = ["waiting", "sending", "sent", "failed"] as const;
type OutgoingState = (typeof OUTGOING_STATES)[number];

/**
 * Stands in what a try came to where one before it was broken off: the server may have taken that one
 * too, and only its answer was lost.
 */
export const MAYBE_TWICE =
  "an earlier attempt was interrupted before the result was saved, so this message may have gone twice (both with the same Message-ID)";

/**
 * One message in the outbox: a delivery by mail message on its way out, or a message that is no
 * delivery of a letter (the copy of what somebody signed, an invoice without a cover letter).
 */
export interface Outgoing {
  readonly id: string;
  readonly lineId: string;
  readonly noticeId: string | null;
  readonly deliveryId: string | null;
  /** The invoice that it brings without a cover letter; its PDF is made when it goes. */
  readonly entryId: string | null;
  /** A stored file to go with it, where it is no letter's own PDF. */
  readonly uploadId: string | null;
  readonly toAddress: string;
  readonly toName: string;
  readonly subject: string;
  readonly text: string;
  /** The same for every try, so that a receiver can drop a second copy. */
  readonly messageId: string;
  readonly state: OutgoingState;
  readonly attempts: number;
  readonly nextTryAt: Instant;
  /** What the last try came to, in words; empty before the first. */
  readonly problem: string;
  readonly createdAt: Instant;
  readonly sentAt: Instant | null;
}
