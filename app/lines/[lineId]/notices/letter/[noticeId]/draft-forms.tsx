import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { wordsOf } from "#lib/operations/save-notice-words.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { dropDraftAction, saveWordsAction } from "../../actions.ts";
import { LANGUAGE_CHOICES, languageChoice } from "../../letter-languages.ts";

/** The personal note, the reply-by date, and deleting the draft. */
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
      title="Personal note and language"
      note="Printed above the standard text. Safety and legal notices always print."
    >
      <ActionForm
        className="stack screen-only"
        action={saveWordsAction.bind(null, place)}
        label="Personal note"
      >
        <SeenField value={seenOf(wordsOf(notice))} />
        <Field
          label="Text above the standard letter"
          name="ownWords"
          rows={4}
          defaultValue={notice.ownWords}
          example="Thank you for letting us in on Tuesday."
        />
        <div className="form-grid">
          <Field label="Reply by" name="replyBy" type="date" defaultValue={notice.replyBy ?? ""} />
          <Choice
            label="Language"
            name="languages"
            options={LANGUAGE_CHOICES}
            defaultValue={languageChoice(notice)}
            hint="Two languages print, mail and go by email as one document"
          />
        </div>
        <div>
          <SubmitButton pendingWord="Saving …">Save and preview</SubmitButton>
        </div>
      </ActionForm>
      <ActionForm
        className="stack screen-only"
        action={dropDraftAction.bind(null, place)}
        label="Delete this draft"
        confirm="Delete this draft? It has not been sent."
      >
        <div>
          <SubmitButton pendingWord="Deleting …" quiet>
            Delete this draft
          </SubmitButton>
        </div>
      </ActionForm>
    </Section>
  );
}
