import { eq, isNull, or } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { replies } from "#db/schema.ts";

/** Lines on which a reply waits that nobody has dealt with, closed ones too. */
export function linesWithReplies(db: Db): string[] {
  return db
    .selectDistinct({ lineId: replies.lineId })
    .from(replies)
    .where(or(isNull(replies.dealtHow), isNull(replies.dealtOn), eq(replies.dealtBy, "")))
    .all()
    .map(({ lineId }) => lineId);
}
