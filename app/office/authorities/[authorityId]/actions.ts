"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import type { CellProblem, RowsAnswer } from "#app/_components/grid/answer.ts";
import type { GridRow } from "#app/_components/grid/column.ts";
import { formAction, placeAt } from "#app/action.ts";
import { db } from "#app/db.ts";
import { id, text, texts } from "#app/fields.ts";
import { sentenceOf } from "#app/messages.ts";
import { ADDRESS_FIELDS, officeField } from "#app/office-form.ts";
import { requireAct } from "#app/session.ts";
import { getAuthority } from "#db/queries/authority.ts";
import { getLastOfficeEntry } from "#db/queries/history.ts";
import {
  AUTHORITY_PART_NAMES,
  type Authority,
  type AuthorityPart,
} from "#lib/domain/facts/authority.ts";
import type { Refusal } from "#lib/operations/act.ts";
import { bringInHolidays } from "#lib/operations/bring-in-holidays.ts";
import { removeAuthority } from "#lib/operations/remove-authority.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { err } from "#lib/result.ts";
import { officeRevision } from "./revision.ts";

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
  if (!AUTHORITY_PART_NAMES.includes(part) || !Array.isArray(rows)) {
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
  const last = getLastOfficeEntry(db());
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

const GONE = { reason: "not-found", path: "", detail: "the authority" } as const;

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
    ...ADDRESS_FIELDS,
  }),
  does: (act, { authorityId, street, unit, city, state, zip, ...facts }) => {
    const authority = getAuthority(act.db, authorityId);
    if (authority === null) return err(GONE);
    return saveAuthority(act, {
      ...authority,
      ...facts,
      address: { street, unit, city, state, zip },
    });
  },
  says: "Saved.",
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
