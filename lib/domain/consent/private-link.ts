import type { Instant } from "../time/day.ts";

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

/** What can be done by a private link; each time is noted. */
export const LINK_DEEDS = [
  "opened",
  "opened-letter",
  "added-file",
  "answered",
  "signed",
  "withdrew",
] as const;
export type LinkDeed = (typeof LINK_DEEDS)[number];

/** One thing that somebody did by a private link. */
export interface LinkVisit {
  readonly id: string;
  readonly linkId: string;
  readonly at: Instant;
  readonly what: LinkDeed;
  readonly address: string;
  readonly agent: string;
}

/** Days that a link is good for, unless the office says otherwise. */
export const LINK_DAYS = 30;
export const MOST_LINK_DAYS = 180;

/** Files that one link takes in, and the most bytes of each. */
export const MOST_LINK_FILES = 10;
export const LINK_FILE_LIMIT = 20_000_000;

/** Most openings of one link, and most other deeds by it, within a quarter of an hour. */
export const LINK_OPENINGS = 200;
export const LINK_DOINGS = 40;
/** Most links that are not there, or no longer, from one network address in that time. */
export const LINK_MISSES = 30;

export type LinkState = "open" | "expired" | "revoked";

/** How a link stands at a moment. One that was called back stays so, also when it runs out. */
export function linkState(
  { expiresAt, revokedAt }: Pick<PrivateLink, "expiresAt" | "revokedAt">,
  now: Instant,
): LinkState {
  if (revokedAt !== null) return "revoked";
  return expiresAt <= now ? "expired" : "open";
}

/** 32 random bytes as base64url: 43 signs. */
export function isLinkSecret(text: string): boolean {
  return /^[A-Za-z0-9_-]{43}$/.test(text);
}

/** Who acts by a link, as the history and the replies name them. */
export const BY_PRIVATE_LINK = "private link";

/** Why links that begin with an address would be dead for a neighbor. */
export type AddressStop = "none" | "this-machine" | "own-network";

/** Whether an office's address opens outside of it, where neighbors are; null: it does, as far as it says. */
export function addressStop(address: string | null): AddressStop | null {
  if (address === null || !URL.canParse(address)) return "none";
  const host = new URL(address).hostname.replace(/^\[|\]$/g, "").toLowerCase();
  if (THIS_MACHINE.some((pattern) => pattern.test(host))) return "this-machine";
  return OWN_NETWORK.some((pattern) => pattern.test(host)) ? "own-network" : null;
}

const THIS_MACHINE = [/^(.+\.)?localhost$/, /^127\./, /^0\.0\.0\.0$/, /^::1?$/];

/** Private and link-local addresses (RFC 1918, 3927, 4193, 4291), and names that no public one ends in. */
const OWN_NETWORK = [
  /^10\./,
  /^192\.168\./,
  /^172\.(1[6-9]|2\d|3[01])\./,
  /^169\.254\./,
  /^f[cd][0-9a-f]{2}:/,
  /^fe[89ab][0-9a-f]:/,
  /^[^.:]+$/,
  /\.(local|lan|internal|home|home\.arpa)$/,
];
