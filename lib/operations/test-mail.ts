import { getOffice } from "#db/queries/office.ts";
import { getUser } from "#db/queries/user.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import type { ImapSettings, SmtpSettings } from "#lib/env.ts";
import { countMailbox } from "#lib/mail/read-mailbox.ts";
import { sendMail } from "#lib/mail/send.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse, tell } from "./change.ts";
import { messageIdOf } from "./outgoing.ts";
import { mailboxProblem } from "./take-incoming.ts";

interface MailSettings {
  readonly smtp: SmtpSettings | null;
  readonly imap: ImapSettings | null;
  /** Empty: the office's own address. */
  readonly mailFrom: string;
}

/**
 * Tries the mail settings: sends a message to whoever asks, and opens the mailbox if one is set. Answers
 * with what each server said. Refuses where a server refuses, with its words; nothing on any line changes.
 */
export async function testMail(
  act: Act,
  { smtp, imap, mailFrom }: MailSettings,
): Promise<Result<{ said: string }, Refusal>> {
  if (!mayDo(act.actor.role, "run-the-office")) return refuse("not-allowed");
  const office = getOffice(act.db);
  const to = getUser(act.db, act.actor.id);
  if (office === null || to === null) return refuse("missing-value", "", "Set up the office first");
  if (smtp === null)
    return refuse("not-in-this-state", "", "No mail server is set, so there is nothing to test");
  const address = mailFrom === "" ? office.email : mailFrom;
  if (address === "")
    return refuse(
      "missing-value",
      "",
      "Enter the office’s email address above: mail comes from it",
    );
  const sent = await sendMail(smtp, {
    messageId: messageIdOf(act.newId(), office),
    from: { name: office.name, address },
    to: { name: to.name, address: to.email },
    subject: `Test from ${office.name}`,
    text: "This message shows that the office’s mail settings work. No one has to do anything.",
    attachments: [],
    date: new Date(act.now),
  });
  const box = await tryMailbox(imap);
  const said = [`To ${to.email}, ${SAID[sent.state]}: ${sent.words}.`, ...box.words].join(" ");
  tell(act, { lineId: null, action: "test-mail", sentence: `Tested email. ${said}`, detail: {} });
  return sent.state === "accepted" && box.works
    ? ok({ said })
    : refuse("not-in-this-state", "", said);
}

const SAID = {
  accepted: "accepted",
  refused: "refused for good",
  later: "not accepted now",
} as const;

async function tryMailbox(imap: ImapSettings | null): Promise<{ works: boolean; words: string[] }> {
  if (imap === null) return { works: true, words: [] };
  try {
    const count = await countMailbox(imap);
    const messages = count === 1 ? "1 message" : `${count} messages`;
    return { works: true, words: [`Mailbox ${imap.folder}: opened, ${messages} in it.`] };
  } catch (error) {
    return { works: false, words: [`Mailbox ${imap.folder}: ${mailboxProblem(error)}.`] };
  }
}
