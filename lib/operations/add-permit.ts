import { countSave } from "#db/queries/revision.ts";
import { insertRow } from "#db/queries/row.ts";
import type { Permit, PermitKind } from "#lib/domain/facts/permit.ts";
import { permitName } from "#lib/domain/permit/say.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { ROW_SHAPES } from "#lib/exchange/rows.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine } from "./change.ts";
import { parse } from "./parse.ts";

interface NewPermit {
  readonly lineId: string;
  readonly kind: PermitKind;
  readonly number: string;
  readonly expiresOn: Day | null;
  readonly note: string;
}

/** Puts a permit into the file; its steps are recorded one by one. */
export function addPermit(
  act: Act,
  { lineId, ...input }: NewPermit,
): Result<{ permitId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "add-permit" } as const;
  return changeLine(act, deal, () => {
    const parsed = parse(ROW_SHAPES.permits, { ...input, id: act.newId() });
    if (!parsed.ok) return parsed;
    const permit: Permit = parsed.value;
    return ok({
      value: { permitId: permit.id },
      sentence: `Added ${permitName(permit)}.`,
      detail: { after: permit },
      write: (db) => {
        insertRow(db, "permits", { lineId, row: permit });
        countSave(db, { lineId, table: "permits", by: act.actor.name, at: act.now });
      },
    });
  });
}
