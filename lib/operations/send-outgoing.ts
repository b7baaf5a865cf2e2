import { getLineFile } from "#db/queries/line-file.ts";
import { getMailRules } from "#db/queries/mailbox.ts";
import { getOffice } from "#db/queries/office.ts";
import {
  countSentSince,
  keepOutgoingPaper,
  listUnsentIds,
  outgoingQueue,
} from "#db/queries/outgoing.ts";
import { updateRow } from "#db/queries/row.ts";
import { renderAccounts } from "#lib/documents/account-document.tsx";
import { DocumentRefused } from "#lib/documents/printable.ts";
import { renderCertificates } from "#lib/documents/render-certificates.tsx";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { MAYBE_TWICE, type Outgoing } from "#lib/domain/notices/outgoing.ts";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import { certificateOf } from "#lib/domain/paper/certificate.ts";
import { LETTER_PLANS } from "#lib/domain/paper/kinds/index.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { MailMessage } from "#lib/mail/message.ts";
import { type SendOutcome, sendMail } from "#lib/mail/send.ts";
import { writeUnsent } from "#lib/mail/write-unsent.ts";
import { forgetLinkSecret, readLinkSecret, sweepLinkSecrets } from "#lib/storage/link-secret.ts";
import { readStored } from "#lib/storage/store.ts";
import type { Act } from "./act.ts";
import { tell } from "./change.ts";
import { enclosedPapers } from "./enclosed-papers.ts";
import { keepPdf } from "./keep-pdf.ts";
import { sentLetter } from "./letter-of.ts";
import { noticeWithoutPaper } from "./notice-without-paper.ts";
import { SECRET_GAP } from "./outgoing.ts";
import { pictureBytes } from "./picture-bytes.ts";
import { actFor, minutesAfter, type Workplace, workOnNext } from "./workplace.ts";

/** About a day and a half of trying, at growing distances. */
const MOST_TRIES = 10;
const LONGEST_WAIT_MINUTES = 6 * 60;

/**
 * Takes the next message of the outbox and sends it; says whether there was one. The message is
 * claimed before and closed after: should this process die in between, it goes again with the same
 * Message-ID. What the server refuses for good is marked as failed on its delivery; what it puts off
 * is tried again later.
 */
export async function sendNextOutgoing(place: Workplace): Promise<boolean> {
  if (isFull(place)) return false;
  return await workOnNext(place, outgoingQueue, {
    longestWait: LONGEST_WAIT_MINUTES,
    work: async (message) => {
      close(place, message, await tryToSend(place, message));
      forgetSecrets(place, message);
    },
  });
}

/** Whether the office's limit of messages an hour is reached; a folder has none. */
function isFull({ db, smtp, now }: Workplace): boolean {
  const { perHour } = getMailRules(db);
  if (perHour === null || smtp === null) return false;
  return countSentSince(db, minutesAfter(now(), -60)) >= perHour;
}

async function tryToSend(place: Workplace, message: Outgoing): Promise<SendOutcome> {
  try {
    const text = filledText(place, message);
    if (text === null) return { state: "refused", words: NO_SECRET };
    const mail = await mailOf(place, { ...message, text });
    if (place.smtp !== null) return await sendMail(place.smtp, mail);
    const written = await writeUnsent(place.dataFolder, mail);
    const name = written.slice(place.dataFolder.length + 1);
    return {
      state: "accepted",
      words: `No mail server is set, so nothing was sent: written to ${name}`,
    };
  } catch (error) {
    // What cannot be printed now cannot be printed in an hour.
    if (error instanceof DocumentRefused) return { state: "refused", words: error.message };
    return { state: "later", words: error instanceof Error ? error.message : String(error) };
  }
}

const DAY_MS = 86_400_000;

/** The secret of what was sent or failed, and those of messages that never came about. */
function forgetSecrets({ db, dataFolder, now }: Workplace, { id }: Outgoing): void {
  const unsent = listUnsentIds(db);
  if (!unsent.includes(id)) forgetLinkSecret(dataFolder, id);
  sweepLinkSecrets(dataFolder, { but: unsent, before: new Date(Date.parse(now()) - DAY_MS) });
}

const NO_SECRET =
  "The private link of this message is not here any more: a backup holds none. Send the letter once more, with a new link";

