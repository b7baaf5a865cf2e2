"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import type { CellProblem, RowsAnswer } from "#app/_components/grid/answer.ts";
import type { GridRow } from "#app/_components/grid/column.ts";
import { formAction, placeAt } from "#app/action.ts";
import { id, text, texts } from "#app/fields.ts";
import { sentenceOf } from "#app/messages.ts";
import { ADDRESS_FIELDS, officeField } from "#app/office-form.ts";
import { requireAct } from "#app/session.ts";
import { getLastOfficeEntry } from "#db/queries/history.ts";
import type { AuthorityPart } from "#lib/domain/facts/authority.ts";
import type { Refusal } from "#lib/operations/act.ts";
import { bringInHolidays } from "#lib/operations/bring-in-holidays.ts";
import { removeAuthority } from "#lib/operations/remove-authority.ts";
import { readAuthority, saveAuthorityFacts, savePart } from "#lib/operations/save-part.ts";

/**
 * Saves one table of an authority; the rest of it stays as it is now. Whoever can reach this may name
 * anything as the table. Where somebody changed the office's facts meanwhile, answers with the table
 * as it is now, so that nothing of either is lost.
 */
export async function savePartAction(
  authorityId: string,
  part: AuthorityPart,
  base: number,
  rows: readonly GridRow[],
): Promise<RowsAnswer> {
  const act = await requireAct();
  const saved = savePart(act, { authorityId: String(authorityId), part, base, rows });
  if (saved.ok) {
    revalidatePath(`/office/authorities/${authorityId}`);
    return { status: "saved", revision: saved.value.revision, at: act.now };
  }
  const now = readAuthority(act.db, String(authorityId));
  if (saved.error.reason !== "changed-meanwhile" || now === null)
    return refusedPart(saved.error, part);
  return {
    status: "changed-meanwhile",
    by: saved.error.detail,
    at: getLastOfficeEntry(act.db)?.at ?? "",
    revision: now.revision,
    rows: now.authority[part] as unknown as readonly GridRow[],
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

function pageOf({ authorityId }: { readonly authorityId: string }): string {
  return `/office/authorities/${authorityId}`;
}

export const saveAuthorityFactsAction = formAction(placeAt({ authorityId: id }, pageOf), {
  may: null,
  typed: z.object({
    name: text,
    office: text,
    phone: text,
    email: text,
    note: text,
    seen: text,
    ...ADDRESS_FIELDS,
  }),
  does: (act, { street, unit, city, state, zip, ...facts }) =>
    saveAuthorityFacts(act, { ...facts, address: { street, unit, city, state, zip } }),
  says: "Saved.",
  theirs: "above the form",
  field: officeField,
});

const set = { authorityId: id, state: z.string(), year: z.number() };

/** Imports those of the offered holidays that were checked. */
export const bringInHolidaysAction = formAction(placeAt(set, pageOf), {
  may: null,
  typed: z.object({ days: texts }),
  does: bringInHolidays,
  says: ({ added }, { year }) =>
    added === 0
      ? "All of these were already there."
      : `${added === 1 ? "1 holiday" : `${added} holidays`} of ${year} imported. Delete from the table what this authority does not keep, and add what it does.`,
});

/** Removes an authority that was added by mistake. */
export const removeAuthorityAction = formAction(
  placeAt({ authorityId: id }, () => "/office"),
  {
    may: null,
    typed: z.object({}),
    does: removeAuthority,
    says: "",
    leadsTo: () => "/office",
  },
);
