import { createHash } from "node:crypto";
import { getPartyName } from "#db/queries/party.ts";
import { insertRow } from "#db/queries/row.ts";
import { BY_PRIVATE_LINK, type PrivateLink } from "#lib/domain/consent/private-link.ts";
import { LINK_REPLIES, type LinkReply } from "#lib/domain/consent/words-en.ts";
import type { Reply } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { NOT_DEALT_WITH, sayReply } from "#lib/domain/party/reply.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Refusal } from "./act.ts";
import { fileNote } from "./add-link-file.ts";
import { type Change, changeLine } from "./change.ts";
import {
  actOfLink,
  findOpenLink,
  isStillOpen,
  type LinkDoor,
  noteVisit,
  stopped,
} from "./link-door.ts";

const MOST_WORDS = 5_000;

/** What needs no further words. */
const SAYS_ENOUGH: readonly LinkReply[] = ["agrees", "wants-paper"];

interface LinkAnswer {
  readonly secret: string;
  readonly kind: LinkReply;
  readonly words: string;
  /** A day that suits, for a test or a visit; null: none was named. */
  readonly day: string | null;
  /** A file that came by the same link. */
  readonly uploadId: string | null;
  /** Which form it was typed into, as the page named it when it was made; not given: one of its own. */
  readonly form?: string;
}

/**
 * Takes down what a neighbor says by their private link, as an ordinary reply to the letter. Saying
 * that they agree is no signature. A question or an objection needs words, or a file. The same words
 * out of the same form are one reply: a browser that got no answer sends them again.
 */
export function answerLink(
  door: LinkDoor,
  answer: LinkAnswer,
): Result<{ replyId: string }, Refusal> {
  const found = findOpenLink(door, answer.secret, "doing");
  if (!found.ok) return found;
  const link = found.value;
  const wrong = wrongAnswer(answer);
  if (wrong !== null) return wrong;
  const act = actOfLink(door, link, getPartyName(door.db, link));
  const deal = {
    lineId: link.lineId,
    deed: "answer-own-letter",
    action: "answer-link",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file, db) => {
    if (!isStillOpen(db, link, door.now)) return stopped("gone");
    const id = replyIdOf(link, answer) ?? act.newId();
    if (file.replies.some((each) => each.id === id)) return ok(takenAlready(id));
    const { uploadId } = answer;
    const notice = file.notices.find(({ id }) => id === link.noticeId);
    if (notice === undefined) return stopped("gone");
    if (
      uploadId !== null &&
      !file.uploads.some((one) => one.id === uploadId && one.note === fileNote(link))
    )
      return stopped("bad-file");
    const reply: Reply = {
      id,
      noticeId: link.noticeId,
      entryId: null,
      kind: answer.kind,
      receivedOn: act.today,
      takenBy: BY_PRIVATE_LINK,
      words: answer.words.trim(),
      suitsOn: answer.day,
      uploadId,
      ...NOT_DEALT_WITH,
    };
    return ok({
      value: { replyId: reply.id },
      sentence: `Answer to ${nameRow(file, "notices", link.noticeId)} by private link: ${sayReply(reply)}`,
      detail: { after: reply },
      write: (one) => {
        insertRow(one, "replies", { lineId: link.lineId, row: reply });
        noteVisit(door, one, link, "answered");
      },
    });
  });
}

/** One and the same for whatever is sent again, so that it can be there only once. */
function replyIdOf({ id }: PrivateLink, { secret: _secret, form, ...said }: LinkAnswer) {
  if (form === undefined || form === "") return null;
  const { kind, words, day, uploadId } = said;
  const parts = JSON.stringify([id, form, kind, words.trim(), day, uploadId]);
  return `reply-${createHash("sha256").update(parts).digest("hex").slice(0, 32)}`;
}

function takenAlready(replyId: string): Change<{ replyId: string }> {
  return { value: { replyId }, sentence: null, detail: null, write: () => {} };
}

function wrongAnswer({ kind, words, day, uploadId }: LinkAnswer) {
  if (!LINK_REPLIES.includes(kind)) return stopped("no-kind");
  if (words.length > MOST_WORDS) return stopped("too-long");
  if (day !== null && !isDay(day)) return stopped("bad-day");
  const silent = words.trim() === "" && uploadId === null && day === null;
  if (silent && !SAYS_ENOUGH.includes(kind)) return stopped("no-words");
  return null;
}
