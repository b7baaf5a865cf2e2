import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { REPLY_KINDS, type Reply, type ReplyKind } from "#lib/domain/facts/notice.ts";
import { NOT_DEALT_WITH } from "#lib/domain/party/reply.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";

/** What somebody answered, as the office takes it down. */
export interface Answered {
  readonly kind: ReplyKind;
  readonly receivedOn: Day;
  readonly words: string;
  /** A day that suits them, where they named one. */
  readonly suitsOn?: Day | null;
  readonly uploadId: string | null;
}

/** The reply as it is kept, to whatever it answers; waits until somebody deals with it. */
export function replyRow(
  act: Act,
  file: Pick<LineFile, "uploads">,
  answered: Answered & Pick<Reply, "noticeId" | "entryId">,
): Result<Reply, Refusal> {
  const { noticeId, entryId, kind, receivedOn, words, suitsOn = null, uploadId } = answered;
  if (!REPLY_KINDS.includes(kind)) return refuse("bad-value", "kind", "Choose what they answered");
  const wrongDay = pastDay(act, { day: receivedOn, path: "receivedOn" });
  if (wrongDay !== null) return wrongDay;
  if (suitsOn !== null && !isDay(suitsOn))
    return refuse("bad-value", "suitsOn", "Enter a date as 11/25/2026");
  if (uploadId !== null && !file.uploads.some(({ id }) => id === uploadId))
    return refuse("not-found", "uploadId", "the stored file");
  return ok({
    id: act.newId(),
    noticeId,
    entryId,
    kind,
    receivedOn,
    takenBy: act.actor.name,
    words: words.trim(),
    suitsOn,
    uploadId,
    ...NOT_DEALT_WITH,
  });
}
