import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { LINK_REPLIES } from "#lib/domain/consent/words-en.ts";
import { answerAction } from "./actions.ts";
import { LinkFile } from "./link-file.client.tsx";
import type { PartProps } from "./part.ts";
import styles from "./private-page.module.css";
import { ReplyChoices } from "./reply-choices.client.tsx";

/** What would you like to say: agree, disagree, ask, offer a paper, book a test. */
export function AnswerForm({ token, language, words, form }: PartProps) {
  const file = {
    label: words.file,
    hint: words.fileHint,
    drop: words.fileDrop,
    broken: words.fileBroken,
    storing: words.fileStoring("{name}", 0),
    stored: words.fileStored("{name}"),
  };
  return (
    <ActionForm
      className="stack screen-only"
      action={answerAction.bind(null, { token, language })}
      label={words.say}
      comesBackTo={`/n/${token}?lang=${language}#say`}
      reset
    >
      <input type="hidden" name="form" value={form} />
      <ReplyChoices
        legend={words.sayLabel}
        choices={LINK_REPLIES.map((kind) => ({ kind, words: words.replies[kind] }))}
      />
      <Field label={words.words} name="words" rows={4} hint={words.wordsHint} />
      <Field label={words.day} name="day" type="date" hint={words.dayHint} width={16} />
      <noscript>
        <p className="muted">{words.noScripts}</p>
      </noscript>
      <div className={styles["byScript"]}>
        <LinkFile to={`/n/${token}/file?lang=${language}`} name="uploadId" words={file} />
      </div>
      <div>
        <SubmitButton pendingWord={words.sending}>{words.send}</SubmitButton>
      </div>
    </ActionForm>
  );
}
