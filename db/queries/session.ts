import { and, count, eq, gt, lt, or } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { sessions, signInTries } from "#db/schema.ts";
import type { Instant } from "#lib/domain/calendar/day.ts";

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

/** Ends every session of a user; says how many there were. */
export function removeSessionsOf(db: Db, userId: string): number {
  return db.delete(sessions).where(eq(sessions.userId, userId)).run().changes;
}

/** Tries since a moment, and when the first of them was. */
export function countTries(
  db: Db,
  key: string,
  since: Instant,
): { readonly number: number; readonly first: Instant | null } {
  const where = and(eq(signInTries.key, key), gt(signInTries.at, since));
  const number = db.select({ number: count() }).from(signInTries).where(where).get()?.number ?? 0;
  const first = db
    .select({ at: signInTries.at })
    .from(signInTries)
    .where(where)
    .orderBy(signInTries.at)
    .limit(1)
    .get();
  return { number, first: first?.at ?? null };
}

/** Notes a try under each key, and forgets tries from before `since`. */
export function noteTry(
  db: Db,
  { keys, at, since }: { keys: readonly string[]; at: Instant; since: Instant },
): void {
  db.delete(signInTries).where(lt(signInTries.at, since)).run();
  for (const key of keys) db.insert(signInTries).values({ key, at }).run();
}

export function forgetTries(db: Db, key: string): void {
  db.delete(signInTries).where(eq(signInTries.key, key)).run();
}
