"use server";

import { revalidatePath } from "next/cache";
import type { RowsAnswer } from "#app/_components/grid/answer.ts";
import type { GridRow } from "#app/_components/grid/column.ts";
import { db } from "#app/_db.ts";
import { sentenceOf } from "#app/_messages.ts";
import { requireAct } from "#app/_session.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { personRows } from "#lib/domain/party/people.ts";
import { peopleRevision, savePeople } from "#lib/operations/save-people.ts";

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
  const saved = savePeople(act, { lineId, base, rows: [...rows] });
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
