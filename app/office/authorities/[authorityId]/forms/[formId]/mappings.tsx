import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { onPage, Pages } from "#app/_components/pages.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { counted } from "#app/lines/[lineId]/names.ts";
import stacked from "#app/lines/[lineId]/stacked.module.css";
import type { AuthorityForm, FormField, FormMapping } from "#lib/domain/facts/form.ts";
import { fieldTitle, placeWords } from "#lib/domain/form/field-title.ts";
import { FORM_FACTS } from "#lib/domain/form/form-facts.ts";
import { suggestedMapping, suggestedMappings } from "#lib/domain/form/suggest.ts";
import { mappingWords } from "#lib/domain/form/undecided.ts";
import { saveMappingsAction, takeSuggestionsAction } from "./actions.ts";
import styles from "./form.module.css";
import { type FactChoice, MappingChoice } from "./mapping-choice.client.tsx";

/** As many fields as one table shows. */
export const MOST_FIELDS_SHOWN = 20;

const FACTS: readonly FactChoice[] = FORM_FACTS.map(({ key, words, group, repeats, ...fact }) => ({
  ...{ key, words, group, repeats },
  values: fact.kind === "choice" ? Object.entries(fact.values) : null,
}));

/** Every field with its place and what goes into it, decided in a table. */
export function Mappings({
  form,
  may,
  from,
}: {
  readonly form: AuthorityForm;
  readonly may: boolean;
  /** The first field shown, from 0. */
  readonly from: number;
}) {
  const ids = { authorityId: form.authorityId, formId: form.id, version: form.version };
  const offered = suggestedMappings(form.fields, form.mappings).length;
  const numbered = form.fields.map((field, at) => ({ field, at }));
  const table = (
    <Scroll>
      <table className={`plain ${stacked["stacked"]} ${styles["mapping"]}`}>
        <Heads of={["Field", "Printed beside it", "What goes in"]} />
        <tbody>
          {onPage(numbered, from, MOST_FIELDS_SHOWN).map(({ field, at }) => (
            <FieldRow key={field.name} form={form} field={field} at={at} may={may} />
          ))}
        </tbody>
      </table>
    </Scroll>
  );
  return (
    <div className="stack">
      {may && offered > 0 ? (
        <ActionForm action={takeSuggestionsAction.bind(null, ids)} label="Suggestions">
          <div className="cluster">
            <SubmitButton pendingWord="Saving …">
              {`Take ${counted(offered, "suggestion")}`}
            </SubmitButton>
            <span className="muted">From the fields’ names. What is decided already stays.</span>
          </div>
        </ActionForm>
      ) : null}
      {may ? (
        <ActionForm
          key={from}
          action={saveMappingsAction.bind(null, ids)}
          label="What goes into each field"
        >
          {table}
          <div>
            <SubmitButton pendingWord="Saving …">Save the table</SubmitButton>
          </div>
        </ActionForm>
      ) : (
        table
      )}
      <Pages
        from={from}
        most={MOST_FIELDS_SHOWN}
        of={form.fields.length}
        what="fields"
        href={(page) => `/office/authorities/${form.authorityId}/forms/${form.id}?page=${page}`}
      />
    </div>
  );
}

function FieldRow({
  form,
  field,
  at,
  may,
}: {
  readonly form: AuthorityForm;
  readonly field: FormField;
  readonly at: number;
  readonly may: boolean;
}) {
  const mapping = form.mappings.find((each) => each.field === field.name) ?? null;
  const title = fieldTitle(field);
  const suggestion = mapping === null ? suggestedMapping(field) : null;
  return (
    <tr>
      <th scope="row">
        {at + 1}. {title}
        {title === field.name ? null : <span className="muted small"> {field.name}</span>}
        <br /> <span className="muted small">{kindOf(field)}</span>
      </th>
      <td>
        {field.printed === "" || field.printed === title ? (
          <span className="small">{field.places.map(placeWords).join("; ") || "on no page"}</span>
        ) : (
          `“${field.printed}”`
        )}
      </td>
      <td>
        {may && field.kind !== "signature" ? (
          <MappingChoice
            key={JSON.stringify(mapping)}
            at={at}
            field={{ kind: field.kind, options: field.options }}
            title={title}
            mapping={mapping}
            suggested={suggestion === null ? "" : mappingWords(suggestion)}
            facts={FACTS}
          />
        ) : (
          decided(field, mapping)
        )}
      </td>
    </tr>
  );
}

function decided({ kind }: FormField, mapping: FormMapping | null): string {
  if (kind === "signature") return "left for who signs";
  return mapping === null ? "not decided" : mappingWords(mapping);
}

const LINES = { one: "one line", many: "several lines", comb: "a box for each character" } as const;

function kindOf({ kind, lines, most, options, needed, locked, placed }: FormField): string {
  const is = {
    text: LINES[lines],
    check: "check box",
    choice: `choice: ${options.join(", ")}`,
    signature: "signature",
  }[kind];
  return [
    is,
    most === null ? "" : `at most ${counted(most, "character")}`,
    needed ? "required by the form" : "",
    locked ? "locked in the form" : "",
    placed ? "placed by you" : "",
  ]
    .filter((part) => part !== "")
    .join(", ");
}
