import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { isDealtWith } from "#lib/domain/party/reply.ts";
import { counted } from "../../names.ts";
import { ReplyCards } from "../../notices/reply-card.tsx";

/** What came back to invoices that went without a cover letter, the newest first. */
export function InvoiceReplies({
  lineId,
  file,
  today,
  deal,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
  /** Whether they may deal with a reply, which they may on a closed file too. */
  readonly deal: boolean;
}) {
  const replies = file.replies
    .filter(({ entryId }) => entryId !== null)
    .toSorted((one, other) => other.receivedOn.localeCompare(one.receivedOn));
  if (replies.length === 0) return null;
  const waiting = replies.filter((reply) => !isDealtWith(reply)).length;
  const count = counted(replies.length, "reply", "replies");
  return (
    <Section
      title="Replies to invoices"
      id="replies"
      note="Answers to invoices that went without a cover letter. Those to a letter are with the letter."
      {...(waiting === 0
        ? { folded: `${count}, dealt with` }
        : { foldedOnPhone: `${count}, ${waiting} to answer` })}
    >
      <ReplyCards {...{ lineId, file, replies, today }} work={deal} />
    </Section>
  );
}
