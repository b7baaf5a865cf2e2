import { getAuthority } from "#db/queries/authority.ts";
import { getForm, insertFormVersion } from "#db/queries/form.ts";
import { readFormApart } from "#lib/documents/forms-apart.ts";
import type { AuthorityForm, FormField } from "#lib/domain/facts/form.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { ok, type Result } from "#lib/result.ts";
import { readStored, type StoredFile } from "#lib/storage/store.ts";
import type { Act, Refusal } from "./act.ts";
import { plainName } from "./add-upload.ts";
import { changeOffice, refuse } from "./change.ts";

interface NewForm {
  readonly authorityId: string;
  /** The form of which this is the newer print; null: a form of its own. */
  readonly formId: string | null;
  /** As the person's machine calls it. */
  readonly name: string;
  readonly stored: StoredFile;
}

/** Whether somebody may add a form to an authority: asked before a long upload is taken in. */
export function mayTakeForm(act: Act, authorityId: string): Result<null, Refusal> {
  if (!mayDo(act.actor.role, "run-the-office")) return refuse("not-allowed");
  return getAuthority(act.db, authorityId) === null
    ? refuse("not-found", "authorityId", "the authority")
    : ok(null);
}

/**
 * Takes in an authority's own form, a PDF that is stored already: its fields are listed, and a person
 * says what goes into each. A newer print of a known form keeps what was said of fields that it still
 * has, and the boxes that were placed on pages that it still has. Refuses what can't be filled in here,
 * with what to do.
 */
export async function takeForm(
  act: Act,
  { authorityId, formId, name, stored }: NewForm,
): Promise<Result<{ formId: string }, Refusal>> {
  const may = mayTakeForm(act, authorityId);
  if (!may.ok) return may;
  if (stored.type !== "application/pdf")
    return refuse("wrong-type", "", "a form is a PDF; save it as one and add that");
  const bytes = readStored(act.dataFolder, stored.sha256);
  if (bytes === null) return refuse("not-found", "", "the file");
  const read = await readFormApart(bytes);
  if (!read.ok) return refuse("bad-value", "", `This form can’t be filled in here: ${read.error}`);
  const deal = { deed: "run-the-office", action: "take-form" } as const;
  return changeOffice(act, deal, (db) => {
    const authority = getAuthority(db, authorityId);
    if (authority === null) return refuse("not-found", "authorityId", "the authority");
    const before = formId === null ? null : getForm(db, formId);
    if (formId !== null && before?.authorityId !== authorityId)
      return refuse("not-found", "formId", "the form");
    const fileName = plainName(name);
    const boxes = (before?.fields ?? []).filter((field) => isOn(field, read.value.pages.length));
    const known = new Set(read.value.fields.map((field) => field.name));
    const fields = [...read.value.fields, ...boxes.filter((box) => !known.has(box.name))];
    const names = new Set(fields.map((field) => field.name));
    const kept = (before?.mappings ?? []).filter(({ field }) => names.has(field));
    const after: AuthorityForm = {
      ...(before ?? blankForm(fileName)),
      ...read.value,
      id: before?.id ?? act.newId(),
      authorityId,
      version: (before?.version ?? 0) + 1,
      fileName,
      sha256: stored.sha256,
      bytes: stored.bytes,
      fields,
      mappings: kept,
      retired: false,
      savedBy: act.actor.name,
      savedAt: act.now,
    };
    return ok({
      value: { formId: after.id },
      sentence:
        before === null
          ? `Added the form “${after.title}” of ${authority.name}.`
          : `Added a newer print of the form “${after.title}” of ${authority.name}: version ${after.version}.`,
      detail: { before: before?.version ?? null, after },
      write: (one) => insertFormVersion(one, after),
    });
  });
}

function isOn({ placed, places }: FormField, pages: number): boolean {
  return placed && places.every(({ page }) => page <= pages);
}

function blankForm(fileName: string) {
  return {
    title:
      fileName
        .replace(/\.pdf$/i, "")
        .replace(/[_-]+/g, " ")
        .trim() || "Form",
    permitKind: "side-sewer",
    requirementId: null,
    mappings: [],
    days: "mm/dd/yyyy",
    flatten: false,
  } as const;
}
