import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { recordReplyAction } from "../../actions.ts";
import { ReplyCard } from "../../reply-card.tsx";
import { ReplyForm } from "../../reply-form.tsx";

/** What came back to a letter, and a form for one more. */
export function Replies({
  lineId,
  file,
  notice,
  today,
  work,
  deal,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly notice: Notice;
  readonly today: string;
  readonly work: boolean;
  /** Whether they may take down and deal with a reply, which they may on a closed file too. */
  readonly deal: boolean;
}) {
  const replies = file.replies.filter((reply) => reply.noticeId === notice.id);
  return (
    <div className="stack">
      {replies.length === 0 ? <p>No reply yet.</p> : null}
      {replies.map((reply) => (
        <ReplyCard
          key={reply.id}
          lineId={lineId}
          file={file}
          reply={reply}
          today={today}
          work={deal}
        />
      ))}
      {deal ? (
        <ReplyForm
          lineId={lineId}
          today={today}
          action={recordReplyAction.bind(null, { lineId, noticeId: notice.id })}
          open={replies.length === 0 && work}
          uploads={work}
          example="I will come to the meeting."
        />
      ) : null}
    </div>
  );
}
