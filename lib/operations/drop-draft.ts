import { removeRow } from "#db/queries/row.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine } from "./change.ts";
import { findDraft } from "./draft.ts";

/** Throws a draft away. What was sent stays. */
export function dropDraft(
  act: Act,
  { lineId, noticeId }: { readonly lineId: string; readonly noticeId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "drop-draft" } as const;
  return changeLine(act, deal, (file) => {
    const draft = findDraft(file, noticeId);
    if (!draft.ok) return draft;
    return ok({
      value: null,
      sentence: `Dropped the draft ${nameRow(file, "notices", noticeId)}.`,
      detail: { before: draft.value },
      write: (db) => void removeRow(db, "notices", { lineId, id: noticeId }),
    });
  });
}
