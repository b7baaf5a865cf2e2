import { createHash } from "node:crypto";
import type { Db } from "#db/open.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getMailbox, noteIncoming, putMailbox } from "#db/queries/mailbox.ts";
import { getOffice } from "#db/queries/office.ts";
import { getOutgoingByMessageId } from "#db/queries/outgoing.ts";
import { updateRow } from "#db/queries/row.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { type IncomingMail, judgeMail } from "#lib/domain/notices/incoming.ts";
import type { Outgoing } from "#lib/domain/notices/outgoing.ts";
import { dayOf } from "#lib/domain/time/moment.ts";
import { parseMail } from "#lib/mail/parse-mail.ts";
import { type FetchedMail, type MailboxPlace, readMailbox } from "#lib/mail/read-mailbox.ts";
import type { Act } from "./act.ts";
import { tell } from "./change.ts";
import { recordInvoiceReply } from "./record-invoice-reply.ts";
import { recordReply } from "./record-reply.ts";
import { actFor, minutesAfter, type Workplace } from "./workplace.ts";

/** How often the mailbox is looked into. */
const EVERY_MINUTES = 1;

/**
 * Reads what came into the office's mailbox since it was last read: a returned message marks its
 * delivery as failed, an answer becomes a reply that waits to be dealt with, all else is left alone.
 * Each message is taken once, together with its place in the mailbox. Says whether it looked; a mailbox
 * that can't be read is tried again, and why stands under Office.
 */
export async function readIncoming(place: Workplace): Promise<boolean> {
  const { db, imap } = place;
  const state = getMailbox(db);
  if (imap === null || !isDue(state.lookedAt, place)) return false;
  const from = state.validity === null ? null : { validity: state.validity, uid: state.uid };
  try {
    await readMailbox(imap, { from, now: new Date(place.now()) }, (mail, at) =>
      takeIncoming(place, mail, at),
    );
    putMailbox(db, { lookedAt: place.now(), problem: "" });
  } catch (error) {
    putMailbox(db, { lookedAt: place.now(), problem: mailboxProblem(error) });
  }
  return false;
}

/** Also due where the clock was set back. */
function isDue(lookedAt: string | null, { now }: Workplace): boolean {
  if (lookedAt === null) return true;
  const at = now();
  return at >= minutesAfter(lookedAt, EVERY_MINUTES) || at < lookedAt;
}

/** What a mail server said, as one line. */
export function mailboxProblem(error: unknown): string {
  const { responseText, message } = error as { responseText?: string; message?: string };
  return (responseText ?? message ?? "no answer").replaceAll(/\s+/g, " ").trim().slice(0, 300);
}

/** Takes one message of the mailbox: what it means is written together with how far the mailbox is read. */
async function takeIncoming(
  place: Workplace,
  { source }: FetchedMail,
  { validity, uid }: MailboxPlace,
): Promise<void> {
  const mail = source === null ? null : await parseMail(source).catch(() => null);
  place.db.transaction(
    (db) => {
      if (mail !== null && source !== null) judge(place, db, { mail, source });
      putMailbox(db, { validity, uid });
    },
    { behavior: "immediate" },
  );
}

function judge(
  place: Workplace,
  db: Db,
  { mail, source }: { readonly mail: IncomingMail; readonly source: Uint8Array },
): void {
  const judged = judgeMail(mail, (id) => getOutgoingByMessageId(db, id) !== null);
  const key = createHash("sha256")
    .update(mail.messageId || source)
    .digest("hex");
  const isNew = noteIncoming(db, { key, at: place.now(), what: judged.what });
  if (judged.what === "left" || !isNew) return;
  const message = getOutgoingByMessageId(db, judged.messageId);
  if (message === null) return;
  const act = actFor(place, db, "Mailbox");
  if (judged.what === "bounce") noteBounce(act, message, judged.words);
  else takeAnswer(act, { message, mail, words: judged.words });
}

/** A message that a server gave back: its delivery failed, unless a person said what became of it. */
function noteBounce(act: Act, message: Outgoing, words: string): void {
  const { lineId, noticeId, deliveryId, subject, toName, toAddress } = message;
  const said = `Returned by the mail server of ${toAddress}${words === "" ? "" : `: ${words}`}`;
  const file = getLineFile(act.db, lineId);
  const delivery = file?.deliveries.find(({ id }) => id === deliveryId);
  if (!file || !delivery || noticeId === null) {
    const sentence = `Email “${subject}” to ${toName} came back. ${said}`;
    tell(act, {
      lineId,
      action: "take-incoming",
      sentence,
      detail: { messageId: message.messageId },
    });
    return;
  }
  const open = delivery.outcome === "on-its-way";
  const row = {
    ...delivery,
    note: [delivery.note, said].filter((part) => part !== "").join("\n"),
    ...(open ? { outcome: "failed" as const, outcomeOn: act.today } : {}),
  };
  updateRow(act.db, "deliveries", { lineId, row });
  tell(act, {
    lineId,
    action: "take-incoming",
    sentence: `Email of the ${nameRow(file, "notices", noticeId)} came back. ${said}`,
    detail: { before: delivery, after: row },
  });
}

interface Answered {
  readonly message: Outgoing;
  readonly mail: IncomingMail;
  readonly words: string;
}

/** What somebody answered by email waits like any other reply. */
function takeAnswer(act: Act, { message, mail, words }: Answered): void {
  const { lineId, noticeId, entryId, subject, messageId } = message;
  const zone = getOffice(act.db)?.zone ?? "UTC";
  const written = mail.writtenAt === null ? act.today : dayOf(mail.writtenAt, zone);
  const sent = dayOf(message.createdAt, zone);
  const receivedOn = written > act.today || written < sent ? act.today : written;
  const office: Act = { ...act, actor: { ...act.actor, role: "office" } };
  const came = { lineId, receivedOn, words, kind: "other", uploadId: null } as const;
  if (noticeId !== null) {
    if (recordReply(office, { ...came, noticeId }).ok) return;
  } else if (entryId !== null && recordInvoiceReply(office, { ...came, entryId }).ok) return;
  const sentence = `Answer to the email “${subject}”. ${words}`;
  tell(act, { lineId, action: "take-incoming", sentence, detail: { messageId } });
}
