"use server";

import { z } from "zod";
import { formAction, jobAction, onLineAt, type Stopped } from "#app/action.ts";
import { id, text } from "#app/fields.ts";
import { getForm } from "#db/queries/form.ts";
import type { AuthorityForm } from "#lib/domain/facts/form.ts";
import type { Act } from "#lib/operations/act.ts";
import { typeInForm } from "#lib/operations/type-in-form.ts";
import { err, type Result } from "#lib/result.ts";
import { typedAnswers } from "./typed-answers.ts";

interface Place {
  readonly lineId: string;
  readonly formId: string;
  /** Which version the page shows. */
  readonly version: number;
  /** What was typed into the form when the page was made; not given where that is of no matter. */
  readonly seen?: string;
}

const atForm = onLineAt({ formId: id, version: z.number() });

/** Types what `answersOf` makes of the form's fields, by name. */
function type(
  act: Act,
  { lineId, formId, version, seen }: Place,
  answersOf: (form: AuthorityForm) => Readonly<Record<string, string | null>>,
): Result<{ changed: number }, Stopped> {
  const form = getForm(act.db, formId);
  if (form === null) return err({ reason: "not-found", path: "", detail: "the form" });
  if (form.version !== version)
    return err({ reason: "changed-meanwhile", path: "", detail: form.savedBy });
  const typed = typeInForm(act, {
    ...{ lineId, formId, answers: answersOf(form) },
    ...(seen === undefined ? {} : { seen }),
  });
  if (typed.ok) return typed;
  const at = form.fields.findIndex(({ name }) => name === typed.error.path);
  return at === -1 ? typed : err({ ...typed.error, path: `typed.${at}` });
}

/** What is typed into the fields that would stay empty, and into those that were typed before. */
export const typeInFormAction = formAction(atForm, {
  may: "work-the-file",
  typed: z.object({ seen: text }),
  does: (act, at, sent) => type(act, at, (form) => typedAnswers(form, sent)),
  says: ({ changed }) => (changed === 0 ? "Nothing was changed." : "Saved."),
  theirs: "under “What happened?” and in the preview of the form",
});

/** What is to stand in a field in place of what the form takes from the file. */
export const typeOverAction = formAction(atForm, {
  may: "work-the-file",
  typed: z.object({ field: text, words: text, seen: text }),
  does: (act, { field, words, ...at }) => type(act, at, () => ({ [field]: words })),
  says: "Saved.",
  theirs: "in the list of fields",
  field: (path) => (path.startsWith("typed.") ? "words" : path),
});

/** Removes what was typed into fields that the form no longer has. */
export const dropStraysAction = formAction(onLineAt({ formId: id, version: z.number() }), {
  may: "work-the-file",
  typed: z.object({}),
  does: (act, at, sent) =>
    type(act, at, ({ fields }) =>
      Object.fromEntries(
        sent
          .getAll("stray")
          .filter((name) => typeof name === "string")
          .filter((name) => fields.every((field) => field.name !== name))
          .map((name) => [name, null]),
      ),
    ),
  says: "Removed.",
});

/** Starts the form being filled in as a PDF. */
export const makeFormAction = jobAction("form", "work-the-file");
