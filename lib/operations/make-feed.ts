import { countOpenFeeds, getFeed, insertFeed, revokeFeedRow } from "#db/queries/calendar-feed.ts";
import { getUser } from "#db/queries/user.ts";
import { isLinkSecret } from "#lib/domain/consent/private-link.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse, tell } from "./change.ts";
import { hashSecret } from "./link-door.ts";

/** More calendars than that nobody has; each is a key to the office's days. */
const MOST = 5;

/**
 * Makes a private address of the office's calendar for whoever is signed in; `secret` is 32 random
 * bytes as base64url, shown to them once and stored nowhere. Refuses more than a person has use for.
 */
export function makeFeed(
  act: Act,
  { secret, onlyMine }: { readonly secret: string; readonly onlyMine: boolean },
): Result<{ readonly feedId: string }, Refusal> {
  const { id: userId, name } = act.actor;
  if (!isLinkSecret(secret)) return refuse("bad-value", "", "Reload the page and try again");
  return act.db.transaction(
    (db) => {
      if (getUser(db, userId) === null) return refuse("not-found", "", "your account");
      if (countOpenFeeds(db, userId) >= MOST)
        return refuse("not-in-this-state", "", `You have ${MOST} calendar addresses; revoke one`);
      const feed = { id: act.newId(), userId, onlyMine, createdAt: act.now };
      insertFeed(db, { ...feed, tokenHash: hashSecret(secret) });
      const which = onlyMine ? "the lines that they handle" : "all lines";
      tell(
        { ...act, db },
        {
          lineId: null,
          action: "make-feed",
          sentence: `${name} made a private calendar address for ${which}.`,
          detail: { feedId: feed.id },
        },
      );
      return ok({ feedId: feed.id });
    },
    { behavior: "immediate" },
  );
}

/** Revokes an address: its owner may, and whoever runs the office. One that is revoked stays as it is. */
export function revokeFeed(
  act: Act,
  { feedId }: { readonly feedId: string },
): Result<null, Refusal> {
  return act.db.transaction(
    (db) => {
      const feed = getFeed(db, feedId);
      const mine = feed?.userId === act.actor.id;
      if (feed === null) return refuse("not-found", "", "the calendar address");
      if (!mine && !mayDo(act.actor.role, "run-the-office")) return refuse("not-allowed");
      if (feed.revokedAt !== null) return ok(null);
      revokeFeedRow(db, { id: feedId, at: act.now, by: act.actor.name });
      const whose = getUser(db, feed.userId)?.name ?? "a user";
      tell(
        { ...act, db },
        {
          lineId: null,
          action: "revoke-feed",
          sentence: `${act.actor.name} revoked a calendar address of ${whose}.`,
          detail: { feedId },
        },
      );
      return ok(null);
    },
    { behavior: "immediate" },
  );
}
