import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";

/** A reason that holds in most cases, to choose, and room for one's own words. */
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
          { value: "", label: "In my own words" },
          ...presets.map((preset) => ({ value: preset, label: preset })),
        ]}
        defaultValue={chosen}
      />
      <Field label="Own words" name="words" />
    </>
  );
}
