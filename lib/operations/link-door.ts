import { createHash, timingSafeEqual } from "node:crypto";
import type { Db } from "#db/open.ts";
import { getLink, getLinkByHash, insertVisit } from "#db/queries/link.ts";
import { countTries, noteTry } from "#db/queries/session.ts";
import { countedAddress } from "#lib/caller-address.ts";
import {
  BY_PRIVATE_LINK,
  isLinkSecret,
  LINK_DOINGS,
  LINK_MISSES,
  LINK_OPENINGS,
  type LinkDeed,
  linkState,
  type PrivateLink,
} from "#lib/domain/consent/private-link.ts";
import type { LinkStop } from "#lib/domain/consent/stops.ts";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { TRIES_WINDOW_MINUTES } from "#lib/domain/facts/session.ts";
import type { Instant } from "#lib/domain/time/day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal, RefusalReason } from "./act.ts";
import { refuse } from "./change.ts";

/** Somebody at a private link: nobody who is signed in, and where they ask from. */
export interface LinkDoor extends Pick<Act, "db" | "now" | "today" | "dataFolder" | "newId"> {
  /** Network address; empty where it is not known. */
  readonly address: string;
  /** What the browser calls itself. */
  readonly agent: string;
  /** Who is signed in to the office in the same browser; empty: nobody, as it should be. */
  readonly officeUser: string;
}

const REASONS: Partial<Record<LinkStop, RefusalReason>> = {
  gone: "not-found",
  "too-many": "too-many-tries",
  "bad-code": "bad-value",
  "bad-file": "wrong-type",
  "too-large": "too-large",
  held: "held",
  "no-kind": "missing-value",
  "no-words": "missing-value",
  "bad-day": "bad-value",
  "no-intent": "missing-value",
  "no-records": "missing-value",
  "no-name": "missing-value",
  "no-capacity": "missing-value",
  "office-session": "not-allowed",
  "no-release-words": "missing-value",
  "release-asked": "already-there",
};

/** A refusal at a private link: its path names the stop, so that the page can say it in any language. */
export function stopped(stop: LinkStop): { readonly ok: false; readonly error: Refusal } {
  return refuse(REASONS[stop] ?? "not-in-this-state", stop, LINK_WORDS.en.stops[stop]);
}

/** What is stored of a link's secret, and compared. */
export function hashSecret(secret: string): string {
  return createHash("sha256").update(secret).digest("hex");
}

/**
 * The open link of a secret. Nothing is done by one in a browser that is signed in to the office. One that never was, one that ran out and one that was called back get
 * the same answer. Too many of those from one address, or too much by one link, has to wait.
 */
export function findOpenLink(
  door: LinkDoor,
  secret: string,
  use: "opening" | "doing",
): Result<PrivateLink, Refusal> {
  // Whoever works here could answer and sign for any neighbor, and it would look like the neighbor.
  if (use === "doing" && door.officeUser !== "") return stopped("office-session");
  return counted(door, (inside) => findCounted(inside, secret, use));
}

/** Tries are counted and noted in one step: whoever asks several servers at once has no more of them. */
function counted<T>(door: LinkDoor, look: (door: LinkDoor) => T): T {
  return door.db.transaction((db) => look({ ...door, db }), { behavior: "immediate" });
}

function findCounted(
  door: LinkDoor,
  secret: string,
  use: "opening" | "doing",
): Result<PrivateLink, Refusal> {
  const misses = `link-misses:${countedAddress(door.address).slice(0, 100)}`;
  if (triesOf(door, misses) >= LINK_MISSES) return stopped("too-many");
  const link = linkOf(door.db, secret);
  if (link === null || linkState(link, door.now) !== "open") {
    takeTry(door, misses);
    return stopped("gone");
  }
  const key = `link-${use}:${link.id}`;
  if (triesOf(door, key) >= (use === "opening" ? LINK_OPENINGS : LINK_DOINGS))
    return stopped("too-many");
  takeTry(door, key);
  return ok(link);
}

/** The same link once more, inside the step that writes: it may have been called back meanwhile. */
export function isStillOpen(db: Db, { id }: PrivateLink, now: Instant): boolean {
  const link = getLink(db, id);
  return link !== null && linkState(link, now) === "open";
}

function linkOf(db: Db, secret: string): PrivateLink | null {
  const hash = hashSecret(secret);
  const link = isLinkSecret(secret) ? getLinkByHash(db, hash) : null;
  if (link === null) return null;
  return timingSafeEqual(Buffer.from(link.tokenHash), Buffer.from(hash)) ? link : null;
}

function windowStart(now: Instant): Instant {
  return new Date(Date.parse(now) - TRIES_WINDOW_MINUTES * 60_000).toISOString();
}

/**
 * Takes a try of a typed code before it is looked at, since looking costs as much as a password does.
 * Whoever typed too many, or opened too many links that are not there, has to wait.
 */
export function takeCodeTry(door: LinkDoor): Result<null, Refusal> {
  const from = countedAddress(door.address).slice(0, 100);
  const tries = `code-tries:${from}`;
  return counted(door, (inside) => {
    const misses = triesOf(inside, `link-misses:${from}`);
    if (triesOf(inside, tries) >= LINK_MISSES || misses >= LINK_MISSES) return stopped("too-many");
    takeTry(inside, tries);
    return ok(null);
  });
}

function triesOf({ db, now }: LinkDoor, key: string): number {
  return countTries(db, key, { since: windowStart(now), until: now }).number;
}

function takeTry({ db, now }: LinkDoor, key: string): void {
  noteTry(db, { keys: [key], at: now, since: windowStart(now) });
}

/** Notes what was done by a link, with where it came from. */
export function noteVisit(door: LinkDoor, db: Db, link: PrivateLink, what: LinkDeed): void {
  insertVisit(db, {
    id: door.newId(),
    linkId: link.id,
    at: door.now,
    what,
    address: door.address.slice(0, 100),
    agent: door.agent.slice(0, 400),
  });
}

/** The act of a link's holder: they may answer their own letter, and the history names them. */
export function actOfLink(door: LinkDoor, link: PrivateLink, partyName: string): Act {
  const { db, now, today, dataFolder, newId } = door;
  const name = partyName === "" ? BY_PRIVATE_LINK : `${partyName}, by ${BY_PRIVATE_LINK}`;
  return {
    db,
    actor: { id: `link:${link.id}`, name, role: "link-reader" },
    now,
    today,
    dataFolder,
    newId,
  };
}
