import type { LineFile } from "../facts/line-file.ts";
import type { Reply } from "../facts/notice.ts";
import { REPLY_WORDS } from "../facts/notice-words.ts";
import { formatDate } from "../time/format-day.ts";

/** Whether a named person dealt with a reply: who, when and how are on file. */
export function isDealtWith({ dealtBy, dealtOn, dealtHow }: Reply): boolean {
  return dealtHow !== null && dealtOn !== null && dealtBy.trim() !== "";
}

/** Every reply that nobody has dealt with yet: objections first, then the oldest. */
export function waitingReplies({ replies }: Pick<LineFile, "replies">): Reply[] {
  return replies
    .filter((reply) => !isDealtWith(reply))
    .toSorted(
      (one, other) =>
        Number(other.kind === "disagrees") - Number(one.kind === "disagrees") ||
        one.receivedOn.localeCompare(other.receivedOn),
    );
}

/** As a reply stands when it comes in, whichever way it came. */
export const NOT_DEALT_WITH: Pick<Reply, "dealtBy" | "dealtOn" | "dealtHow" | "dealtWords"> = {
  dealtBy: "",
  dealtOn: null,
  dealtHow: null,
  dealtWords: "",
};

/** `wants another day, December 4, 2026 suits: I work nights`, for the history. */
export function sayReply({ kind, suitsOn, words }: Reply): string {
  const suits = suitsOn === null ? "" : `, ${formatDate(suitsOn)} works`;
  return `${REPLY_WORDS[kind]}${suits}${words === "" ? "." : `: ${words}`}`;
}
