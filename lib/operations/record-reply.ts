import { insertRow } from "#db/queries/row.ts";
import { REPLY_KINDS, type Reply, type ReplyKind } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { NOT_DEALT_WITH, sayReply } from "#lib/domain/party/reply.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";

interface ReplyWord {
  readonly lineId: string;
  readonly noticeId: string;
  readonly kind: ReplyKind;
  readonly receivedOn: Day;
  readonly words: string;
  /** A day that suits them, where they named one. */
  readonly suitsOn?: Day | null;
  readonly uploadId: string | null;
}

/** Records what somebody answered to a letter. It waits on the desk until somebody deals with it. */
export function recordReply(act: Act, input: ReplyWord): Result<{ replyId: string }, Refusal> {
  const { lineId, noticeId, kind, receivedOn, words, suitsOn = null, uploadId } = input;
  const deal = { lineId, deed: "work-the-file", action: "record-reply", evenClosed: true } as const;
  return changeLine(act, deal, (file) => {
    const notice = find(file.notices, noticeId, { path: "noticeId", what: "the letter" });
    if (!notice.ok) return notice;
    if (notice.value.state === "draft")
      return refuse("not-in-this-state", "noticeId", "The letter is a draft and was not sent yet");
    if (!REPLY_KINDS.includes(kind))
      return refuse("bad-value", "kind", "Choose what they answered");
    const wrongDay = pastDay(act, { day: receivedOn, path: "receivedOn" });
    if (wrongDay !== null) return wrongDay;
    if (suitsOn !== null && !isDay(suitsOn))
      return refuse("bad-value", "suitsOn", "Enter a date as 11/25/2026");
    if (uploadId !== null && !file.uploads.some(({ id }) => id === uploadId))
      return refuse("not-found", "uploadId", "the stored file");
    const reply: Reply = {
      id: act.newId(),
      noticeId,
      entryId: null,
      kind,
      receivedOn,
      takenBy: act.actor.name,
      words: words.trim(),
      suitsOn,
      uploadId,
      ...NOT_DEALT_WITH,
    };
    return ok({
      value: { replyId: reply.id },
      sentence: `Reply to ${nameRow(file, "notices", noticeId)}: ${sayReply(reply)}`,
      detail: { after: reply },
      write: (db) => insertRow(db, "replies", { lineId, row: reply }),
    });
  });
}
