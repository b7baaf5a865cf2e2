import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import type { Run } from "#lib/domain/facts/run.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

/**
 * Says that a run's footage is measured from the main, as its technician does. Refused where the run
 * has a log or anchors already: their readings would all move.
 */
export function measureFromMain(
  act: Act,
  { lineId, runId }: { readonly lineId: string; readonly runId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "measure-from-main" } as const;
  return changeLine(act, deal, (file) => {
    const run = find(file.runs, runId, { path: "runId", what: "the run" });
    if (!run.ok) return run;
    const counted = [...file.observations, ...file.gaps, ...file.anchors].some(
      (row) => row.runId === runId,
    );
    if (counted)
      return refuse(
        "in-use",
        "runId",
        `${run.value.name} has readings already, which would all move. Look them over, and change what it is measured from in the table of runs`,
      );
    const row: Run = { ...run.value, measuredFrom: "main" };
    return ok({
      value: null,
      sentence: `${run.value.name} is measured from the main, as was said.`,
      detail: { before: run.value.measuredFrom, after: row.measuredFrom },
      write: (db) => {
        updateRow(db, "runs", { lineId, row });
        countSave(db, { lineId, table: "runs", by: act.actor.name, at: act.now });
      },
    });
  });
}
