import type { AuthorityForm, FormField, FormMapping } from "../facts/form.ts";
import { formFact } from "./form-facts.ts";

/** The fields of which nobody has said what goes there; who signs needs no telling. */
export function undecidedFields({
  fields,
  mappings,
}: Pick<AuthorityForm, "fields" | "mappings">): FormField[] {
  const known = new Set(mappings.map(({ field }) => field));
  return fields.filter(({ name, kind }) => kind !== "signature" && !known.has(name));
}

/** What goes into a field, in words: `Owner: name, number 2`. */
export function mappingWords({ source, fact, row, words }: FormMapping): string {
  switch (source) {
    case "typed":
      return "typed on each line";
    case "blank":
      return "left empty";
    case "words":
      return `always “${words}”`;
    case "fact": {
      const known = formFact(fact);
      const which = known?.repeats && row > 0 ? `, number ${row}` : "";
      return `${known?.words ?? "a fact that is no longer there"}${which}`;
    }
  }
}
