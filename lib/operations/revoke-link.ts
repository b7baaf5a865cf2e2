import { listLinks, revokeLinks } from "#db/queries/link.ts";
import { linkState } from "#lib/domain/consent/private-link.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

/** Calls back the private link to a letter: from now on it shows nothing and takes nothing. */
export function revokeLink(
  act: Act,
  { lineId, noticeId }: { readonly lineId: string; readonly noticeId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "revoke-link", evenClosed: true } as const;
  return changeLine(act, deal, (file, db) => {
    const notice = find(file.notices, noticeId, { path: "noticeId", what: "the letter" });
    if (!notice.ok) return notice;
    const good = listLinks(db, { lineId, noticeId }).filter(
      (link) => linkState(link, act.now) === "open",
    );
    if (good.length === 0)
      return refuse("not-in-this-state", "noticeId", "No link to this letter is good any more");
    return ok({
      value: null,
      sentence: `Revoked the private link to the ${nameRow(file, "notices", noticeId)}.`,
      detail: { linkIds: good.map(({ id }) => id) },
      write: (one) => {
        revokeLinks(one, { lineId, noticeId }, { at: act.now, by: act.actor.name });
      },
    });
  });
}
