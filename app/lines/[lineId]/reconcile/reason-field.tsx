import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";

/** A reason that holds in most cases, to choose, and room to type another. */
export function ReasonField({
  presets,
  chosen = "",
  label = "Reason",
}: {
  readonly presets: readonly string[];
  readonly chosen?: string;
  readonly label?: string;
}) {
  return (
    <>
      <Choice
        label={label}
        name="reason"
        options={[
          { value: "", label: "Other reason" },
          ...presets.map((preset) => ({ value: preset, label: preset })),
        ]}
        defaultValue={chosen}
      />
      <Field label="Reason (type it)" name="words" />
    </>
  );
}
