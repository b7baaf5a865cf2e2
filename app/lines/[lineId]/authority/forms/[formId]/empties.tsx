import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";
import { fieldTitle, placeWords } from "#lib/domain/form/field-title.ts";
import type { FormAnswer } from "#lib/domain/form/plan-form.ts";
import { typeInFormAction } from "./actions.ts";

/** A field of the form with its number. */
export interface Numbered {
  readonly answer: FormAnswer;
  /** From 0, as the version has it. */
  readonly at: number;
}

/** Fields to type into: those that would stay empty, and those that were typed. */
export function TypeIn({
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
    <ActionForm action={typeInFormAction.bind(null, at)} label="Type into the form">
      <SeenField value={seen} />
      <div className="form-grid">
        {fields.map((each) => (
          <TypeInField key={`${each.at} ${each.answer.words}`} {...each} />
        ))}
      </div>
      <div>
        <SubmitButton pendingWord="Saving …">Save what is typed</SubmitButton>
      </div>
    </ActionForm>
  );
}

function TypeInField({ answer, at }: Numbered) {
  const { field, state, from, fact } = answer;
  const typed = from === "typed" && state === "filled" ? answer.words : "";
  const title = fieldTitle(field);
  const label = `${at + 1}. ${title}`;
  const place = field.places[0];
  const hint = [
    field.printed === "" || field.printed === title ? "" : `“${field.printed}”`,
    place === undefined ? "" : placeWords(place),
    fact === "" ? "" : `${fact}: not on file`,
    field.most === null ? "" : `at most ${field.most} characters`,
  ]
    .filter((part) => part !== "")
    .join("; ");
  const named = { label, name: `typed.${at}`, hint };
  return (
    <div className="stack-tight">
      <input type="hidden" name="at" value={at} />
      {field.kind === "text" ? (
        <Field {...named} defaultValue={typed} {...(field.lines === "many" ? { rows: 2 } : {})} />
      ) : (
        <Choice
          {...named}
          defaultValue={CHECKS.find(({ label }) => label === typed)?.value ?? typed}
          options={[{ value: "", label: "not decided" }, ...optionsIn(field)]}
        />
      )}
      <Tick
        label={`Leave ${at + 1} empty`}
        name={`empty.${at}`}
        defaultChecked={from === "typed" && state === "blank"}
      />
    </div>
  );
}

const CHECKS = [
  { value: "yes", label: "checked" },
  { value: "no", label: "not checked" },
];

function optionsIn({ kind, options }: FormAnswer["field"]) {
  if (kind === "check") return CHECKS;
  return options.map((option) => ({ value: option, label: option }));
}
