import { and, asc, between, count, desc, eq, isNull } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { calendarFeeds, lineDates, lineSummaries, lines, users } from "#db/schema.ts";
import type { LineDate } from "#lib/domain/desk/line-dates.ts";
import type { Day, Instant } from "#lib/domain/time/day.ts";

/** An address at which a calendar program reads the office's days. */
export interface CalendarFeed {
  readonly id: string;
  readonly userId: string;
  readonly onlyMine: boolean;
  readonly createdAt: Instant;
  readonly revokedAt: Instant | null;
  readonly revokedBy: string;
  /** When it was read last; null: never. */
  readonly readAt: Instant | null;
}

const COLUMNS = {
  id: calendarFeeds.id,
  userId: calendarFeeds.userId,
  onlyMine: calendarFeeds.onlyMine,
  createdAt: calendarFeeds.createdAt,
  revokedAt: calendarFeeds.revokedAt,
  revokedBy: calendarFeeds.revokedBy,
  readAt: calendarFeeds.readAt,
};

/** The addresses of a person, the newest first. */
export function listFeeds(db: Db, userId: string): CalendarFeed[] {
  return db
    .select(COLUMNS)
    .from(calendarFeeds)
    .where(eq(calendarFeeds.userId, userId))
    .orderBy(desc(calendarFeeds.createdAt), calendarFeeds.id)
    .all();
}

export function getFeed(db: Db, id: string): CalendarFeed | null {
  return db.select(COLUMNS).from(calendarFeeds).where(eq(calendarFeeds.id, id)).get() ?? null;
}

/** The good address of a secret: not called back, and of somebody who can sign in. */
export function getOpenFeed(db: Db, tokenHash: string): CalendarFeed | null {
  const found = db
    .select(COLUMNS)
    .from(calendarFeeds)
    .innerJoin(users, eq(users.id, calendarFeeds.userId))
    .where(
      and(
        eq(calendarFeeds.tokenHash, tokenHash),
        isNull(calendarFeeds.revokedAt),
        eq(users.disabled, false),
      ),
    )
    .get();
  return found ?? null;
}

/** How many good addresses a person has. */
export function countOpenFeeds(db: Db, userId: string): number {
  const open = db.select({ number: count() }).from(calendarFeeds);
  const theirs = and(eq(calendarFeeds.userId, userId), isNull(calendarFeeds.revokedAt));
  return open.where(theirs).get()?.number ?? 0;
}

export function insertFeed(
  db: Db,
  feed: Pick<CalendarFeed, "id" | "userId" | "onlyMine" | "createdAt"> & {
    readonly tokenHash: string;
  },
): void {
  db.insert(calendarFeeds)
    .values({ ...feed, revokedBy: "" })
    .run();
}

export function revokeFeedRow(
  db: Db,
  { id, at, by }: { readonly id: string; readonly at: Instant; readonly by: string },
): void {
  db.update(calendarFeeds)
    .set({ revokedAt: at, revokedBy: by })
    .where(eq(calendarFeeds.id, id))
    .run();
}

export function noteFeedRead(db: Db, id: string, at: Instant): void {
  db.update(calendarFeeds).set({ readAt: at }).where(eq(calendarFeeds.id, id)).run();
}

/** A day of a line with which line it is. */
export interface NamedDate extends LineDate {
  readonly lineId: string;
  readonly lineName: string;
}

/** The days of all lines, or of those that somebody looks after, within a stretch of days. */
export function listDates(
  db: Db,
  { from, to, keeper }: { readonly from: Day; readonly to: Day; readonly keeper: string | null },
): NamedDate[] {
  return db
    .select({
      lineId: lineDates.lineId,
      lineName: lines.name,
      key: lineDates.key,
      day: lineDates.day,
      since: lineDates.since,
      title: lineDates.title,
      path: lineDates.path,
    })
    .from(lineDates)
    .innerJoin(lines, eq(lines.id, lineDates.lineId))
    .innerJoin(lineSummaries, eq(lineSummaries.lineId, lineDates.lineId))
    .where(
      and(
        between(lineDates.day, from, to),
        keeper === null ? undefined : eq(lineSummaries.keeper, keeper),
      ),
    )
    .orderBy(asc(lineDates.day), lineDates.lineId, lineDates.position)
    .all();
}
