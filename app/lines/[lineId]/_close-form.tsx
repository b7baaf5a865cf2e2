import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import type { LineFacts } from "#lib/domain/line/line.ts";
import { closeLineAction, reopenLineAction } from "./actions.ts";

/** Closes the file on a line, or opens it again, with the reason. */
export function CloseForm({ line }: { readonly line: Pick<LineFacts, "id" | "closedOn"> }) {
  const open = line.closedOn === null;
  return (
    <ActionForm
      action={(open ? closeLineAction : reopenLineAction).bind(null, line.id)}
      label={open ? "Close the file" : "Open the file again"}
      className="stack"
    >
      <Field
        label="Why"
        name="reason"
        hint="Goes into the history. Nothing is lost: a closed file stays readable."
        required
      />
      <div>
        <SubmitButton pendingWord="Saving …" quiet>
          {open ? "Close the file" : "Open it again"}
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
