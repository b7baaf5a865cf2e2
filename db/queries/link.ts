import { and, asc, eq, isNull } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { links, linkVisits } from "#db/schema.ts";
import {
  LINK_DEEDS,
  type LinkDeed,
  type LinkVisit,
  type PrivateLink,
} from "#lib/domain/consent/private-link.ts";
import type { Instant } from "#lib/domain/time/day.ts";

/** The link with the hash of a secret. */
export function getLinkByHash(db: Db, tokenHash: string): PrivateLink | null {
  return db.select().from(links).where(eq(links.tokenHash, tokenHash)).get() ?? null;
}

export function getLink(db: Db, id: string): PrivateLink | null {
  return db.select().from(links).where(eq(links.id, id)).get() ?? null;
}

/** Every link to one letter, the oldest first. */
export function listLinks(
  db: Db,
  { lineId, noticeId }: { lineId: string; noticeId: string },
): PrivateLink[] {
  return db
    .select()
    .from(links)
    .where(and(eq(links.lineId, lineId), eq(links.noticeId, noticeId)))
    .orderBy(asc(links.createdAt))
    .all();
}

export function insertLink(db: Db, link: PrivateLink): void {
  db.insert(links).values(link).run();
}

/** Calls back every link to a letter that is still good; says how many there were. */
export function revokeLinks(
  db: Db,
  { lineId, noticeId }: { lineId: string; noticeId: string },
  { at, by }: { at: Instant; by: string },
): number {
  return db
    .update(links)
    .set({ revokedAt: at, revokedBy: by })
    .where(and(eq(links.lineId, lineId), eq(links.noticeId, noticeId), isNull(links.revokedAt)))
    .run().changes;
}

export function insertVisit(db: Db, visit: LinkVisit): void {
  db.insert(linkVisits).values(visit).run();
}

/** What was done by a link, in order. */
export function listVisits(db: Db, linkId: string): LinkVisit[] {
  return db
    .select({
      id: linkVisits.id,
      linkId: linkVisits.linkId,
      at: linkVisits.at,
      what: linkVisits.what,
      address: linkVisits.address,
      agent: linkVisits.agent,
    })
    .from(linkVisits)
    .where(eq(linkVisits.linkId, linkId))
    .orderBy(asc(linkVisits.position))
    .all()
    .map((visit) => ({ ...visit, what: deedOf(visit.what) }));
}

function deedOf(what: string): LinkDeed {
  return LINK_DEEDS.find((deed) => deed === what) ?? "opened";
}
