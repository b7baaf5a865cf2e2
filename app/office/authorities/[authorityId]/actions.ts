"use server";

import { randomUUID } from "node:crypto";
import { revalidatePath } from "next/cache";
import type { CellProblem, RowsAnswer } from "#app/_components/grid/answer.ts";
import type { GridRow } from "#app/_components/grid/column.ts";
import { db } from "#app/_db.ts";
import { type FormState, refused, textOf } from "#app/_form.ts";
import { sentenceOf, stateOf } from "#app/_messages.ts";
import { addressFrom, officeField } from "#app/_office-form.ts";
import { requireAct } from "#app/_session.ts";
import { getAuthority } from "#db/queries/authority.ts";
import { listOfficeHistory } from "#db/queries/history.ts";
import { federalHolidays } from "#lib/domain/calendar/federal-holidays.ts";
import type { Authority } from "#lib/domain/responsibility/authority.ts";
import type { Refusal } from "#lib/operations/act.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { officeRevision } from "./_revision.ts";

export type AuthorityPart =
  | "rules"
  | "requirements"
  | "fees"
  | "clockRules"
  | "holidays"
  | "refusalSteps";

/** Saves one table of an authority; the rest of it stays as it is now. */
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

/** Adds the federal holidays of a year that are not there yet. */
export async function fillHolidaysAction(
  authorityId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct();
  const authority = getAuthority(db(), authorityId);
  const year = Number(textOf(form, "year"));
  if (authority === null) {
    return refused(sentenceOf({ reason: "not-found", detail: "the authority" }), form);
  }
  if (!Number.isInteger(year) || year < 2000 || year > 2100) {
    return refused("Nothing was filled in: write a year from 2000 to 2100.", form, "year");
  }
  const known = new Set(authority.holidays.map((holiday) => holiday.day));
  const added = federalHolidays(year)
    .filter(({ day }) => !known.has(day))
    .map(({ day, name }) => ({ id: randomUUID(), authorityId, day, name }));
  const holidays = [...authority.holidays, ...added].toSorted((one, other) =>
    one.day.localeCompare(other.day),
  );
  const saved = saveAuthority(act, { ...authority, holidays });
  revalidatePath(`/office/authorities/${authorityId}`);
  const words =
    added.length === 0
      ? `All federal holidays of ${year} were there already.`
      : `${added.length} holidays of ${year} were filled in. Remove those that this authority does not keep.`;
  return stateOf(saved, { words, form });
}
