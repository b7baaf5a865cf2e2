"use server";

import { revalidatePath } from "next/cache";
import type { RowsAnswer } from "#app/_components/grid/answer.ts";
import type { GridRow } from "#app/_components/grid/column.ts";
import { db } from "#app/db.ts";
import { sentenceOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { readFile } from "#lib/operations/line-report.ts";
import { saveRows } from "#lib/operations/save-rows.ts";

/**
 * Saves one table of a line: `rows` are those that are new or changed, `order` names all; without
 * it `rows` are the whole table. Whoever can reach this may send anything: the operation looks at
 * every argument. Where somebody else saved it meanwhile, answers with their rows,
 * so that nothing of either is lost.
 */
export async function saveRowsAction(
  lineId: string,
  table: RowTable,
  base: number,
  rows: readonly GridRow[],
  order?: readonly string[],
): Promise<RowsAnswer> {
  const act = await requireAct();
  const saved = saveRows(act, { lineId: String(lineId), table, base, rows, order });
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
      revision: now?.revisions[table] ?? 0,
      rows: (now?.file[table] ?? []) as unknown as readonly GridRow[],
    };
  }
  if (reason === "bad-rows") return { status: "refused", message: "", cells };
  return { status: "refused", message: sentenceOf({ reason, detail: by }), cells };
}