/** The text with the secret of its private link; null where that is gone. */
function filledText({ dataFolder }: Workplace, { id, text }: Outgoing): string | null {
  if (!text.includes(SECRET_GAP)) return text;
  const secret = readLinkSecret(dataFolder, id);
  return secret === null ? null : text.replaceAll(SECRET_GAP, () => secret);
}

async function mailOf(place: Workplace, message: Outgoing): Promise<MailMessage> {
  const file = getLineFile(place.db, message.lineId);
  const office = getOffice(place.db);
  if (!file || !office) throw new Error("The line is no longer in the office's files");
  const address = place.mailFrom === "" ? office.email : place.mailFrom;
  if (address === "")
    throw new Error(
      "There is no address to send from: enter the office's, or set WYEBOOK_MAIL_FROM",
    );
  return {
    messageId: message.messageId,
    from: { name: office.name, address },
    to: { name: message.toName, address: message.toAddress },
    subject: message.subject,
    text: message.text,
    attachments: await attachmentsOf(place, { file, office, message }),
    date: new Date(message.createdAt),
  };
}

interface Carried {
  readonly file: LineFile;
  readonly office: Office;
  readonly message: Outgoing;
}

/** A letter as its PDF; else the stored file, with the certificates of what was signed on it. */
async function attachmentsOf(
  place: Workplace,
  { file, office, message }: Carried,
): Promise<MailMessage["attachments"]> {
  if (message.entryId !== null) return [await invoiceOf(place, { file, office, message })];
  if (message.noticeId === null) return copyOf(place, { file, office, message });
  const notice = file.notices.find(({ id }) => id === message.noticeId);
  if (!notice) throw new Error("The letter is no longer in the file");
  const bytes = await paperOf(place, { file, notice, office });
  return [{ name: `${fileName(notice, office)}.pdf`, bytes }];
}

/** The PDF of an invoice: the one that is kept from an earlier try, or made and kept now. */
async function invoiceOf(
  place: Workplace,
  { file, office, message }: Carried,
): Promise<MailMessage["attachments"][number]> {
  const kept = file.uploads.find(({ id }) => id === message.uploadId);
  const there = kept ? readStored(place.dataFolder, kept.sha256) : null;
  if (kept && there !== null) return { name: kept.name, bytes: there };
  const today = place.today();
  const [paper] = accountPapers({ file, office, today }, [message.entryId ?? ""]);
  if (paper === undefined) throw new Error("The invoice is no longer in the file");
  const { bytes } = await renderAccounts([paper]);
  const act = actFor(place, place.db, "Outbox");
  const name = `${fileWords(`${office.name} ${paper.subject}`)}.pdf`;
  const made = await keepPdf(act, { lineId: file.line.id, name, bytes, note: "As sent" });
  place.db.transaction(
    (db) => {
      made.enter({ ...act, db });
      keepOutgoingPaper(db, { id: message.id, uploadId: made.upload.id });
    },
    { behavior: "immediate" },
  );
  return { name, bytes };
}

async function copyOf(
  place: Workplace,
  { file, office, message }: Carried,
): Promise<MailMessage["attachments"]> {
  const upload = file.uploads.find(({ id }) => id === message.uploadId);
  const bytes = upload ? readStored(place.dataFolder, upload.sha256) : null;
  if (!upload || bytes === null) throw new Error("The stored file is no longer there");
  const signed = file.signatures.filter((each) => each.copyMessageId === message.messageId);
  const certificates = signed.flatMap((each) => certificateOf(file, each) ?? []);
  const stored = { name: upload.name, bytes };
  if (certificates.length === 0) return [stored];
  const from = { name: office.name, day: place.today() };
  try {
    const printed = await renderCertificates(certificates, from);
    return [stored, { name: `${fileWords(certificates[0]?.title ?? "")}.pdf`, bytes: printed }];
  } catch (error) {
    // A name in signs that no typeface here has: the certificate stands in the message's own text.
    if (error instanceof DocumentRefused) return [stored];
    throw error;
  }
}

/** What the letter is called, in its reader’s language. */
function fileName({ language, kind }: Notice, office: Office): string {
  return fileWords(`${office.name} ${LETTER_PLANS[kind].title[language]}`);
}

function fileWords(words: string): string {
  return words.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "");
}

