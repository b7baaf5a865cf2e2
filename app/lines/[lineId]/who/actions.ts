"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import type { RowsAnswer } from "#app/_components/grid/answer.ts";
import type { GridRow } from "#app/_components/grid/column.ts";
import { formAction, onLine } from "#app/action.ts";
import { db } from "#app/db.ts";
import { needed, oneInOr, read } from "#app/fields.ts";
import { sentenceOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { personRows } from "#lib/domain/party/people.ts";
import { addResidents } from "#lib/operations/add-residents.ts";
import { readFile } from "#lib/operations/line-report.ts";
import { peopleRevision, savePeople } from "#lib/operations/save-people.ts";
import { err, ok } from "#lib/result.ts";
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
    const { revision, otherwise } = saved.value;
    return { status: "saved", revision, at: act.now, rows: otherwise.map((row) => ({ ...row })) };
  }
  const { reason, cells, by, at } = saved.error;
  if (reason === "changed-meanwhile") {
    const now = readFile(db(), lineId);
    return {
      status: "changed-meanwhile",
      by,
      at,
      revision: now === null ? 0 : peopleRevision(now.revisions),
      rows: now === null ? [] : personRows(now.file).map((row) => ({ ...row })),
    };
  }
  if (reason === "bad-rows") return { status: "refused", message: "", cells };
  return { status: "refused", message: sentenceOf({ reason, detail: by }), cells };
}

/** Adds the units that a property lacks until it has as many as are said. */
export const addUnitsAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    propertyId: needed("Choose the property."),
    count: read(unitsIn, `Enter a whole number from 1 to ${MOST_UNITS}.`),
    style: oneInOr(UNIT_STYLES, "numbers"),
  }),
  does: (act, { lineId, propertyId, count, style }) =>
    appendRows(act, { lineId, table: "units" }, (file) => {
      const there = file.units.filter((unit) => unit.propertyId === propertyId);
      const taken = there.map((unit) => unit.name);
      const names = missingUnitNames(count, taken, style);
      const message = `It has ${there.length} already; take units out in the table.`;
      if (names.length === 0) return err({ path: "count", message });
      const unit = { propertyId, use: "dwelling", note: "" };
      return ok(names.map((name) => ({ ...unit, id: act.newId(), name })));
    }),
  says: ({ count }) => (count === 1 ? "1 unit was added." : `${count} units were added.`),
});

function unitsIn(typed: string): number | null {
  const count = Number(typed);
  return Number.isInteger(count) && count >= 1 && count <= MOST_UNITS ? count : null;
}

/** Puts whoever lives in a unit without a known occupant on the list, so that letters reach them. */
export const addResidentsAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({}),
  does: (act, { lineId }) => addResidents(act, { lineId }),
  says: "Current residents were added; letters can go to them.",
});
