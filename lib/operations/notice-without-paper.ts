import type { Db } from "#db/open.ts";
import { listRows } from "#db/queries/row.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";

/**
 * A letter that was sent and has no paper yet, as it is now: while a paper is made, the letter may be
 * given one, or changed, by somebody else; and as it is kept, to whomever of a merged party it went.
 * Null where there is none such any more.
 */
export function noticeWithoutPaper(
  db: Db,
  { lineId, noticeId }: { readonly lineId: string; readonly noticeId: string },
): Notice | null {
  const notice = listRows(db, "notices", lineId).find(({ id }) => id === noticeId);
  return notice?.state === "sent" && notice.uploadId === null ? notice : null;
}
