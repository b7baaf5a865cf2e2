import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Tick } from "#app/_components/choice.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { db } from "#app/db.ts";
import { today } from "#app/today.ts";
import { isDailyOn, listDailyMails } from "#db/queries/daily-mail.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { saveDailyMailAction } from "./actions.ts";

/** Whether everyone gets a message in the morning of what is overdue or due, and how today's went. */
export function DailyMail({ may }: { readonly may: boolean }) {
  const on = isDailyOn(db());
  const failed = listDailyMails(db(), today()).filter(
    ({ problem, state }) => problem !== "" && state !== "sent",
  );
  return (
    <div className="stack">
      <p>
        {on
          ? "Each business day from 7 AM, everyone who works on files is emailed what is overdue or due that week on the lines they handle; admins also get lines no one handles and company papers."
          : "No one is emailed what is overdue or due; it stands on the desk."}
      </p>
      {failed.map(({ id, toName, problem }) => (
        <p key={id} className="muted">
          Today’s message to {toName} was not sent: {problem}
        </p>
      ))}
      {may ? (
        <ActionForm action={saveDailyMailAction} label="Morning email">
          <SeenField value={seenOf(on)} />
          <Tick label="Email everyone each morning what is due" name="daily" defaultChecked={on} />
          <div>
            <SubmitButton pendingWord="Saving …" quiet>
              Save
            </SubmitButton>
          </div>
        </ActionForm>
      ) : null}
    </div>
  );
}
