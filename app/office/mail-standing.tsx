import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { db } from "#app/db.ts";
import { getMailbox, getMailRules } from "#db/queries/mailbox.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { saveMailRulesAction, testMailAction } from "./actions.ts";
import { mailboxPlace, mailPlace } from "./mail-place.ts";

/** Where letters by email go and answers come from, in words; an admin tries it and sets the pace. */
export function MailStanding({ may, zone }: { readonly may: boolean; readonly zone: string }) {
  const place = mailPlace();
  if (place.kind === "folder") {
    return (
      <p>
        No mail server is set, so messages are <strong>not sent</strong>: each is written as a file
        to the folder <code>{place.name}</code>, to be read or sent by hand. Ask your administrator
        to set a mail server (see README.md) and restart.
      </p>
    );
  }
  const { perHour } = getMailRules(db());
  return (
    <div className="stack">
      <p>
        Email is sent through <strong>{place.name}</strong>,{" "}
        {perHour === null ? "without a limit" : `at most ${perHour} an hour`}; undeliverable
        messages appear under “Who has been notified?”
      </p>
      <MailboxStanding zone={zone} />
      {may ? (
        <>
          <ActionForm action={testMailAction} label="Test the mail settings">
            <div>
              <SubmitButton pendingWord="Testing …" quiet>
                Send me a test email
              </SubmitButton>
            </div>
          </ActionForm>
          <ActionForm action={saveMailRulesAction} label="Limit of email">
            <SeenField value={seenOf({ perHour })} />
            <div className="form-grid">
              <Field
                label="Most emails an hour"
                name="perHour"
                defaultValue={perHour ?? ""}
                example="100"
                hint="As your mail provider has it. The rest waits in the outbox. Blank: no limit."
              />
            </div>
            <div>
              <SubmitButton pendingWord="Saving …" quiet>
                Save the limit
              </SubmitButton>
            </div>
          </ActionForm>
        </>
      ) : null}
    </div>
  );
}

/** Whether answers and returned mail are read, and when last. */
function MailboxStanding({ zone }: { readonly zone: string }) {
  const name = mailboxPlace();
  if (name === null) {
    return (
      <p className="muted">
        No mailbox is set, so returned emails and answers by email are not read: watch the mailbox
        and record them yourself.
      </p>
    );
  }
  const { lookedAt, problem } = getMailbox(db());
  const when =
    lookedAt === null ? "not read yet" : `last read ${momentWords(lookedAt, zone, "en")}`;
  return (
    <p>
      Returned emails and answers are read from <strong>{name}</strong>
      {problem === "" ? `, ${when}. ` : ". "}
      {problem === "" ? null : (
        <span className="mend">
          The last try, {momentWords(lookedAt ?? "", zone, "en")}, failed: {problem}.{" "}
        </span>
      )}
      Nothing in it is changed or removed.
    </p>
  );
}
