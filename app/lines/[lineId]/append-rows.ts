import "server-only";
import { revalidatePath } from "next/cache";
import { done, type FormState, refused } from "#app/form.ts";
import { sentenceOf } from "#app/messages.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getRevisions } from "#db/queries/revision.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Act } from "#lib/operations/act.ts";
import { saveRows } from "#lib/operations/save-rows.ts";

/** Adds rows to a table as it is now, for forms that stand beside it; says what is to be mended. */
export function appendRows(
  act: Act,
  { lineId, table, rows }: { lineId: string; table: RowTable; rows: readonly object[] },
  said: { form: FormData; words: string },
): FormState {
  return changeRows(act, { lineId, table, change: (before) => [...before, ...rows] }, said);
}

/** Changes a table as it is now, for forms that stand beside it; says what is to be mended. */
export function changeRows(
  act: Act,
  {
    lineId,
    table,
    change,
  }: {
    lineId: string;
    table: RowTable;
    change: (rows: readonly { readonly id: string }[]) => readonly object[];
  },
  { form, words }: { form: FormData; words: string },
): FormState {
  const file = getLineFile(act.db, lineId);
  if (file === null) return refused(sentenceOf({ reason: "not-found", detail: "" }), form);
  const base = getRevisions(act.db, lineId)[table];
  const saved = saveRows(act, { lineId, table, base, rows: change(file[table]) });
  if (saved.ok) {
    revalidatePath(`/lines/${lineId}`, "layout");
    return done(words);
  }
  const [cell] = saved.error.cells;
  if (saved.error.reason === "bad-rows" && cell !== undefined)
    return refused(cell.message, form, cell.column);
  const { reason, by } = saved.error;
  if (reason === "bad-rows") return refused("Not saved: check the row again.", form);
  return refused(sentenceOf({ reason, detail: by }), form);
}
