import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { REPLY_WORDS } from "#lib/domain/facts/notice-words.ts";
import { optionsOf } from "../../../terms.ts";
import { recordReplyAction } from "../../actions.ts";
import { ReplyCard } from "../../reply-card.tsx";

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
  /** Whether they may deal with a reply, which they may on a closed file too. */
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
      {work ? (
        <details open={replies.length === 0}>
          <summary>Record a reply</summary>
          <ActionForm
            action={recordReplyAction.bind(null, { lineId, noticeId: notice.id })}
            label="Record a reply"
            reset
          >
            <div className="form-grid">
              <Choice
                label="Reply"
                name="kind"
                required
                options={[{ value: "", label: "select" }, ...optionsOf(REPLY_WORDS)]}
              />
              <Field
                label="Received on"
                name="receivedOn"
                type="date"
                required
                defaultValue={today}
              />
            </div>
            <Field
              label="A day that works for them"
              name="suitsOn"
              type="date"
              hint="For a test or a visit, where they named one."
            />
            <Field
              label="In their own words"
              name="words"
              rows={3}
              example="I will come to the meeting."
            />
            <Upload lineId={lineId} name="uploadId" label="Document, if any" />
            <div>
              <SubmitButton pendingWord="Recording …" quiet>
                Record the reply
              </SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </div>
  );
}
