import type { Db } from "#db/open.ts";
import { didFrom, insertSession, logSignIn, type NewSession } from "#db/queries/session.ts";
import { getAccount, getUser } from "#db/queries/user.ts";
import {
  ABSOLUTE_MINUTES,
  IDLE_MINUTES,
  type SignInDeed,
  TRIES_WINDOW_MINUTES,
} from "#lib/domain/facts/session.ts";
import type { User } from "#lib/domain/facts/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse } from "./change.ts";
import { isPassword } from "./password.ts";
import { accountOf, minutesFrom, takeBackTry, takeTry } from "./throttle.ts";

/** Nobody acts yet. */
type Door = Pick<Act, "db" | "now">;

interface SignIn {
  readonly email: string;
  readonly password: string;
  /** Network address that asks; empty where it is not known. */
  readonly address: string;
  /** What the browser calls itself, for the log. */
  readonly agent: string;
  /** SHA-256 of the new session's secret; the secret itself never comes here. */
  readonly tokenHash: string;
}

/**
 * Starts a session. An unknown account, a disabled one and a wrong password get one and the same
 * answer, as slowly; who tries too often has to wait (throttle.ts). Each try is in the log.
 */
export async function signIn(
  door: Door,
  { email, password, address, agent, tokenHash }: SignIn,
): Promise<Result<{ user: User }, Refusal>> {
  const trier = { account: accountOf(email), address: address.slice(0, 100) };
  const log = (db: Db, what: SignInDeed) =>
    logSignIn(db, { ...trier, at: door.now, what, agent: agent.slice(0, 400) });
  const taken = door.db.transaction(
    (db) => {
      const one = takeTry(db, trier, door.now);
      // Once in a window: whoever keeps on trying must not fill the log.
      const since = minutesFrom(door.now, -TRIES_WINDOW_MINUTES);
      if ("wait" in one && !didFrom(db, { ...trier, what: "made-to-wait", since }))
        log(db, "made-to-wait");
      return one;
    },
    { behavior: "immediate" },
  );
  if ("wait" in taken) return refuse("too-many-tries", "", taken.wait);
  const account = getAccount(door.db, email);
  const right = await isPassword(password, account?.passwordHash ?? null);
  return door.db.transaction(
    (db) => {
      const now = right ? getAccount(db, email) : null;
      if (now === null || now.user.disabled || now.passwordHash !== account?.passwordHash) {
        log(db, "refused");
        return refuse("wrong-password", "password");
      }
      takeBackTry(db, taken);
      log(db, "signed-in");
      insertSession(db, newSession(door, { userId: now.user.id, tokenHash }));
      return ok({ user: now.user });
    },
    { behavior: "immediate" },
  );
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
