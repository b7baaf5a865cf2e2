import type { ReactNode } from "react";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { OpenAtFirst } from "#app/_components/open-at-first.client.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import type { FormState } from "#app/form.ts";
import { REPLY_WORDS } from "#lib/domain/facts/notice-words.ts";
import { optionsOf } from "../terms.ts";

/** Takes down what somebody answered by mail, by phone or in person, to a letter or to an invoice. */
export function ReplyForm({
  lineId,
  today,
  action,
  open,
  uploads,
  example,
  children,
}: {
  readonly lineId: string;
  readonly today: string;
  readonly action: (state: FormState, form: FormData) => Promise<FormState>;
  readonly open: boolean;
  /** Whether a paper can be added, which a closed file does not take. */
  readonly uploads: boolean;
  readonly example: string;
  /** What it answers, where that has to be chosen. */
  readonly children?: ReactNode;
}) {
  return (
    <OpenAtFirst opened={open} summary="Record a reply">
      <ActionForm action={action} label="Record a reply" reset>
        {children}
        <div className="form-grid">
          <Choice
            label="Reply"
            name="kind"
            required
            options={[{ value: "", label: "select" }, ...optionsOf(REPLY_WORDS)]}
          />
          <Field label="Received on" name="receivedOn" type="date" required defaultValue={today} />
        </div>
        <Field
          label="A day that works for them"
          name="suitsOn"
          type="date"
          hint="For a test or a visit, where they named one."
        />
        <Field label="In their own words" name="words" rows={3} example={example} />
        {uploads ? <Upload lineId={lineId} name="uploadId" label="Document, if any" /> : null}
        <div>
          <SubmitButton pendingWord="Recording …" quiet>
            Record the reply
          </SubmitButton>
        </div>
      </ActionForm>
    </OpenAtFirst>
  );
}
