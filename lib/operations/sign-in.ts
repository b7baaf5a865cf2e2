import type { Db } from "#db/open.ts";
import {
  countTries,
  forgetTries,
  insertSession,
  type NewSession,
  noteTry,
} from "#db/queries/session.ts";
import { getAccount, getUser } from "#db/queries/user.ts";
import type { Instant } from "#lib/domain/calendar/day.ts";
import {
  ABSOLUTE_MINUTES,
  IDLE_MINUTES,
  TRIES_PER_ACCOUNT,
  TRIES_PER_ADDRESS,
  TRIES_WINDOW_MINUTES,
} from "#lib/domain/user/session.ts";
import type { User } from "#lib/domain/user/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse } from "./change.ts";
import { isPassword } from "./password.ts";

/** Nobody acts yet. */
type Door = Pick<Act, "db" | "now">;

interface SignIn {
  readonly email: string;
  readonly password: string;
  /** Network address that asks, for the throttle. */
  readonly address: string;
  /** SHA-256 of the new session's secret; the secret itself never comes here. */
  readonly tokenHash: string;
}

/**
 * Starts a session. An unknown account, a disabled one and a wrong password get one and the same
 * answer, as slowly. After too many tries for the account or from the address, nobody is let in
 * until the window has passed.
 */
export async function signIn(
  door: Door,
  { email, password, address, tokenHash }: SignIn,
): Promise<Result<{ user: User }, Refusal>> {
  const accountKey = `account:${email.trim().toLowerCase().slice(0, 254)}`;
  const throttled = takeATry(door, { accountKey, addressKey: `address:${address.slice(0, 100)}` });
  if (throttled !== null) return throttled;
  const account = getAccount(door.db, email);
  const right = await isPassword(password, account?.passwordHash ?? null);
  if (!right || account === null) return refuse("wrong-password", "password");
  return door.db.transaction(
    (db) => {
      const now = getAccount(db, email);
      if (now === null || now.user.disabled || now.passwordHash !== account.passwordHash)
        return refuse("wrong-password", "password");
      forgetTries(db, accountKey);
      insertSession(db, newSession(door, { userId: now.user.id, tokenHash }));
      return ok({ user: now.user });
    },
    { behavior: "immediate" },
  );
}

/** Counts the try before the password is looked at, so that tries at the same moment all count. */
function takeATry(
  { db, now }: Door,
  { accountKey, addressKey }: { accountKey: string; addressKey: string },
): { readonly ok: false; readonly error: Refusal } | null {
  const since = minutesFrom(now, -TRIES_WINDOW_MINUTES);
  return db.transaction(
    (one) => {
      const limits = [
        [accountKey, TRIES_PER_ACCOUNT],
        [addressKey, TRIES_PER_ADDRESS],
      ] as const;
      for (const [key, limit] of limits) {
        const wait = waitOf(one, { key, limit, since, now });
        if (wait !== null) return refuse("too-many-tries", "", wait);
      }
      noteTry(one, { keys: [accountKey, addressKey], at: now, since });
      return null;
    },
    { behavior: "immediate" },
  );
}

function waitOf(
  db: Db,
  { key, limit, since, now }: { key: string; limit: number; since: Instant; now: Instant },
): string | null {
  const { number, first } = countTries(db, key, since);
  if (number < limit || first === null) return null;
  const opens = Date.parse(minutesFrom(first, TRIES_WINDOW_MINUTES));
  const minutes = Math.max(1, Math.ceil((opens - Date.parse(now)) / 60_000));
  return minutes === 1 ? "1 minute" : `${minutes} minutes`;
}

function minutesFrom(at: Instant, minutes: number): Instant {
  return new Date(Date.parse(at) + minutes * 60_000).toISOString();
}

/** Starts the session of somebody who has just proven who they are: the first admin after the set-up. */
export function startSession(
  door: Door,
  { userId, tokenHash }: { readonly userId: string; readonly tokenHash: string },
): Result<{ user: User }, Refusal> {
  const user = getUser(door.db, userId);
  if (user === null || user.disabled) return refuse("not-found", "userId", "the user");
  insertSession(door.db, newSession(door, { userId, tokenHash }));
  return ok({ user });
}

function newSession(
  { now }: Door,
  { userId, tokenHash }: { userId: string; tokenHash: string },
): NewSession {
  return {
    tokenHash,
    userId,
    startedAt: now,
    idleUntil: minutesFrom(now, IDLE_MINUTES),
    endsAt: minutesFrom(now, ABSOLUTE_MINUTES),
  };
}
