import { insertRow } from "#db/queries/row.ts";
import type { Reply } from "#lib/domain/facts/notice.ts";
import { NOT_DEALT_WITH, sayReply } from "#lib/domain/party/reply.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find } from "./change.ts";
import { pastDay } from "./past-day.ts";

interface InvoiceReply {
  readonly lineId: string;
  /** The invoice that went without a cover letter. */
  readonly entryId: string;
  readonly receivedOn: Day;
  readonly words: string;
}

/** Records what somebody answered to an invoice. It waits on the desk like an answer to a letter. */
export function recordInvoiceReply(
  act: Act,
  { lineId, entryId, receivedOn, words }: InvoiceReply,
): Result<{ replyId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "record-reply", evenClosed: true } as const;
  return changeLine(act, deal, (file) => {
    const invoices = file.ledger.filter(({ kind }) => kind === "invoice");
    const invoice = find(invoices, entryId, { path: "entryId", what: "the invoice" });
    if (!invoice.ok) return invoice;
    const wrongDay = pastDay(act, { day: receivedOn, path: "receivedOn" });
    if (wrongDay !== null) return wrongDay;
    const reply: Reply = {
      id: act.newId(),
      noticeId: null,
      entryId,
      kind: "other",
      receivedOn,
      takenBy: act.actor.name,
      words: words.trim(),
      suitsOn: null,
      uploadId: null,
      ...NOT_DEALT_WITH,
    };
    return ok({
      value: { replyId: reply.id },
      sentence: `Reply to invoice No. ${invoice.value.number}: ${sayReply(reply)}`,
      detail: { after: reply },
      write: (db) => insertRow(db, "replies", { lineId, row: reply }),
    });
  });
}
