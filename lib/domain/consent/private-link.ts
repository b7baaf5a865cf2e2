import type { Instant } from "../calendar/day.ts";

/**
 * A private link for one party to one letter: to read it, to see the drawing and their share, and to
 * answer. The secret is in the letter or message only; here is its hash. No part of the line file.
 */
export interface PrivateLink {
  readonly id: string;
  readonly lineId: string;
  readonly noticeId: string;
  readonly partyId: string;
  /** SHA-256 of the secret. */
  readonly tokenHash: string;
  readonly createdBy: string;
  readonly createdAt: Instant;
  readonly expiresAt: Instant;
  readonly revokedAt: Instant | null;
  readonly revokedBy: string;
}

/** One thing that somebody did by a private link. */
export interface LinkVisit {
  readonly id: string;
  readonly linkId: string;
  readonly at: Instant;
  readonly what: string;
  readonly address: string;
  readonly agent: string;
}
