import { getOpenFeed, listDates, noteFeedRead } from "#db/queries/calendar-feed.ts";
import { getOffice } from "#db/queries/office.ts";
import { countTries, noteTry } from "#db/queries/session.ts";
import { countedAddress } from "#lib/caller-address.ts";
import { pressingPapers } from "#lib/domain/clocks/paper-clocks.ts";
import { isLinkSecret, LINK_MISSES } from "#lib/domain/consent/private-link.ts";
import { TRIES_WINDOW_MINUTES } from "#lib/domain/facts/session.ts";
import { addDays } from "#lib/domain/time/days.ts";
import { officeCalendar } from "#lib/exchange/office-calendar.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse } from "./change.ts";
import { hashSecret } from "./link-door.ts";
import { minutesFrom } from "./throttle.ts";

/** A calendar program reads a few times a day; so often within the window it is something else. */
const READINGS = 20;

/** What is overdue stays in the calendar for a month, what is ahead shows for a year. */
const BACK = 31;
const AHEAD = 366;

interface FeedDoor extends Pick<Act, "db" | "now" | "today"> {
  /** Network address that asks; empty where it is not known. */
  readonly address: string;
  /** The office's address on the net, to which events lead; null: they lead nowhere. */
  readonly office: string | null;
}

/**
 * The office's calendar at a private address, as iCalendar text. One that never was and one that was
 * revoked get the same answer; guesses are counted by where they come from.
 */
export function openFeed(door: FeedDoor, secret: string): Result<string, Refusal> {
  // In one step: whoever asks several servers at once has no more tries.
  return door.db.transaction((db) => feedOf({ ...door, db }, secret), { behavior: "immediate" });
}

function feedOf(door: FeedDoor, secret: string): Result<string, Refusal> {
  const { db, now, today } = door;
  const misses = `feed-misses:${countedAddress(door.address).slice(0, 100)}`;
  if (triesOf(door, misses) >= LINK_MISSES) return refuse("too-many-tries");
  const feed = isLinkSecret(secret) ? getOpenFeed(db, hashSecret(secret)) : null;
  if (feed === null) {
    noteTry(db, { keys: [misses], at: now, since: sinceOf(door) });
    return refuse("not-found", "", "the calendar");
  }
  const readings = `feed-readings:${feed.id}`;
  if (triesOf(door, readings) >= READINGS) return refuse("too-many-tries");
  noteTry(db, { keys: [readings], at: now, since: sinceOf(door) });
  noteFeedRead(db, feed.id, now);
  const dates = listDates(db, {
    from: addDays(today, -BACK),
    to: addDays(today, AHEAD),
    keeper: feed.onlyMine ? feed.userId : null,
  });
  const office = getOffice(db);
  const papers = office === null ? [] : pressingPapers(office, today);
  return ok(officeCalendar({ dates, papers, address: door.office }));
}

function sinceOf({ now }: FeedDoor) {
  return minutesFrom(now, -TRIES_WINDOW_MINUTES);
}

function triesOf(door: FeedDoor, key: string): number {
  return countTries(door.db, key, { since: sinceOf(door), until: door.now }).number;
}
