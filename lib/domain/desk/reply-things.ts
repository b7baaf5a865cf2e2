import type { LineFile } from "../facts/line-file.ts";
import type { Notice, Reply, ReplyKind } from "../facts/notice.ts";
import { LETTER_SAID } from "../facts/notice-words.ts";
import { waitingReplies } from "../party/reply.ts";
import { sayParty, sayProperty } from "../party/say.ts";
import type { Day } from "../time/day.ts";
import { formatDay } from "../time/format-day.ts";
import type { DueThing } from "./answer.ts";

/** What somebody does who replies so, after their name. */
const REPLY_VERBS: Record<ReplyKind, string> = {
  agrees: "agrees",
  disagrees: "objects",
  asks: "has a question",
  "offers-a-record": "has a record",
  "books-a-test": "wants to schedule a test",
  "wants-another-day": "wants another day",
  "wants-paper": "wants it on paper",
  "asks-release": "asks to be released from paying",
  "accepts-tie-in": "accepts the tie-in",
  other: "replied",
};

/** What such a reply makes a task of, with where it is done where that is one page. */
const REPLY_TASKS: Partial<Record<ReplyKind, { readonly task: string; readonly page?: string }>> = {
  "wants-another-day": { task: "set another day and tell them" },
  "wants-paper": { task: "print the letter and mail it", page: "notices/letter/" },
};

const MOST_WORDS = 90;

/**
 * Every reply that nobody has dealt with: due at once, and late from the day after the one that the
 * letter asked for, as silence would be. Also on a closed line: what still comes in wants an answer.
 */
export function replyThings(file: LineFile, today: Day): Omit<DueThing, "lineId">[] {
  return waitingReplies(file).map((reply) => {
    const notice = file.notices.find(({ id }) => id === reply.noticeId);
    const replyBy = notice?.replyBy ?? null;
    const { task, page } = REPLY_TASKS[reply.kind] ?? {};
    const todo = task === undefined ? "" : `; ${task}`;
    return {
      sentence: `${sayReplier(file, notice)} ${replyWords(reply, today)}${todo}${aboutWords(file, notice)}${quoteOf(reply)}`,
      on: reply.receivedOn,
      kind: replyBy !== null && replyBy < today ? "late" : "due",
      waitsOn: "office",
      question: "notices",
      ...(page === undefined ? {} : { where: `${page}${reply.noticeId}` }),
    };
  });
}

/** Who replied, by name. */
function sayReplier(file: LineFile, notice: Notice | undefined): string {
  return notice === undefined ? "Someone" : sayParty(file, notice.partyId);
}

function replyWords({ kind, suitsOn }: Reply, today: Day): string {
  const verb = REPLY_VERBS[kind];
  return suitsOn === null ? verb : `${verb}: ${formatDay(suitsOn, today)} works`;
}

function aboutWords(file: LineFile, notice: Notice | undefined): string {
  if (notice === undefined) return "";
  const letter = LETTER_SAID[notice.kind];
  const place = notice.propertyId === null ? "" : `, ${sayProperty(file, notice.propertyId)}`;
  return ` (${letter}${place})`;
}

function quoteOf({ words }: Reply): string {
  const line = words.replace(/\s+/g, " ").trim();
  if (line === "") return "";
  return `: “${line.length > MOST_WORDS ? `${line.slice(0, MOST_WORDS - 1).trimEnd()}…` : line}”`;
}
