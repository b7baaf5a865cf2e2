import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { counted } from "../names.ts";
import { draftRemindersAction } from "./actions.ts";

/** Drafts a reminder to everyone whose reply is past due, in one press; nothing where there is none. */
export function RemindersButton({
  lineId,
  count,
}: {
  readonly lineId: string;
  readonly count: number;
}) {
  if (count === 0) return null;
  return (
    <ActionForm action={draftRemindersAction.bind(null, lineId)} label="Draft reminders">
      <SubmitButton pendingWord="Drafting …" quiet>
        Draft {counted(count, "reminder")}
      </SubmitButton>
    </ActionForm>
  );
}
