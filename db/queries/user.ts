import { and, count, eq, gt, ne, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { preparedOn } from "#db/prepared.ts";
import { sessions, users } from "#db/schema.ts";
import { IDLE_MINUTES } from "#lib/domain/facts/session.ts";
import type { User } from "#lib/domain/facts/user.ts";
import type { Instant } from "#lib/domain/time/day.ts";

const COLUMNS = {
  id: users.id,
  name: users.name,
  email: users.email,
  role: users.role,
  disabled: users.disabled,
};

/** Everybody who has or had an account, by name. */
export function listUsers(db: Db): User[] {
  return db.select(COLUMNS).from(users).orderBy(sql`fold_text(${users.name})`).all();
}

export function getUser(db: Db, userId: string): User | null {
  return db.select(COLUMNS).from(users).where(eq(users.id, userId)).get() ?? null;
}

/** The account of an address, however it is typed, with the hash of its password. */
export function getAccount(
  db: Db,
  email: string,
): { readonly user: User; readonly passwordHash: string } | null {
  const row = db
    .select({ ...COLUMNS, passwordHash: users.passwordHash })
    .from(users)
    .where(eq(users.emailKey, emailKey(email)))
    .get();
  if (!row) return null;
  const { passwordHash, ...user } = row;
  return { user, passwordHash };
}

/** How many admins could still sign in if this user could not. */
export function countOtherAdmins(db: Db, userId: string): number {
  const row = db
    .select({ number: count() })
    .from(users)
    .where(and(eq(users.role, "admin"), eq(users.disabled, false), ne(users.id, userId)))
    .get();
  return row?.number ?? 0;
}

export function insertUser(
  db: Db,
  { user, passwordHash, at }: { user: User; passwordHash: string; at: Instant },
): void {
  db.insert(users)
    .values({ ...user, emailKey: emailKey(user.email), passwordHash, createdAt: at })
    .run();
}

export function updateUser(db: Db, { id, ...facts }: User): void {
  db.update(users)
    .set({ ...facts, emailKey: emailKey(facts.email) })
    .where(eq(users.id, id))
    .run();
}

export function setPasswordHash(db: Db, userId: string, passwordHash: string): void {
  db.update(users).set({ passwordHash }).where(eq(users.id, userId)).run();
}

/**
 * The user of a session that is neither over nor idle for too long, or null; nobody who is disabled.
 * That it was used is noted, at most once in a minute.
 */
export function getUserOfSession(db: Db, tokenHash: string, now: Instant): User | null {
  const found = preparedOn(db, "user of a session", () => selectOfSession(db)).get({
    tokenHash,
    now,
  });
  if (!found) return null;
  const { idleUntil, endsAt: _endsAt, ...user } = found;
  const later = minutesAfter(now, IDLE_MINUTES);
  if (Date.parse(later) - Date.parse(idleUntil) > 60_000) {
    db.update(sessions).set({ idleUntil: later }).where(eq(sessions.tokenHash, tokenHash)).run();
  }
  return user;
}

function selectOfSession(db: Db) {
  return db
    .select({ ...COLUMNS, idleUntil: sessions.idleUntil, endsAt: sessions.endsAt })
    .from(sessions)
    .innerJoin(users, eq(users.id, sessions.userId))
    .where(
      and(
        eq(sessions.tokenHash, sql.placeholder("tokenHash")),
        gt(sessions.idleUntil, sql.placeholder("now")),
        gt(sessions.endsAt, sql.placeholder("now")),
        eq(users.disabled, false),
      ),
    )
    .prepare();
}

function minutesAfter(at: Instant, minutes: number): Instant {
  return new Date(Date.parse(at) + minutes * 60_000).toISOString();
}

/** One address is one account, whatever its capitals. */
function emailKey(email: string): string {
  return email.trim().toLowerCase();
}
