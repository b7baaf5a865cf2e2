import { getForm } from "#db/queries/form.ts";
import { insertRow, removeRow } from "#db/queries/row.ts";
import type { AuthorityForm, FormEntry } from "#lib/domain/facts/form.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { changedSince } from "./seen.ts";

interface Typed {
  readonly lineId: string;
  readonly formId: string;
  /** By the field's name; null takes back what was typed, so that the form's own fact stands there. */
  readonly answers: Readonly<Record<string, string | null>>;
  /** `seenOf(typedSeen(file, formId))` as the form was filled in; not given: whatever is typed now. */
  readonly seen?: string | undefined;
}

/** What was typed into a form when its page was made. */
export function typedSeen({ formEntries }: Pick<LineFile, "formEntries">, of: string) {
  return formEntries.filter(({ formId }) => formId === of);
}

/**
 * What somebody types into the authority's form for one line. It goes before what the form takes from
 * the file; an empty text keeps the field empty on purpose.
 */
export function typeInForm(
  act: Act,
  { lineId, formId, answers, seen }: Typed,
): Result<{ changed: number }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "type-in-form" } as const;
  return changeLine(act, deal, (file, db) => {
    const form = getForm(db, formId);
    if (form === null || form.authorityId !== file.authority?.id)
      return refuse("not-found", "formId", "the form");
    const now = typedSeen(file, formId);
    const last = now.findLast(({ field }) => field in answers) ?? now.at(-1);
    const overtaken = changedSince(seen, { now, last });
    if (overtaken !== null) return overtaken;
    const old = (field: string) =>
      file.formEntries.filter((each) => each.formId === formId && each.field === field);
    const changes = Object.entries(answers).filter(
      ([field, words]) => (old(field).at(-1)?.words ?? null) !== words,
    );
    const wrong = changes.map(([name, words]) => wrongAnswer(form, name, words)).find(Boolean);
    if (wrong) return wrong;
    const after = changes.flatMap(([field, words]): FormEntry[] =>
      words === null
        ? []
        : [{ id: act.newId(), formId, field, words, by: act.actor.name, on: act.today }],
    );
    const many = changes.length === 1 ? "1 field" : `${changes.length} fields`;
    return ok({
      value: { changed: changes.length },
      sentence: changes.length === 0 ? null : `Typed in ${many} of the form “${form.title}”.`,
      detail: { before: changes.flatMap(([field]) => old(field)), after },
      write: (one) => {
        for (const [field] of changes)
          for (const { id } of old(field)) removeRow(one, "formEntries", { lineId, id });
        for (const row of after) insertRow(one, "formEntries", { lineId, row });
      },
    });
  });
}

const LONGEST = 4_000;

/** What stands in a field that the form no longer has can only be taken back. */
function wrongAnswer({ fields }: AuthorityForm, name: string, words: string | null) {
  if (words === null) return null;
  const field = fields.find((each) => each.name === name);
  if (field === undefined) return refuse("not-found", name, "the field");
  const { kind, options } = field;
  if (kind === "signature")
    return refuse("bad-value", name, "A signature is made by hand, on the form");
  if (kind === "choice" && words !== "" && !options.includes(words))
    return refuse("bad-value", name, `Choose one of: ${options.join(", ")}`);
  return words.length > LONGEST
    ? refuse("bad-value", name, `Enter at most ${LONGEST} characters`)
    : null;
}
