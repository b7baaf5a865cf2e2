import { insertRow } from "#db/queries/row.ts";
import { sayReply } from "#lib/domain/party/reply.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find } from "./change.ts";
import { type Answered, replyRow } from "./reply-row.ts";

interface InvoiceReply extends Answered {
  readonly lineId: string;
  readonly entryId: string;
}

/** Records what somebody answered to an invoice. It waits on the desk like an answer to a letter. */
export function recordInvoiceReply(
  act: Act,
  { lineId, entryId, ...answered }: InvoiceReply,
): Result<{ replyId: string; number: number }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "record-reply", evenClosed: true } as const;
  return changeLine(act, deal, (file) => {
    const invoices = file.ledger.filter(({ kind }) => kind === "invoice");
    const invoice = find(invoices, entryId, { path: "entryId", what: "the invoice" });
    if (!invoice.ok) return invoice;
    const { number } = invoice.value;
    const reply = replyRow(act, file, { ...answered, noticeId: null, entryId });
    if (!reply.ok) return reply;
    const row = reply.value;
    return ok({
      value: { replyId: row.id, number },
      sentence: `Reply to invoice No. ${number}: ${sayReply(row)}`,
      detail: { after: row },
      write: (db) => insertRow(db, "replies", { lineId, row }),
    });
  });
}
