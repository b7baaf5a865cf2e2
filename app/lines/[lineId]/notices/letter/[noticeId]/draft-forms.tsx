import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { wordsOf } from "#lib/operations/save-notice-words.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { dropDraftAction, saveWordsAction } from "../../actions.ts";

/** The office's own words, the reply-by day, and dropping the draft. */
export function DraftForms({
  lineId,
  notice,
}: {
  readonly lineId: string;
  readonly notice: Notice;
}) {
  const place = { lineId, noticeId: notice.id };
  return (
    <Section
      title="Your own words"
      note="They stand above the standing text. The cautions stay in every letter."
    >
      <ActionForm
        className="stack screen-only"
        action={saveWordsAction.bind(null, place)}
        label="Your own words"
      >
        <input type="hidden" name="seen" value={seenOf(wordsOf(notice))} />
        <Field
          label="Words above the standing text"
          name="ownWords"
          rows={4}
          defaultValue={notice.ownWords}
          example="Thank you for letting us in on Tuesday."
        />
        <Field
          label="Reply wanted by"
          name="replyBy"
          type="date"
          defaultValue={notice.replyBy ?? ""}
        />
        <div>
          <SubmitButton pendingWord="Saving …">Save and show below</SubmitButton>
        </div>
      </ActionForm>
      <ActionForm
        className="stack screen-only"
        action={dropDraftAction.bind(null, place)}
        label="Drop this draft"
        confirm="Drop this draft? Nobody has it yet; it can be written again."
      >
        <div>
          <SubmitButton pendingWord="Dropping …" quiet>
            Drop this draft
          </SubmitButton>
        </div>
      </ActionForm>
    </Section>
  );
}
