import type { LineFile } from "../facts/line-file.ts";
import type { Reply, ReplyKind } from "../facts/notice.ts";
import { REPLY_VERBS } from "../facts/notice-words.ts";
import { waitingReplies } from "../party/reply.ts";
import { sayProperty } from "../party/say.ts";
import type { Day } from "../time/day.ts";
import { formatDay } from "../time/format-day.ts";
import type { DueThing } from "./answer.ts";
import { beginWithReplier, type RepliedTo, repliedTo } from "./replied-to.ts";

/** What somebody does who replies so, after their name. */
const VERBS: Record<ReplyKind, string> = { ...REPLY_VERBS, disagrees: "objects" };

/** What a reply makes a task of, with where it is done where that is one page. */
function taskOf({ kind, noticeId }: Reply): { readonly task?: string; readonly where?: string } {
  if (kind === "wants-another-day") return { task: "set another day and tell them" };
  if (kind !== "wants-paper") return {};
  return noticeId === null
    ? { task: "print the invoice and mail it", where: "cost/money" }
    : { task: "print the letter and mail it", where: `notices/letter/${noticeId}` };
}

const MOST_WORDS = 90;

/**
 * Every reply that nobody has dealt with: due at once, and late from the day after the one that the
 * letter asked for, as silence would be. Also on a closed line: what still comes in wants an answer.
 */
export function replyThings(file: LineFile, today: Day): Omit<DueThing, "lineId">[] {
  return waitingReplies(file).map((reply) => {
    const to = repliedTo(file, reply);
    const replyBy = to?.notice?.replyBy ?? null;
    const { task, where } = taskOf(reply);
    const todo = task === undefined ? "" : `; ${task}`;
    const who = to === null ? "Someone" : beginWithReplier(file, to);
    return {
      sentence: `${who} ${replyWords(reply, today)}${todo}${aboutWords(file, to)}${quoteOf(reply)}`,
      on: reply.receivedOn,
      kind: replyBy !== null && replyBy < today ? "late" : "due",
      waitsOn: "office",
      question: "notices",
      ...(where === undefined ? {} : { where }),
    };
  });
}

function replyWords({ kind, suitsOn }: Reply, today: Day): string {
  const verb = VERBS[kind];
  return suitsOn === null ? verb : `${verb}: ${formatDay(suitsOn, today)} works`;
}

function aboutWords(file: LineFile, to: RepliedTo | null): string {
  if (to === null) return "";
  const place = to.propertyId === null ? "" : `, ${sayProperty(file, to.propertyId)}`;
  return ` (${to.what}${place})`;
}

function quoteOf({ words }: Reply): string {
  const line = words.replace(/\s+/g, " ").trim();
  if (line === "") return "";
  return `: “${line.length > MOST_WORDS ? `${line.slice(0, MOST_WORDS - 1).trimEnd()}…` : line}”`;
}
