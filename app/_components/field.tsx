import { FieldBox, type FieldProps } from "./field-box.client.tsx";

/** One thing to type, with its name above and, inside an ActionForm, what is to be mended below. */
export function Field(props: FieldProps) {
  return <FieldBox {...props} />;
}
