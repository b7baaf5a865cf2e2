import { insertRow } from "#db/queries/row.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { sayReply } from "#lib/domain/party/reply.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { type Answered, replyRow } from "./reply-row.ts";

interface ReplyWord extends Answered {
  readonly lineId: string;
  readonly noticeId: string;
}

/** Records what somebody answered to a letter. It waits on the desk until somebody deals with it. */
export function recordReply(
  act: Act,
  { lineId, noticeId, ...answered }: ReplyWord,
): Result<{ replyId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "record-reply", evenClosed: true } as const;
  return changeLine(act, deal, (file) => {
    const notice = find(file.notices, noticeId, { path: "noticeId", what: "the letter" });
    if (!notice.ok) return notice;
    if (notice.value.state === "draft")
      return refuse("not-in-this-state", "noticeId", "The letter is a draft and was not sent yet");
    const reply = replyRow(act, file, { ...answered, noticeId, entryId: null });
    if (!reply.ok) return reply;
    const row = reply.value;
    return ok({
      value: { replyId: row.id },
      sentence: `Reply to ${nameRow(file, "notices", noticeId)}: ${sayReply(row)}`,
      detail: { after: row },
      write: (db) => insertRow(db, "replies", { lineId, row }),
    });
  });
}
