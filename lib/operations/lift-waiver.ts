import { removeRow } from "#db/queries/row.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find } from "./change.ts";

/** Takes a waiver back: the hold stands again. */
export function liftWaiver(
  act: Act,
  { lineId, waiverId }: { readonly lineId: string; readonly waiverId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "lift-waiver" } as const;
  return changeLine(act, deal, (file) => {
    const waiver = find(file.waivers, waiverId, { path: "waiverId", what: "the waiver" });
    if (!waiver.ok) return waiver;
    return ok({
      value: null,
      sentence: `Withdrew the waiver that ${waiver.value.by} gave: ${waiver.value.reason}`,
      detail: { before: waiver.value },
      write: (db) => void removeRow(db, "waivers", { lineId, id: waiverId }),
    });
  });
}
