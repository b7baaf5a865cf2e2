import type { LineFile } from "../facts/line-file.ts";
import type { Notice, Reply, ReplyKind } from "../facts/notice.ts";
import { isDealtWith } from "../party/reply.ts";
import { wordsOn } from "./arrival.ts";
import { consentsAskedBy } from "./asked.ts";

/** How far the answer to a letter has got. */
export type AnswerState =
  | "none"
  /** Something came, and nobody has dealt with it: the office's turn. */
  | "waits"
  /** It was dealt with, but nothing is on file on what the letter asks for: their turn again. */
  | "open-again"
  | "in";

/** What has come back to a letter. */
export interface Answer {
  readonly state: AnswerState;
  /** The newest reply that waits, else the newest; null where none came. */
  readonly reply: Reply | null;
}

/** Replies that say yes, so that the letter waits for nothing more than a signature. */
const YES: readonly ReplyKind[] = ["agrees", "accepts-tie-in"];

/**
 * How far the answer to a letter has got. A reply waits until a named person has dealt with it,
 * whatever it says. Where the letter asks for a consent, an objection or a question that was dealt
 * with leaves that open: it ends with their word on the consent itself.
 */
export function answerOf(file: Pick<LineFile, "replies" | "consents">, notice: Notice): Answer {
  const replies = file.replies.filter(({ noticeId }) => noticeId === notice.id);
  const newest = replies.toSorted((one, other) => one.receivedOn.localeCompare(other.receivedOn));
  const waiting = newest.findLast((reply) => !isDealtWith(reply));
  if (waiting !== undefined) return { state: "waits", reply: waiting };
  const reply = newest.at(-1) ?? null;
  if (wordsOn(file, notice).length > 0) return { state: "in", reply };
  if (reply === null) return { state: "none", reply };
  const isDone = consentsAskedBy(notice).length === 0 || YES.includes(reply.kind);
  return { state: isDone ? "in" : "open-again", reply };
}
