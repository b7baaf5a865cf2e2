"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { CellProblem, RowsAnswer } from "#app/_components/grid/answer.ts";
import type { GridRow } from "#app/_components/grid/column.ts";
import { db } from "#app/db.ts";
import { type FormState, refused, textOf, textsOf } from "#app/form.ts";
import { sentenceOf, stateOf } from "#app/messages.ts";
import { addressFrom, officeField } from "#app/office-form.ts";
import { requireAct } from "#app/session.ts";
import { getAuthority } from "#db/queries/authority.ts";
import { listOfficeHistory } from "#db/queries/history.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import type { Refusal } from "#lib/operations/act.ts";
import { bringInHolidays } from "#lib/operations/bring-in-holidays.ts";
import { removeAuthority } from "#lib/operations/remove-authority.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { officeRevision } from "./revision.ts";

const PARTS = [
  "rules",
  "requirements",
  "fees",
  "clockRules",
  "holidays",
  "refusalSteps",
] as const satisfies readonly (keyof Authority)[];
export type AuthorityPart = (typeof PARTS)[number];

/**
 * Saves one table of an authority; the rest of it stays as it is now. Whoever can reach this may name
 * anything as the table.
 */
export async function savePartAction(
  authorityId: string,
  part: AuthorityPart,
  base: number,
  rows: readonly GridRow[],
): Promise<RowsAnswer> {
  const act = await requireAct();
  const authority = getAuthority(db(), authorityId);
  if (authority === null) {
    const message = sentenceOf({ reason: "not-found", detail: "the authority" });
    return { status: "refused", message, cells: [] };
  }
  if (!PARTS.includes(part) || !Array.isArray(rows)) {
    const message = sentenceOf({
      reason: "bad-value",
      detail: "That table does not belong to an authority",
    });
    return { status: "refused", message, cells: [] };
  }
  if (base !== officeRevision()) return changedMeanwhile(authority, part);
  const changed = { ...authority, [part]: rows } as unknown as Authority;
  const saved = saveAuthority(act, changed);
  if (!saved.ok) return refusedPart(saved.error, part);
  revalidatePath(`/office/authorities/${authorityId}`);
  return { status: "saved", revision: officeRevision(), at: act.now };
}

function changedMeanwhile(authority: Authority, part: AuthorityPart): RowsAnswer {
  const [last] = listOfficeHistory(db());
  return {
    status: "changed-meanwhile",
    by: last?.by ?? "",
    at: last?.at ?? "",
    revision: officeRevision(),
    rows: authority[part] as unknown as readonly GridRow[],
  };
}

/** `rules.3.title` is row 3, column `title`. */
function refusedPart(refusal: Refusal, part: AuthorityPart): RowsAnswer {
  const [list, row = "", ...column] = refusal.path.split(".");
  if (list !== part || column.length === 0) {
    return { status: "refused", message: sentenceOf(refusal), cells: [] };
  }
  const cell: CellProblem = {
    row: Number(row),
    column: column.join("."),
    message: refusal.detail,
  };
  return { status: "refused", message: "", cells: [cell] };
}

export async function saveAuthorityFactsAction(
  authorityId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct();
  const authority = getAuthority(db(), authorityId);
  if (authority === null) {
    return refused(sentenceOf({ reason: "not-found", detail: "the authority" }), form);
  }
  const saved = saveAuthority(act, {
    ...authority,
    name: textOf(form, "name"),
    office: textOf(form, "office"),
    phone: textOf(form, "phone"),
    email: textOf(form, "email"),
    note: textOf(form, "note"),
    address: addressFrom(form),
  });
  if (!saved.ok) return refused(sentenceOf(saved.error), form, officeField(saved.error.path));
  revalidatePath(`/office/authorities/${authorityId}`);
  return stateOf(saved, { words: "Saved.", form });
}

/** Imports those of the offered holidays that were checked. */
export async function bringInHolidaysAction(
  authorityId: string,
  set: { readonly state: string; readonly year: number },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct();
  const saved = bringInHolidays(act, { authorityId, ...set, days: textsOf(form, "days") });
  if (!saved.ok) return refused(sentenceOf(saved.error), form, saved.error.path);
  revalidatePath(`/office/authorities/${authorityId}`);
  const { added } = saved.value;
  const words =
    added === 0
      ? "All of these were already there."
      : `${added === 1 ? "1 holiday" : `${added} holidays`} of ${set.year} imported. Delete from the table what this authority does not keep, and add what it does.`;
  return stateOf(saved, { words, form });
}

/** Removes an authority that was added by mistake. */
export async function removeAuthorityAction(
  authorityId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct();
  const removed = removeAuthority(act, { authorityId });
  if (!removed.ok) return refused(sentenceOf(removed.error), form);
  revalidatePath("/office", "layout");
  return redirect("/office");
}
