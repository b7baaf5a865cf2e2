import { getOffice } from "#db/queries/office.ts";
import { insertOutgoing, listOutgoing } from "#db/queries/outgoing.ts";
import type { LedgerEntry } from "#lib/domain/facts/ledger-entry.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Party } from "#lib/domain/facts/party.ts";
import { billedParties } from "#lib/domain/ledger/billed-to.ts";
import type { Outgoing } from "#lib/domain/notices/outgoing.ts";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import { invoiceText } from "#lib/domain/paper/text.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import { ASKS_FOR_MONEY } from "#lib/domain/stops/stopped-by.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { refuseHeld } from "./held.ts";
import { waitingMessage, wrongAddress } from "./outgoing.ts";

interface MailingInvoices {
  readonly lineId: string;
  readonly invoiceIds: readonly string[];
  /** Whether what was already emailed is to go once more. */
  readonly again: boolean;
}

/**
 * Puts invoices into the outbox as they are, without a cover letter: each to everyone to whom it is
 * addressed and who has an email address, in their languages. Refuses while a hold keeps anyone from
 * being asked for money, where no one it is addressed to has an address, and what was emailed before
 * unless it is to go again.
 */
export function mailInvoices(
  act: Act,
  { lineId, invoiceIds, again }: MailingInvoices,
): Result<{ messageIds: string[] }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "mail-invoices" } as const;
  return changeLine(act, deal, (file, db) => {
    const office = getOffice(db);
    if (office === null) return refuse("missing-value", "", "Set up the office first");
    const held = refuseHeld(reportOn(file, act.today), ASKS_FOR_MONEY, "");
    if (held !== null) return held;
    const wanted = new Set(invoiceIds);
    const invoices = file.ledger.filter(({ id, kind }) => kind === "invoice" && wanted.has(id));
    if (invoices.length === 0)
      return refuse("missing-value", "invoice", "Check at least one invoice");
    const before = again ? [] : listOutgoing(db, lineId).filter(isOnItsWayOrThere);
    const wrong = invoices.flatMap((invoice) => wrongInvoice(file, invoice, before) ?? []);
    if (wrong[0] !== undefined) return wrong[0];
    const messages = invoices.flatMap((invoice) =>
      reachedBy(file, invoice).map((party) => messageOf(act, { file, office, invoice, party })),
    );
    return ok({
      value: { messageIds: messages.map(({ messageId }) => messageId) },
      sentence: emailedWords(invoices, messages),
      detail: messages.map(({ entryId, toAddress, messageId }) => ({
        entryId,
        toAddress,
        messageId,
      })),
      write: (one) => {
        for (const message of messages) insertOutgoing(one, message);
      },
    });
  });
}

function emailedWords(invoices: readonly LedgerEntry[], messages: readonly Outgoing[]): string {
  const numbers = sayList(invoices.map(({ number }) => String(number)));
  const names = sayList([...new Set(messages.map(({ toName }) => toName))]);
  return `Emailed ${invoices.length === 1 ? "invoice" : "invoices"} No. ${numbers} to ${names}.`;
}

/** Those it is addressed to who have an email address. */
function reachedBy(file: LineFile, invoice: LedgerEntry): Party[] {
  return billedParties(file, invoice).filter((party) => wrongAddress(party) === null);
}

function wrongInvoice(file: LineFile, invoice: LedgerEntry, before: readonly Outgoing[]) {
  const number = `Invoice No. ${invoice.number}`;
  const went = before.find(({ entryId }) => entryId === invoice.id);
  if (went !== undefined)
    return refuse(
      "not-in-this-state",
      "again",
      `${number} was already emailed to ${went.toName}. Check “Send again” to email it once more`,
    );
  if (reachedBy(file, invoice).length > 0) return null;
  const [reader] = billedParties(file, invoice);
  return refuse("missing-value", "invoice", `${number}: ${wrongAddress(reader)}`);
}

function isOnItsWayOrThere({ entryId, state }: Outgoing): boolean {
  return entryId !== null && state !== "failed";
}

function messageOf(
  act: Act,
  {
    file,
    office,
    invoice,
    party,
  }: { file: LineFile; office: Office; invoice: LedgerEntry; party: Party },
): Outgoing {
  const [paper] = accountPapers({ file, office, today: act.today }, [invoice.id]);
  if (paper === undefined) throw new Error(`There is no invoice ${invoice.id}`);
  const subjects = [paper.subject, ...(paper.also === undefined ? [] : [paper.also.subject])];
  return waitingMessage(act, {
    ...{ lineId: file.line.id, office, party, noticeId: null, deliveryId: null },
    entryId: invoice.id,
    subject: subjects.join(" / "),
    text: invoiceText(paper),
  });
}
