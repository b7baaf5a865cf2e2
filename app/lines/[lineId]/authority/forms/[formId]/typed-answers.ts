import { textOf, textsOf, ticked } from "#app/form.ts";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";

/**
 * What was typed into a form's fields, by name: words, empty to keep a field empty on purpose, null where
 * nothing was typed, so that the form's own fact stands there. Fields are sent by their number.
 */
export function typedAnswers(
  { fields }: Pick<AuthorityForm, "fields">,
  sent: FormData,
): Record<string, string | null> {
  const shown = new Set(textsOf(sent, "at").map(Number));
  return Object.fromEntries(
    fields.flatMap(({ name, kind }, at) => {
      if (!shown.has(at) || kind === "signature") return [];
      if (ticked(sent, `empty.${at}`)) return [[name, ""]];
      const words = textOf(sent, `typed.${at}`);
      return [[name, words === "" ? null : words]];
    }),
  );
}
