import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { CLOSING_WORDS, type ClosingWord, closingOf } from "#lib/domain/closing/closing.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { closeLineAction, reopenLineAction } from "./actions.ts";

/** Closes the file on a line, or opens it again, with the reason; what still stands open is asked for. */
export function CloseForm({ file, today }: { readonly file: LineFile; readonly today: string }) {
  const { line } = file;
  const open = line.closedOn === null;
  const closing = open ? closingOf(file, reportOn(file, today)) : null;
  const gaps = CLOSING_WORDS.filter((each) => closing !== null && closing.gaps[each] !== null);
  return (
    <ActionForm
      action={(open ? closeLineAction : reopenLineAction).bind(null, line.id)}
      label={open ? "Close the file" : "Reopen the file"}
      className="stack"
    >
      {closing === null || closing.holds.length === 0 ? null : (
        <p>
          {closing.holds.length === 1 ? "A hold is open" : `${closing.holds.length} holds are open`}{" "}
          on what was done. <Link href={`/lines/${line.id}/reconcile#holds`}>Settle or waive</Link>{" "}
          first.
        </p>
      )}
      <Field
        label="Reason"
        name="reason"
        hint="Recorded in the history. Nothing is lost: a closed file stays readable."
        required
      />
      {gaps.map((each) => (
        <Field
          key={each}
          label={LABELS[each]}
          name={each}
          rows={2}
          hint={closing?.gaps[each] ?? ""}
          required
        />
      ))}
      <div>
        <SubmitButton pendingWord="Saving …" quiet>
          {open ? "Close the file" : "Reopen the file"}
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

const LABELS: Record<ClosingWord, string> = {
  permit: "Why it is closed without a final permit",
  built: "What was built",
  branches: "How you know that the branches are open",
  money: "Why the balance stays as it is",
};
