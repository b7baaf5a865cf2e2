import { getAuthority } from "#db/queries/authority.ts";
import { getForm, insertFormVersion, wrongFormPart } from "#db/queries/form.ts";
import type { Requirement } from "#lib/domain/facts/authority.ts";
import {
  type AuthorityForm,
  DAY_MANNERS,
  type FormField,
  type FormMapping,
} from "#lib/domain/facts/form.ts";
import { PERMIT_KINDS } from "#lib/domain/facts/permit.ts";
import { formFact } from "#lib/domain/form/form-facts.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";

/** What the office says of a form; the PDF and its own fields stay as they were read. */
export type FormChange = Partial<
  Pick<
    AuthorityForm,
    "title" | "permitKind" | "requirementId" | "days" | "flatten" | "retired" | "mappings"
  > & {
    /** The boxes that the office placed, all of them. */
    readonly boxes: readonly FormField[];
  }
>;

/**
 * Saves what the office says of a form as a new version. `base` is the version that was looked at: where
 * somebody saved another meanwhile, nothing is written.
 */
export function saveForm(
  act: Act,
  {
    formId,
    base,
    change,
  }: { readonly formId: string; readonly base: number; readonly change: FormChange },
): Result<{ version: number }, Refusal> {
  const deal = { deed: "run-the-office", action: "save-form" } as const;
  return changeOffice(act, deal, (db) => {
    const before = getForm(db, formId);
    if (before === null) return refuse("not-found", "", "the form");
    if (before.version !== base) return refuse("changed-meanwhile", "", before.savedBy);
    const changed = withChange(before, change);
    const requirements = getAuthority(db, before.authorityId)?.requirements ?? [];
    const wrong = wrongIn(changed, { boxes: change.boxes ?? [], requirements });
    if (wrong !== null) return wrong;
    const same = JSON.stringify(before) === JSON.stringify(changed);
    const after = {
      ...changed,
      version: before.version + 1,
      savedBy: act.actor.name,
      savedAt: act.now,
    };
    return ok({
      value: { version: same ? before.version : after.version },
      sentence: same ? null : `Changed the form “${after.title}”: version ${after.version}.`,
      detail: { before: before.version, after },
      write: (one) => insertFormVersion(one, after),
    });
  });
}

function withChange(before: AuthorityForm, { boxes, ...said }: FormChange): AuthorityForm {
  const own = before.fields.filter(({ placed }) => !placed);
  const fields = boxes === undefined ? before.fields : [...own, ...boxes];
  const names = new Set(fields.map(({ name }) => name));
  const mappings = (said.mappings ?? before.mappings).filter(({ field }) => names.has(field));
  return { ...before, ...said, fields, mappings };
}

function wrongIn(
  form: AuthorityForm,
  {
    boxes,
    requirements,
  }: { readonly boxes: readonly FormField[]; readonly requirements: readonly Requirement[] },
) {
  const { requirementId } = form;
  if (requirementId !== null && !requirements.some(({ id }) => id === requirementId))
    return refuse("not-found", "requirementId", "the requirement");
  if (form.title.trim() === "") return refuse("missing-value", "title", "Enter a title");
  if (!PERMIT_KINDS.includes(form.permitKind))
    return refuse("bad-value", "permitKind", "Select the permit");
  if (!DAY_MANNERS.includes(form.days))
    return refuse("bad-value", "days", "Select how it writes dates");
  const part = wrongFormPart(form);
  if (part !== null) return refuse("bad-value", part.path, part.message);
  return wrongBox(form, boxes) ?? wrongMapping(form.mappings);
}

function wrongBox({ fields, pages }: AuthorityForm, boxes: readonly FormField[]) {
  for (const [at, { name, places, placed }] of boxes.entries()) {
    if (!placed) return refuse("bad-value", `boxes.${at}`, "A box is typed over the page");
    if (fields.filter((each) => each.name === name).length > 1)
      return refuse("already-there", `boxes.${at}.name`, `a field named “${name}”`);
    const off = places.find(({ page, left, top, width, height }) => {
      const size = pages[page - 1];
      return (
        size === undefined ||
        width < 4 ||
        height < 4 ||
        left < 0 ||
        top < 0 ||
        left + width > size.width + 0.5 ||
        top + height > size.height + 0.5
      );
    });
    if (off !== undefined || places.length === 0)
      return refuse("bad-value", `boxes.${at}.left`, `The box “${name}” does not lie on the page`);
  }
  return null;
}

function wrongMapping(mappings: readonly FormMapping[]) {
  const at = mappings.findIndex(({ source, fact }) => source === "fact" && formFact(fact) === null);
  return at === -1
    ? null
    : refuse("bad-value", `mappings.${at}.fact`, "Select one of the facts in the list");
}
