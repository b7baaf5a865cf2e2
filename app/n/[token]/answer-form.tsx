import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { LINK_REPLIES } from "#lib/domain/consent/words-en.ts";
import { answerAction } from "./actions.ts";
import { LinkFile } from "./link-file.client.tsx";
import type { PartProps } from "./part.ts";
import styles from "./private-page.module.css";

/** What would you like to say: agree, disagree, ask, offer a paper, book a test. */
export function AnswerForm({ token, language, words }: PartProps) {
  const file = {
    label: words.file,
    hint: words.fileHint,
    drop: words.fileDrop,
    broken: words.fileBroken,
    storing: words.fileStoring("{name}", 0),
    stored: words.fileStored("{name}"),
  };
  return (
    <>
      <noscript>
        <p>{words.noScripts}</p>
      </noscript>
      <ActionForm
        className="stack screen-only"
        action={answerAction.bind(null, { token, language })}
        label={words.say}
        reset
      >
        <fieldset className={styles["choices"]}>
          <legend>{words.sayLabel}</legend>
          {LINK_REPLIES.map((kind) => (
            <label key={kind} className={styles["choice"]}>
              <input type="radio" name="kind" value={kind} />
              <span>{words.replies[kind]}</span>
            </label>
          ))}
        </fieldset>
        <Field label={words.words} name="words" rows={4} hint={words.wordsHint} />
        <Field label={words.day} name="day" type="date" hint={words.dayHint} width={16} />
        <LinkFile to={`/n/${token}/file?lang=${language}`} name="uploadId" words={file} />
        <div>
          <SubmitButton pendingWord={words.sending}>{words.send}</SubmitButton>
        </div>
      </ActionForm>
    </>
  );
}
