import { and, count, desc, eq, gt, inArray, lt, lte, min, ne, or } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { sessions, signIns, signInTries } from "#db/schema.ts";
import type { SignInEntry } from "#lib/domain/facts/session.ts";
import type { Instant } from "#lib/domain/time/day.ts";

export interface NewSession {
  readonly tokenHash: string;
  readonly userId: string;
  readonly startedAt: Instant;
  readonly idleUntil: Instant;
  readonly endsAt: Instant;
}

/** Keeps a session, and forgets those that are over. */
export function insertSession(db: Db, session: NewSession): void {
  db.delete(sessions)
    .where(or(lt(sessions.endsAt, session.startedAt), lt(sessions.idleUntil, session.startedAt)))
    .run();
  db.insert(sessions).values(session).run();
}

export function removeSession(db: Db, tokenHash: string): void {
  db.delete(sessions).where(eq(sessions.tokenHash, tokenHash)).run();
}

/** Ends every session of a user, but the one that is named; says how many there were. */
export function removeSessionsOf(db: Db, userId: string, { but = "" } = {}): number {
  return db
    .delete(sessions)
    .where(and(eq(sessions.userId, userId), ne(sessions.tokenHash, but)))
    .run().changes;
}

/**
 * Tries within a window, and when the first of them was. What lies ahead of `until` is left out: a
 * clock that was set back must not make anybody wait for a day.
 */
export function countTries(
  db: Db,
  key: string,
  { since, until }: { since: Instant; until: Instant },
): { readonly number: number; readonly first: Instant | null } {
  const where = and(
    eq(signInTries.key, key),
    gt(signInTries.at, since),
    lte(signInTries.at, until),
  );
  const found = db
    .select({ number: count(), first: min(signInTries.at) })
    .from(signInTries)
    .where(where)
    .get();
  return { number: found?.number ?? 0, first: found?.first ?? null };
}

/** Notes a try under each key, forgets tries from before `since`, and says which they are. */
export function noteTry(
  db: Db,
  { keys, at, since }: { keys: readonly string[]; at: Instant; since: Instant },
): number[] {
  db.delete(signInTries).where(lt(signInTries.at, since)).run();
  return keys.map((key) =>
    Number(db.insert(signInTries).values({ key, at }).run().lastInsertRowid),
  );
}

/** Takes tries back that turned out right, and forgets all under a key. */
export function forgetTries(db: Db, key: string, ids: readonly number[]): void {
  db.delete(signInTries)
    .where(or(eq(signInTries.key, key), inArray(signInTries.id, [...ids])))
    .run();
}

/** Adds an entry to the log of sign-ins. */
export function logSignIn(db: Db, entry: SignInEntry): void {
  db.insert(signIns).values(entry).run();
}

const LOG = {
  at: signIns.at,
  what: signIns.what,
  account: signIns.account,
  address: signIns.address,
  agent: signIns.agent,
};

/** The log of sign-ins, the newest first; of one account where it is named. */
export function listSignIns(
  db: Db,
  { account, most }: { account?: string; most: number },
): SignInEntry[] {
  return db
    .select(LOG)
    .from(signIns)
    .where(account === undefined ? undefined : eq(signIns.account, account))
    .orderBy(desc(signIns.position))
    .limit(most)
    .all();
}

/** Whether an account did this from an address since a moment. */
export function didFrom(
  db: Db,
  { account, address, what, since }: Omit<SignInEntry, "at" | "agent"> & { since: Instant },
): boolean {
  const found = db
    .select({ at: signIns.at })
    .from(signIns)
    .where(
      and(
        eq(signIns.account, account),
        eq(signIns.address, address),
        eq(signIns.what, what),
        gt(signIns.at, since),
      ),
    )
    .limit(1)
    .get();
  return found !== undefined;
}
