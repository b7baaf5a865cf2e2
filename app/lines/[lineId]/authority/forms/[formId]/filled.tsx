import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";
import { fieldTitle } from "#lib/domain/form/field-title.ts";
import type { FormAnswer } from "#lib/domain/form/plan-form.ts";
import { typeOverAction } from "./actions.ts";
import type { Numbered } from "./empties.tsx";

/** What stands in each field, and where it is from. */
export function Filled({ fields }: { readonly fields: readonly Numbered[] }) {
  return (
    <Scroll>
      <table className="plain">
        <Heads of={["Field", "What stands there", "From"]} />
        <tbody>
          {fields.map(({ answer, at }) => (
            <tr key={answer.field.name}>
              <th scope="row">
                {at + 1}. {fieldTitle(answer.field)}
              </th>
              <td className="prewrap">{answer.words || <span className="muted">empty</span>}</td>
              <td>{fromWords(answer)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function fromWords({ state, from, fact }: FormAnswer): string {
  if (state === "to-sign") return "for who signs, by hand";
  if (from === "typed") return state === "blank" ? "left empty on this line" : "typed on this line";
  if (from === "words") return "the same on every line";
  if (from === "fact") return state === "blank" ? `${fact}: there is no such one` : fact;
  return state === "blank" ? "left empty on every line" : "nothing";
}

/** Something else in a field that the file fills in. */
export function TypeOver({
  lineId,
  form,
  fields,
  seen,
}: {
  readonly lineId: string;
  /** What was typed into the form so far, as `seenOf` has it. */
  readonly seen: string;
  readonly form: AuthorityForm;
  readonly fields: readonly Numbered[];
}) {
  const at = { lineId, formId: form.id, version: form.version };
  return (
    <details className="screen-only">
      <summary>Type something else into one of these</summary>
      <ActionForm action={typeOverAction.bind(null, at)} label="Type over a field" reset>
        <SeenField value={seen} />
        <div className="form-grid">
          <Choice
            label="Field"
            name="field"
            options={fields.map(({ answer: { field }, at: number }) => ({
              value: field.name,
              label: `${number + 1}. ${fieldTitle(field)}`,
            }))}
          />
          <Field
            label="What stands there on this line"
            name="words"
            hint="Yes checks a box, no leaves it. Leave this empty to keep the field empty."
          />
        </div>
        <div>
          <SubmitButton pendingWord="Saving …" quiet>
            Type it
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