/** The PDF of the frozen letter: the one that is stored with it, or made and stored now. */
async function paperOf(
  place: Workplace,
  { file, notice, office }: { file: LineFile; notice: Notice; office: Office },
): Promise<Uint8Array> {
  const stored = file.uploads.find(({ id }) => id === notice.uploadId);
  const there = stored ? readStored(place.dataFolder, stored.sha256) : null;
  if (there !== null) return there;
  if (notice.frozen === null) throw new Error("The letter was not sent yet");
  if (notice.uploadId !== null)
    throw new Error("The PDF of this letter is no longer stored; restore it from a backup");
  const letter = sentLetter(notice.frozen);
  const pictures = pictureBytes(place.dataFolder, file, [letter]);
  const facts = { file, report: reportOn(file, place.today()), office };
  const enclosed = enclosedPapers([{ notice, letter }], facts);
  const bytes = await renderLetters([letter], pictures, enclosed);
  const act = actFor(place, place.db, "Outbox");
  const name = `${notice.kind} ${act.today}.pdf`;
  const kept = await keepPdf(act, { lineId: file.line.id, name, bytes, note: "As sent" });
  const lineId = file.line.id;
  const isNew = place.db.transaction(
    (db) => {
      const now = noticeWithoutPaper(db, { lineId, noticeId: notice.id });
      if (now === null) return false;
      kept.enter({ ...act, db });
      updateRow(db, "notices", { lineId, row: { ...now, uploadId: kept.upload.id } });
      return true;
    },
    { behavior: "immediate" },
  );
  // Its paper was made meanwhile by somebody who asked for it: that one goes out, at the next try.
  if (!isNew) throw new Error("The letter's paper was made at the same moment");
  return bytes;
}

function close(place: Workplace, message: Outgoing, outcome: SendOutcome): void {
  const now = place.now();
  const gaveUp = outcome.state === "later" && message.attempts >= MOST_TRIES;
  const failed = outcome.state === "refused" || gaveUp;
  const unsure = outcome.state === "later" && outcome.unsure === true;
  const twice = unsure || message.problem.includes(MAYBE_TWICE) ? `; ${MAYBE_TWICE}` : "";
  const said = `${outcome.words}${twice}`;
  const words = gaveUp ? `Given up after ${MOST_TRIES} tries: ${said}` : said;
  place.db.transaction(
    (db) => {
      const mine = { id: message.id, worker: place.worker };
      const act = actFor(place, db, "Outbox");
      if (outcome.state === "accepted") {
        if (outgoingQueue.end(db, mine, { state: "sent", problem: words, sentAt: now }))
          noteOnDelivery(act, message, { failed: false, words });
      } else if (failed) {
        if (outgoingQueue.end(db, mine, { state: "failed", problem: words }))
          noteOnDelivery(act, message, { failed: true, words });
      } else {
        const wait = Math.min(2 ** message.attempts, LONGEST_WAIT_MINUTES);
        outgoingQueue.end(db, mine, {
          state: "waiting",
          problem: words,
          nextTryAt: minutesAfter(now, wait),
        });
      }
    },
    { behavior: "immediate" },
  );
}

/** What the server said, on the delivery; a person's own word on its outcome stays. */
function noteOnDelivery(
  act: Act,
  message: Outgoing,
  { failed, words }: { failed: boolean; words: string },
): void {
  const { lineId, deliveryId, noticeId, messageId } = message;
  const file = getLineFile(act.db, lineId);
  const went = failed ? "failed" : "sent";
  if (noticeId === null) {
    const sentence = `Email “${message.subject}” to ${message.toName} ${went}: ${words}`;
    tell(act, { lineId, action: "send-outgoing", sentence, detail: { messageId } });
    return;
  }
  const delivery = file?.deliveries.find(({ id }) => id === deliveryId);
  if (!file || !delivery) return;
  const open = delivery.outcome === "on-its-way";
  const row = {
    ...delivery,
    tracking: delivery.tracking === "" ? messageId : delivery.tracking,
    note: [delivery.note, words].filter((part) => part !== "").join("\n"),
    ...(failed && open ? { outcome: "failed" as const, outcomeOn: act.today } : {}),
  };
  updateRow(act.db, "deliveries", { lineId, row });
  tell(act, {
    lineId,
    action: "send-outgoing",
    sentence: `Email of the ${nameRow(file, "notices", noticeId)} ${went}: ${words}`,
    detail: { before: delivery, after: row },
  });
}
