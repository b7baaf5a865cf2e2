import { updateRow } from "#db/queries/row.ts";
import { DEALT_HOWS, type DealtHow, type Reply } from "#lib/domain/facts/notice.ts";
import { DEALT_WORDS } from "#lib/domain/facts/notice-words.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { isDealtWith } from "#lib/domain/party/reply.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";
import { changedSince } from "./seen.ts";

interface Dealing {
  readonly lineId: string;
  readonly replyId: string;
  readonly how: DealtHow;
  readonly on: Day;
  /** What was said or done. */
  readonly words: string;
  /** `seenOf(reply)` as the form was filled in; not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

/**
 * Records that a reply was dealt with, in the name of who acts: how, when, and what came of it. What
 * was said to a reply that is dealt with already is corrected. Refuses a day before the reply, and
 * no words. A reply that comes in on a closed file is dealt with there.
 */
export function dealWithReply(act: Act, dealing: Dealing): Result<null, Refusal> {
  const { lineId, replyId, how, on, seen } = dealing;
  const words = dealing.words.trim();
  const deal = {
    lineId,
    deed: "work-the-file",
    action: "deal-with-reply",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file) => {
    const reply = find(file.replies, replyId, { path: "replyId", what: "the reply" });
    if (!reply.ok) return reply;
    const changed = changedSince(seen, { now: reply.value, last: { by: reply.value.dealtBy } });
    if (changed !== null) return changed;
    if (!DEALT_HOWS.includes(how))
      return refuse("bad-value", "how", "Choose how it was dealt with");
    if (words === "") return refuse("missing-value", "words", "Enter what was said or done");
    if (on < reply.value.receivedOn)
      return refuse(
        "bad-value",
        "on",
        `The reply only came on ${formatDate(reply.value.receivedOn)}`,
      );
    const wrongDay = pastDay(act, { day: on, path: "on" });
    if (wrongDay !== null) return wrongDay;
    const after: Reply = {
      ...reply.value,
      dealtBy: act.actor.name,
      dealtOn: on,
      dealtHow: how,
      dealtWords: words,
    };
    return ok({
      value: null,
      sentence: `Dealt with the ${nameRow(file, "replies", replyId)} (${DEALT_WORDS[how]}): ${words}`,
      detail: { before: reply.value, after },
      write: (db) => void updateRow(db, "replies", { lineId, row: after }),
    });
  });
}

/** Puts a reply back among those that wait, because it was not dealt with after all. */
export function reopenReply(
  act: Act,
  { lineId, replyId, reason }: { lineId: string; replyId: string; reason: string },
): Result<null, Refusal> {
  const deal = {
    lineId,
    deed: "work-the-file",
    action: "reopen-reply",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file) => {
    const reply = find(file.replies, replyId, { path: "replyId", what: "the reply" });
    if (!reply.ok) return reply;
    if (!isDealtWith(reply.value))
      return refuse(
        "not-in-this-state",
        "replyId",
        "The reply is still open; no one has dealt with it",
      );
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why it is open again");
    const after: Reply = {
      ...reply.value,
      dealtBy: "",
      dealtOn: null,
      dealtHow: null,
      dealtWords: "",
    };
    return ok({
      value: null,
      sentence: `Opened the ${nameRow(file, "replies", replyId)} again: ${reason.trim()}`,
      detail: { before: reply.value, after },
      write: (db) => void updateRow(db, "replies", { lineId, row: after }),
    });
  });
}
