import { starterChoices } from "#lib/domain/starters/authorities.ts";
import { Choice } from "./choice.tsx";
import { Field } from "./field.tsx";

/** An authority by its name, empty or from an example. */
export function StarterFields({ name, none }: { readonly name: string; readonly none: string }) {
  return (
    <div className="form-grid">
      <Field label="Name of the authority" name={name} example="Quillhaven Sewer District" />
      <Choice
        label="Start from"
        name="starter"
        options={[
          { value: "", label: none },
          ...starterChoices().map(({ starter, about }) => ({
            value: starter,
            label: `Example: ${about.charAt(0).toLowerCase()}${about.slice(1)}`,
          })),
        ]}
        hint="Examples are invented and complete: rules, checklist, fees, deadlines, holidays. Every row is marked “Example: check against your code” until you replace it."
      />
    </div>
  );
}
