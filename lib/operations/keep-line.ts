import { keeperOf, putKeeper } from "#db/queries/summary.ts";
import { getUser } from "#db/queries/user.ts";
import { isKeeper } from "#lib/domain/facts/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { changedSince } from "./seen.ts";

/**
 * Says who of the office looks after a line, so that they find it under “Mine”; null: nobody.
 * Refuses whoever doesn't work files or cannot sign in any more.
 */
export function keepLine(
  act: Act,
  {
    lineId,
    userId,
    seen,
  }: {
    readonly lineId: string;
    readonly userId: string | null;
    /** `seenOf(keeperId)` as the form was filled in; not given: whoever it is now. */
    readonly seen?: string | undefined;
  },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "keep-line", evenClosed: true } as const;
  return changeLine(act, deal, ({ line, history }, db) => {
    const before = keeperOf(db, lineId);
    const last = history.findLast(({ action }) => action === "keep-line");
    const changed = changedSince(seen, { now: before, last });
    if (changed !== null) return changed;
    const user = userId === null ? null : getUser(db, userId);
    if (userId !== null && user === null) return refuse("not-found", "userId", "the user");
    if (user !== null && !isKeeper(user))
      return refuse("bad-value", "userId", `${user.name} does not work on files`);
    const said = user === null ? "No one handles" : `${user.name} handles`;
    return ok({
      value: null,
      sentence: before === userId ? null : `${said} ${line.name} now.`,
      detail: { before, after: userId },
      write: (one) => putKeeper(one, lineId, userId),
    });
  });
}
