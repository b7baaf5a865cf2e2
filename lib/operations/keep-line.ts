import { keeperOf, putKeeper } from "#db/queries/summary.ts";
import { getUser } from "#db/queries/user.ts";
import { isKeeper } from "#lib/domain/facts/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

/**
 * Says who of the office looks after a line, so that they find it under “Mine”; null: nobody.
 * Refuses whoever doesn't work files or cannot sign in any more.
 */
export function keepLine(
  act: Act,
  { lineId, userId }: { readonly lineId: string; readonly userId: string | null },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "keep-line", evenClosed: true } as const;
  return changeLine(act, deal, ({ line }, db) => {
    const before = keeperOf(db, lineId);
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
