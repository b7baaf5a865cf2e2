import { Section } from "#app/_components/section.tsx";
import { repliedTo } from "#lib/domain/desk/replied-to.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { ReplyCard } from "../../notices/reply-card.tsx";

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
  return (
    <Section
      title="Replies to invoices"
      id="replies"
      note="Answers to invoices that went without a cover letter. Those to a letter are with the letter."
    >
      <div className="stack">
        {replies.map((reply) => (
          <ReplyCard
            key={reply.id}
            {...{ lineId, file, reply, today }}
            work={deal}
            to={repliedTo(file, reply)}
            open={false}
          />
        ))}
      </div>
    </Section>
  );
}
