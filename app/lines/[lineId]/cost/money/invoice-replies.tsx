import { Choice } from "#app/_components/choice.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { inNumberOrder } from "#lib/domain/ledger/balance.ts";
import { billedTo } from "#lib/domain/ledger/billed-to.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { isDealtWith } from "#lib/domain/party/reply.ts";
import { counted, listed, propertyName } from "../../names.ts";
import { ReplyCards } from "../../notices/reply-card.tsx";
import { ReplyForm } from "../../notices/reply-form.tsx";
import { recordInvoiceReplyAction } from "./actions.ts";

interface RepliesProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
  readonly work: boolean;
  /** Whether they may take down and deal with a reply, which they may on a closed file too. */
  readonly deal: boolean;
}

/** What came back to invoices, the newest first, and a form for one more. */
export function InvoiceReplies({ lineId, file, today, work, deal }: RepliesProps) {
  const replies = file.replies
    .filter(({ entryId }) => entryId !== null)
    .toSorted((one, other) => other.receivedOn.localeCompare(one.receivedOn));
  const invoices = invoiceOptions(file);
  if (invoices.length === 0 || (replies.length === 0 && !deal)) return null;
  return (
    <Section
      title="Replies to invoices"
      id="replies"
      note="Replies received by email, mail, phone or in person. Record those to a letter with the letter."
      {...foldOf(replies)}
    >
      <div className="stack">
        <ReplyCards {...{ lineId, file, replies, today }} work={deal} />
        {deal ? (
          <ReplyForm
            lineId={lineId}
            today={today}
            action={recordInvoiceReplyAction.bind(null, lineId)}
            open={replies.length === 0}
            uploads={work}
            example="I mailed the check last week."
          >
            <Choice
              label="Invoice"
              name="entryId"
              required
              options={[{ value: "", label: "select" }, ...invoices]}
            />
          </ReplyForm>
        ) : null}
      </div>
    </Section>
  );
}

function foldOf(replies: LineFile["replies"]) {
  if (replies.length === 0) return { folded: "none yet" };
  const waiting = replies.filter((reply) => !isDealtWith(reply)).length;
  const count = counted(replies.length, "reply", "replies");
  return waiting === 0
    ? { folded: `${count}, dealt with` }
    : { foldedOnPhone: `${count}, ${waiting} to answer` };
}

/** Every invoice, the newest first: a question can come about one that was paid or reversed since. */
function invoiceOptions(file: LineFile): { readonly value: string; readonly label: string }[] {
  return inNumberOrder(file.ledger)
    .toReversed()
    .filter(({ kind }) => kind === "invoice")
    .map((entry) => ({
      value: entry.id,
      label: `No. ${entry.number}, ${propertyName(file, entry.propertyId)}, ${listed(billedTo(file, entry))}: ${formatCents(entry.amount)}`,
    }));
}
