import type { Instant } from "../time/day.ts";

/** A message that came into the office's mailbox, as far as anything is asked of it. */
export interface IncomingMail {
  /** Its own Message-ID; empty where it has none. */
  readonly messageId: string;
  readonly from: { readonly name: string; readonly address: string };
  /** When it says it was written; null where it does not. */
  readonly writtenAt: Instant | null;
  readonly subject: string;
  /** Message-IDs that it says it answers, the nearest last. */
  readonly answers: readonly string[];
  /** Written by a program (RFC 3834): an absence notice answers nothing. */
  readonly automatic: boolean;
  readonly text: string;
  /** How many files came with it; they stay in the mailbox. */
  readonly files: number;
  /** What a mail server says became of a message, where it is such a report (RFC 3464). */
  readonly report: DeliveryReport | null;
}

export interface DeliveryReport {
  /** The message that it is about; empty where the report does not say. */
  readonly messageId: string;
  readonly failed: boolean;
  /** The server's own words. */
  readonly words: string;
}

/** What a message is to the office. */
export type Incoming =
  /** A message of ours could not be delivered. */
  | { readonly what: "bounce"; readonly messageId: string; readonly words: string }
  /** Somebody answers a message of ours. */
  | { readonly what: "answer"; readonly messageId: string; readonly words: string }
  /** No concern of this program: it is left where it is. */
  | { readonly what: "left" };

const MOST_WORDS = 4_000;

/**
 * What a message is: a report that one of ours failed for good, an answer to one of ours, or nothing of
 * ours. `isOurs` tells a Message-ID that went out from here. A report that a server still tries, a note
 * of absence and whatever names none of our messages are left alone.
 */
export function judgeMail(mail: IncomingMail, isOurs: (messageId: string) => boolean): Incoming {
  const { report, answers, automatic } = mail;
  if (report !== null) {
    const messageId = [report.messageId, ...answers].find(isOurs);
    if (messageId === undefined || !report.failed) return { what: "left" };
    return { what: "bounce", messageId, words: report.words };
  }
  const messageId = answers.findLast(isOurs);
  if (messageId === undefined || automatic) return { what: "left" };
  return { what: "answer", messageId, words: answerWords(mail) };
}

function answerWords({ from, text, files }: IncomingMail): string {
  const said = withoutQuote(text).slice(0, MOST_WORDS);
  const more =
    files === 0 ? "" : ` (${files === 1 ? "1 file" : `${files} files`} with it: see your mailbox)`;
  return `Email from ${from.address || from.name}: ${said || "no text"}${more}`;
}

/** Where a mail program begins to repeat what is answered. */
const QUOTE =
  /^(?:>|On .{4,200} wrote:\s*$|El .{4,200} escribió:\s*$|-{2,}\s*(?:Original Message|Mensaje original))/;

/** What its writer wrote, without the message that is answered; all of it where nothing else is left. */
function withoutQuote(text: string): string {
  const lines = text.replaceAll("\r\n", "\n").split("\n");
  const quote = lines.findIndex((line) => QUOTE.test(line.trim()));
  const own = (quote === -1 ? lines : lines.slice(0, quote)).join("\n").trim();
  return own === "" ? text.trim() : own;
}
