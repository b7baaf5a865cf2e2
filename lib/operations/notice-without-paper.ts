import type { Db } from "#db/open.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";

/**
 * A letter that was sent and has no paper yet, as it is now: while a paper is made, the letter may be
 * given one, or changed, by somebody else. Null where there is none such any more.
 */
export function noticeWithoutPaper(
  db: Db,
  { lineId, noticeId }: { readonly lineId: string; readonly noticeId: string },
): Notice | null {
  const notices = getLineFile(db, lineId)?.notices ?? [];
  const notice = notices.find(({ id }) => id === noticeId);
  return notice?.state === "sent" && notice.uploadId === null ? notice : null;
}
