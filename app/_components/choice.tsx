import { ChoiceBox, type ChoiceProps } from "./field-box.client.tsx";

/** One of a closed set. */
export function Choice(props: ChoiceProps) {
  return <ChoiceBox {...props} />;
}

/** A box to tick. */
export function Tick({
  label,
  name,
  value = "yes",
  defaultChecked = false,
  required = false,
}: {
  readonly label: string;
  readonly name: string;
  readonly value?: string;
  readonly defaultChecked?: boolean;
  readonly required?: boolean;
}) {
  return (
    <label className="check">
      <input
        type="checkbox"
        name={name}
        value={value}
        defaultChecked={defaultChecked}
        required={required}
      />
      <span>{label}</span>
    </label>
  );
}
