"use server";

import { revalidatePath } from "next/cache";
import type { RowsAnswer } from "#app/_components/grid/answer.ts";
import type { GridRow } from "#app/_components/grid/column.ts";
import { db } from "#app/db.ts";
import { type FormState, oneOf, refused, textOf } from "#app/form.ts";
import { sentenceOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { personRows } from "#lib/domain/party/people.ts";
import { peopleRevision, savePeople } from "#lib/operations/save-people.ts";
import { appendRows } from "../append-rows.ts";
import { MOST_UNITS, missingUnitNames, UNIT_STYLES } from "./unit-names.ts";

/**
 * Saves the list of people whole, over parties, roles and units. Where somebody else saved one of
 * them meanwhile, answers with the list as it is now, so that nothing of either is lost.
 */
export async function savePeopleAction(
  lineId: string,
  base: number,
  rows: readonly GridRow[],
): Promise<RowsAnswer> {
  const act = await requireAct();
  const saved = savePeople(act, { lineId, base, rows });
  if (saved.ok) {
    revalidatePath(`/lines/${lineId}`, "layout");
    return { status: "saved", revision: saved.value.revision, at: act.now };
  }
  const { reason, cells, by, at } = saved.error;
  if (reason === "changed-meanwhile") {
    const file = getLineFile(db(), lineId);
    return {
      status: "changed-meanwhile",
      by,
      at,
      revision: peopleRevision(getRevisions(db(), lineId)),
      rows: file === null ? [] : personRows(file).map((row) => ({ ...row })),
    };
  }
  if (reason === "bad-rows") return { status: "refused", message: "", cells };
  return { status: "refused", message: sentenceOf({ reason, detail: by }), cells };
}

/** Adds the units that a property lacks until it has as many as are said. */
export async function addUnitsAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const propertyId = textOf(form, "propertyId");
  if (propertyId === "") return refused("Choose the property.", form, "propertyId");
  const count = Number(textOf(form, "count"));
  if (!Number.isInteger(count) || count < 1 || count > MOST_UNITS)
    return refused(`Enter a whole number from 1 to ${MOST_UNITS}.`, form, "count");
  const style = oneOf(UNIT_STYLES, textOf(form, "style")) ?? "numbers";
  const there = (getLineFile(db(), lineId)?.units ?? []).filter(
    (unit) => unit.propertyId === propertyId,
  );
  const names = missingUnitNames(
    count,
    there.map((unit) => unit.name),
    style,
  );
  if (names.length === 0)
    return refused(`It has ${there.length} already; take units out in the table.`, form, "count");
  const rows = names.map((name) => ({
    id: act.newId(),
    propertyId,
    name,
    use: "dwelling",
    note: "",
  }));
  const words = names.length === 1 ? "1 unit was added." : `${names.length} units were added.`;
  return appendRows(act, { lineId, table: "units", rows }, { form, words });
}
