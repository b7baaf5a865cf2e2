import { textOf, textsOf } from "#app/form.ts";
import type { AuthorityForm, FormField, FormMapping } from "#lib/domain/facts/form.ts";
import type { FormFact } from "#lib/domain/form/fact.ts";
import { INCH } from "#lib/domain/form/field-title.ts";
import { formFact } from "#lib/domain/form/form-facts.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { FROM_FACT } from "./source-value.ts";

interface Wrong {
  readonly path: string;
  readonly message: string;
}

/**
 * What goes into each field after the table was sent: the fields that were in it as it says, the others
 * as before. Fields are named by their number in this version.
 */
export function typedMappings(
  form: Pick<AuthorityForm, "fields" | "mappings">,
  sent: FormData,
): Result<FormMapping[], Wrong> {
  const shown = new Set(textsOf(sent, "at").map(Number));
  const mappings: FormMapping[] = [];
  for (const [at, field] of form.fields.entries()) {
    const before = form.mappings.find((each) => each.field === field.name);
    if (!shown.has(at)) {
      if (before !== undefined) mappings.push(before);
      continue;
    }
    const typed = typedMapping(field, at, sent);
    if (!typed.ok) return typed;
    if (typed.value !== null) mappings.push(typed.value);
  }
  return ok(mappings);
}

function typedMapping(
  field: FormField,
  at: number,
  sent: FormData,
): Result<FormMapping | null, Wrong> {
  const from = textOf(sent, `from.${at}`);
  const blank = { field: field.name, fact: "", row: 0, words: "", when: [] };
  if (from === "") return ok(null);
  if (from === "typed" || from === "blank") return ok({ ...blank, source: from });
  if (from === "words") {
    const words = textOf(sent, `words.${at}`);
    if (words === "")
      return err({ path: `words.${at}`, message: "Enter what always stands in this field." });
    return ok({ ...blank, source: "words", words });
  }
  const fact = formFact(from.slice(FROM_FACT.length));
  if (fact === null)
    return err({ path: `from.${at}`, message: "Select one of the facts in the list." });
  const row = fact.repeats ? rowOf(textOf(sent, `row.${at}`)) : 0;
  if (row === null)
    return err({ path: `row.${at}`, message: "Enter a number from 1 to 99, or 0 for all." });
  const when = field.kind === "text" ? [] : whenOf(field, { at, fact, sent });
  return ok({ ...blank, source: "fact", fact: fact.key, row, when });
}

function rowOf(typed: string): number | null {
  if (typed === "") return 0;
  return /^\d{1,2}$/.test(typed) ? Number(typed) : null;
}

/** Which of the fact's values checks the box, or selects which option. */
function whenOf(
  field: FormField,
  { at, fact, sent }: { readonly at: number; readonly fact: FormFact; readonly sent: FormData },
): FormMapping["when"] {
  const values = Object.keys(fact.values);
  if (field.kind === "check") {
    const checking =
      fact.kind === "choice"
        ? textsOf(sent, `value.${at}`).filter((value) => values.includes(value))
        : [textOf(sent, `says.${at}`)].filter((value) => value !== "");
    return checking.map((value) => ({ value, option: "" }));
  }
  if (fact.kind === "choice")
    return values.flatMap((value) => {
      const option = textOf(sent, `option.${at}.${value}`);
      return field.options.includes(option) ? [{ value, option }] : [];
    });
  return field.options.flatMap((option, number) => {
    const value = textOf(sent, `says.${at}.${number}`);
    return value === "" ? [] : [{ value, option }];
  });
}

/** How a box is filled in, as the choice says it. */
export const BOX_KINDS = ["one", "many", "check"] as const;

interface TypedBox {
  readonly name: string;
  readonly kind: (typeof BOX_KINDS)[number];
  readonly page: string;
  readonly left: string;
  readonly top: string;
  readonly width: string;
  readonly height: string;
}

/** A box to type over a page, from inches. */
export function typedBox(typed: TypedBox): Result<FormField, Wrong> {
  if (typed.name === "") return err({ path: "name", message: "Enter what the box is for." });
  const page = /^\d{1,4}$/.test(typed.page) ? Number(typed.page) : 0;
  if (page < 1) return err({ path: "page", message: "Enter the number of the page, from 1." });
  const place: Record<string, number> = {};
  for (const side of ["left", "top", "width", "height"] as const) {
    if (!/^\d{1,3}(\.\d{1,3})?$|^\.\d{1,3}$/.test(typed[side]))
      return err({ path: side, message: "Enter inches as a number, for example 2.25." });
    place[side] = Math.round(Number(typed[side]) * INCH * 10) / 10;
  }
  const { left = 0, top = 0, width = 0, height = 0 } = place;
  return ok({
    name: typed.name,
    kind: typed.kind === "check" ? "check" : "text",
    lines: typed.kind === "many" ? "many" : "one",
    places: [{ page, left, top, width, height }],
    hint: "",
    printed: "",
    most: null,
    options: [],
    needed: false,
    locked: false,
    placed: true,
  });
}
