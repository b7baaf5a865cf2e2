"use server";

import { z } from "zod";
import { formAction, jobAction, onLine, onLineAt } from "#app/action.ts";
import {
  cents,
  checked,
  id,
  needed,
  oneIn,
  oneInOr,
  someTexts,
  text,
  textOrNull,
  twoIds,
} from "#app/fields.ts";
import { PAYMENT_METHODS } from "#lib/domain/facts/ledger-entry.ts";
import { REPLY_KINDS } from "#lib/domain/facts/notice.ts";
import { BILLINGS } from "#lib/domain/ledger/propose.ts";
import { ENTERED_KINDS, enterMoney } from "#lib/operations/enter-money.ts";
import { invoiceSplit } from "#lib/operations/invoice-split.ts";
import { mailInvoices } from "#lib/operations/mail-invoices.ts";
import { recordInvoiceReply } from "#lib/operations/record-invoice-reply.ts";
import { reverseEntry } from "#lib/operations/reverse-entry.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { counted } from "../../names.ts";

/** Records a payment, deposit, credit or refund. */
export const enterMoneyAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    kind: oneIn(ENTERED_KINDS, "Select the type."),
    account: twoIds("Select the account."),
    amount: cents((typed) => `“${typed}” is not an amount. Enter it like $1,234.56.`),
    method: oneInOr(PAYMENT_METHODS, null),
    on: text,
    reference: text,
    uploadId: textOrNull,
    note: text,
    beyond: checked,
  }),
  does: (act, { account: [partyId, propertyId], method, ...typed }) =>
    enterMoney(act, {
      ...typed,
      partyId,
      propertyId,
      method: typed.kind === "credit" ? null : method,
    }),
  says: posted,
});

/** Reverses one entry whole, with the reason. */
export const reverseEntryAction = formAction(onLineAt({ entryId: id }), {
  may: "work-the-file",
  typed: z.object({ reason: text }),
  does: reverseEntry,
  says: ({ number }) => `Reversed by No. ${number}.`,
});

/** Posts what the preview showed, for the properties that were checked, and has the invoices printed. */
export const invoiceSplitAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    property: someTexts("Check at least one property."),
    billing: oneInOr(BILLINGS, "one-invoice"),
    dueOn: text,
    seen: text,
  }),
  does: (act, { lineId, property, ...typed }) => {
    const invoiced = invoiceSplit(act, { lineId, ...typed, propertyIds: property });
    if (invoiced.ok && invoiced.value.invoiceIds.length > 0)
      startJob(act, { kind: "accounts", lineId, subjectIds: invoiced.value.invoiceIds });
    return invoiced;
  },
  says: ({ entryIds }) => `${counted(entryIds.length, "entry", "entries")} posted to the ledger.`,
});

const account = { partyId: id, propertyId: id, owed: z.int() };

/** The balance due of one account, paid today by check. */
export const payInFullAction = formAction(onLineAt(account), {
  may: "work-the-file",
  typed: z.object({ reference: text }),
  does: (act, { owed, ...paid }) =>
    enterMoney(act, {
      ...paid,
      kind: "payment",
      amount: owed,
      on: act.today,
      method: "check",
      uploadId: null,
      note: "",
      beyond: false,
      inFull: true,
    }),
  says: posted,
});

function posted({ number }: { readonly number: number }): string {
  return `Posted as No. ${number}.`;
}

/** Emails the checked invoices without a cover letter. */
export const mailInvoicesAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    invoice: someTexts("Check at least one invoice."),
    again: checked,
  }),
  does: (act, { invoice, ...typed }) => mailInvoices(act, { ...typed, invoiceIds: invoice }),
  says: ({ messageIds }) => `${counted(messageIds.length, "email")} in the outbox.`,
});

/** Takes down what somebody answered to an invoice by mail, by phone or in person. */
export const recordInvoiceReplyAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    entryId: needed("Select the invoice."),
    kind: oneIn(REPLY_KINDS, "Choose what the reply says."),
    receivedOn: text,
    words: text,
    suitsOn: textOrNull,
    uploadId: textOrNull,
  }),
  does: recordInvoiceReply,
  says: ({ number }) =>
    `The reply to No. ${number} is recorded. It waits until someone has dealt with it.`,
});

/** Starts the PDF of statements or invoices. */
export const printAccountsAction = jobAction("accounts", null);
