import type { Instant } from "../time/day.ts";

/** A session ends when it was not used for this long … */
export const IDLE_MINUTES = 2 * 60;

/** … and in any case after this long: an office day. */
export const ABSOLUTE_MINUTES = 12 * 60;

/** Wrong passwords for one account from one network address within the window before both wait. */
export const TRIES_PER_PAIR = 5;

/** Wrong passwords from one network address, for whatever accounts, before it has to wait. */
export const TRIES_PER_ADDRESS = 30;

/**
 * Wrong passwords for one account from all over before only the addresses are let in from which it
 * signed in lately: strangers must not lock out whom it belongs to.
 */
export const TRIES_PER_ACCOUNT = 30;

export const TRIES_WINDOW_MINUTES = 15;

/** For how long an address is known from where an account signed in. */
export const KNOWN_DAYS = 90;

/** What the log of sign-ins tells. */
export const SIGN_IN_DEEDS = ["signed-in", "refused", "made-to-wait", "signed-out"] as const;
export type SignInDeed = (typeof SIGN_IN_DEEDS)[number];

/** One entry of the log of sign-ins. */
export interface SignInEntry {
  readonly at: Instant;
  readonly what: SignInDeed;
  /** The address typed, folded: an account of it need not exist. */
  readonly account: string;
  /** Network address; empty where it is not known. */
  readonly address: string;
  /** What the browser calls itself. */
  readonly agent: string;
}
