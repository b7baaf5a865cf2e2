import type { Db } from "#db/open.ts";
import { countTries, didFrom, forgetTries, noteTry } from "#db/queries/session.ts";
import { countedAddress } from "#lib/caller-address.ts";
import {
  KNOWN_DAYS,
  TRIES_PER_ACCOUNT,
  TRIES_PER_ADDRESS,
  TRIES_PER_PAIR,
  TRIES_WINDOW_MINUTES,
} from "#lib/domain/facts/session.ts";
import type { Instant } from "#lib/domain/time/day.ts";

/** Who tries a password, and from where. */
export interface Trier {
  /** The account's mail address, folded; there need be none. */
  readonly account: string;
  /** Network address; empty where it is not known. */
  readonly address: string;
}

/** A try that was let through, to be taken back if it turns out right. */
export interface Try {
  readonly pairKey: string;
  readonly ids: readonly number[];
}

/** How the account of a mail address is named in the throttle and the log, however it is typed. */
export function accountOf(email: string): string {
  return email.trim().toLowerCase().slice(0, 254);
}

/**
 * Takes a try before its password is looked at, so that tries at the same moment all count; or says
 * how long to wait. Wrong ones are counted by account and address together, by address, and by
 * account from all over, where addresses from which it signed in lately are let through: nobody is
 * locked out by what strangers do.
 */
export function takeTry(db: Db, trier: Trier, now: Instant): Try | { readonly wait: string } {
  const since = minutesFrom(now, -TRIES_WINDOW_MINUTES);
  const keys = keysOf(trier);
  const limits = [
    [keys.pair, TRIES_PER_PAIR],
    ...(trier.address === "" ? [] : ([[keys.address, TRIES_PER_ADDRESS]] as const)),
    ...(isKnown(db, trier, now) ? [] : ([[keys.account, TRIES_PER_ACCOUNT]] as const)),
  ] as const;
  for (const [key, limit] of limits) {
    const wait = waitOf(db, { key, limit, since, now });
    if (wait !== null) return { wait };
  }
  const ids = noteTry(db, { keys: Object.values(keys), at: now, since });
  return { pairKey: keys.pair, ids };
}

/** The password was right: the try uses nothing up, and the wrong ones before it are forgiven. */
export function takeBackTry(db: Db, { pairKey, ids }: Try): void {
  forgetTries(db, pairKey, ids);
}

function keysOf({ account, address }: Trier) {
  const from = countedAddress(address).slice(0, 100);
  return {
    pair: `pair:${account}|${from}`,
    address: `address:${from}`,
    account: `account:${account}`,
  };
}

function isKnown(db: Db, { account, address }: Trier, now: Instant): boolean {
  const since = minutesFrom(now, -KNOWN_DAYS * 24 * 60);
  return didFrom(db, { account, address, what: "signed-in", since });
}

function waitOf(
  db: Db,
  { key, limit, since, now }: { key: string; limit: number; since: Instant; now: Instant },
): string | null {
  const { number, first } = countTries(db, key, { since, until: now });
  if (number < limit || first === null) return null;
  const opens = Date.parse(minutesFrom(first, TRIES_WINDOW_MINUTES));
  const minutes = Math.max(1, Math.ceil((opens - Date.parse(now)) / 60_000));
  return minutes === 1 ? "1 minute" : `${minutes} minutes`;
}

export function minutesFrom(at: Instant, minutes: number): Instant {
  return new Date(Date.parse(at) + minutes * 60_000).toISOString();
}
