import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import type { AuthorityForm, FormField } from "#lib/domain/facts/form.ts";
import { inches, placeWords } from "#lib/domain/form/field-title.ts";
import { removeBoxAction, saveBoxAction } from "./actions.ts";

/** The boxes that the office placed over the form's pages, by numbers. */
export function Boxes({ form, may }: { readonly form: AuthorityForm; readonly may: boolean }) {
  const boxes = form.fields.filter(({ placed }) => placed);
  const ids = { authorityId: form.authorityId, formId: form.id, version: form.version };
  return (
    <div className="stack">
      {boxes.map((box) => (
        <details key={box.name} className="screen-only">
          <summary>
            {box.name}: {box.places.map(placeWords).join("; ")}
          </summary>
          {may ? (
            <div className="stack">
              <BoxForm action={saveBoxAction.bind(null, { ...ids, box: box.name })} box={box} />
              <ActionForm
                action={removeBoxAction.bind(null, { ...ids, box: box.name })}
                label={`Remove ${box.name}`}
              >
                <div>
                  <SubmitButton pendingWord="Removing …" quiet>
                    Remove this box
                  </SubmitButton>
                </div>
              </ActionForm>
            </div>
          ) : null}
        </details>
      ))}
      {may ? <BoxForm action={saveBoxAction.bind(null, { ...ids, box: "" })} box={null} /> : null}
    </div>
  );
}

/** The numbers of a box, each with what a new one begins with. */
const SIDES = [
  ["left", "From the left", ""],
  ["top", "From the top", ""],
  ["width", "Width", ""],
  ["height", "Height", "0.25"],
] as const;

function BoxForm({
  action,
  box,
}: {
  readonly action: Parameters<typeof ActionForm>[0]["action"];
  readonly box: FormField | null;
}) {
  const place = box?.places[0];
  return (
    <ActionForm
      action={action}
      label={box === null ? "Place a box" : `Edit ${box.name}`}
      reset={box === null}
    >
      <div className="form-grid">
        <Field
          label="What the box is for"
          name="name"
          defaultValue={box?.name}
          example="Parcel number"
        />
        <Choice
          label="What goes into it"
          name="kind"
          defaultValue={box?.kind === "check" ? "check" : (box?.lines ?? "one")}
          options={[
            { value: "one", label: "words on one line" },
            { value: "many", label: "words on several lines" },
            { value: "check", label: "a check mark" },
          ]}
        />
        <Field label="Page" name="page" inputMode="numeric" defaultValue={place?.page ?? 1} />
        {SIDES.map(([side, label, usual]) => (
          <Field
            key={side}
            label={label}
            name={side}
            inputMode="decimal"
            unit="in"
            defaultValue={place === undefined ? usual : inches(place[side])}
          />
        ))}
      </div>
      <div>
        <SubmitButton pendingWord="Saving …" quiet>
          {box === null ? "Place the box" : "Save the box"}
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
