import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { cutAt, overshoots } from "#lib/domain/split/overshoot.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

/**
 * Ends priced work at the last tie-in, which it reaches past by no more than that tie-in's station may
 * be off. Its price stays as it is. Refuses work that ends elsewhere.
 */
export function cutToTieIn(
  act: Act,
  { lineId, itemId }: { readonly lineId: string; readonly itemId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "cut-to-tie-in" } as const;
  return changeLine(act, deal, (file) => {
    const item = find(file.scope, itemId, { path: "itemId", what: "the work" });
    if (!item.ok) return item;
    const past = overshoots(file, reportOn(file, act.today).tieIns).find(
      (each) => each.itemId === itemId,
    );
    if (past === undefined)
      return refuse("not-in-this-state", "", "It no longer ends past the last tie-in");
    const after = cutAt(item.value, past.end);
    return ok({
      value: null,
      sentence: `Shortened “${item.value.title}” to ${past.tieIn}, the last tie-in.`,
      detail: { before: item.value, after },
      write: (db) => {
        updateRow(db, "scope", { lineId, row: after });
        countSave(db, { lineId, table: "scope", by: act.actor.name, at: act.now });
      },
    });
  });
}
