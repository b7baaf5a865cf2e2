"use server";

import { z } from "zod";
import { formAction, placeAt, type Stopped } from "#app/action.ts";
import { checked, id, needed, oneIn, text, textOrNull } from "#app/fields.ts";
import { getForm } from "#db/queries/form.ts";
import { type AuthorityForm, DAY_MANNERS, type FormField } from "#lib/domain/facts/form.ts";
import { PERMIT_KINDS } from "#lib/domain/facts/permit.ts";
import { suggestedMappings } from "#lib/domain/form/suggest.ts";
import type { Act } from "#lib/operations/act.ts";
import { type FormChange, saveForm } from "#lib/operations/save-form.ts";
import { err, type Result } from "#lib/result.ts";
import { BOX_KINDS, typedBox, typedMappings } from "./typed-form.ts";

const theirs = "among the versions at the foot of this page";

interface Place {
  readonly authorityId: string;
  readonly formId: string;
  /** Which version the page shows. */
  readonly version: number;
}

const ids = { authorityId: id, formId: id, version: z.number() };
const atForm = placeAt(ids, pageOf);
const atBox = placeAt({ ...ids, box: id }, pageOf);

function pageOf({ authorityId }: Pick<Place, "authorityId">): string {
  return `/office/authorities/${authorityId}`;
}

/** Saves what `changeOf` makes of the form as it stands, as a version on top of the one that was shown. */
function save(
  act: Act,
  { authorityId, formId, version }: Place,
  changeOf: (form: AuthorityForm) => Result<FormChange, Stopped>,
): Result<{ version: number }, Stopped> {
  const form = getForm(act.db, formId);
  if (form === null || form.authorityId !== authorityId)
    return err({ reason: "not-found", path: "", detail: "the form" });
  if (form.version !== version)
    return err({ reason: "changed-meanwhile", path: "", detail: form.savedBy });
  const change = changeOf(form);
  return change.ok ? saveForm(act, { formId, base: version, change: change.value }) : change;
}

const saved = ({ version }: { readonly version: number }) => `Saved: version ${version}.`;

/** What the office says of the form as a whole. */
export const saveFormFactsAction = formAction(atForm, {
  may: "run-the-office",
  typed: z.object({
    title: needed("Enter a title."),
    permitKind: oneIn(PERMIT_KINDS, "Select the permit."),
    requirementId: textOrNull,
    days: oneIn(DAY_MANNERS, "Select how it writes dates."),
    flatten: checked,
    retired: checked,
  }),
  does: (act, { authorityId, formId, version, ...change }) =>
    save(act, { authorityId, formId, version }, () => ({ ok: true, value: change })),
  says: saved,
  theirs,
});

/** What goes into each of the fields that the table shows. */
export const saveMappingsAction = formAction(atForm, {
  may: "run-the-office",
  typed: z.object({}),
  does: (act, at, sent) =>
    save(act, at, (form) => {
      const mappings = typedMappings(form, sent);
      return mappings.ok ? { ok: true, value: { mappings: mappings.value } } : mappings;
    }),
  says: saved,
  theirs,
});

/** Takes what the fields' names suggest, where nobody has said anything yet. */
export const takeSuggestionsAction = formAction(atForm, {
  may: "run-the-office",
  typed: z.object({}),
  does: (act, at) =>
    save(act, at, ({ fields, mappings }) => ({
      ok: true,
      value: { mappings: [...mappings, ...suggestedMappings(fields, mappings)] },
    })),
  says: "Suggestions taken. Look at every one before the form is used.",
  theirs,
});

/** Places a box over a page, or places one anew: `box` is its name so far, empty for a new one. */
export const saveBoxAction = formAction(atBox, {
  may: "run-the-office",
  typed: z.object({
    name: text,
    kind: oneIn(BOX_KINDS, "Select what goes into the box."),
    page: text,
    left: text,
    top: text,
    width: text,
    height: text,
  }),
  does: (act, { box, authorityId, formId, version, ...typed }) =>
    save(act, { authorityId, formId, version }, (form) => {
      const made = typedBox(typed);
      if (!made.ok) return made;
      if (form.fields.some(({ name }) => name === typed.name && name !== box))
        return err({
          path: "name",
          message: `The form already has a field named “${typed.name}”. Enter another name.`,
        });
      const boxes = boxesOf(form);
      const kept = boxes.map((each) => (each.name === box ? made.value : each));
      const mappings = form.mappings.map((each) =>
        each.field === box ? { ...each, field: typed.name } : each,
      );
      return {
        ok: true,
        value: { boxes: box === "" ? [...boxes, made.value] : kept, mappings },
      };
    }),
  says: saved,
  theirs,
  field: (path) => path.replace(/^boxes\.\d+\./, ""),
});

export const removeBoxAction = formAction(atBox, {
  may: "run-the-office",
  typed: z.object({}),
  does: (act, { box, ...at }) =>
    save(act, at, (form) => ({
      ok: true,
      value: { boxes: boxesOf(form).filter(({ name }) => name !== box) },
    })),
  says: "Box removed.",
  theirs,
});

function boxesOf({ fields }: AuthorityForm): FormField[] {
  return fields.filter(({ placed }) => placed);
}
