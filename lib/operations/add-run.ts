import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Run } from "#lib/domain/facts/run.ts";
import { nonsenseIn } from "#lib/domain/report/sense.ts";
import { endingAnchor } from "#lib/domain/run/ending-anchor.ts";
import { ROW_SHAPES } from "#lib/exchange/rows.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { parse } from "./parse.ts";
import { rowChanges, tellChanges } from "./row-changes.ts";
import { writeTables } from "./row-writes.ts";

const TABLES = ["runs", "anchors"] as const satisfies readonly RowTable[];

/**
 * Adds one pass of the camera. One that ended at the main is tied to it there, by its last reading.
 * Refuses a run that makes no sense, and one more than a line takes.
 */
export function addRun(
  act: Act,
  { lineId, run }: { readonly lineId: string; readonly run: object },
): Result<{ runId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "add-run" } as const;
  return changeLine(act, deal, (file) => {
    const parsed = parse(ROW_SHAPES.runs, { ...run, id: act.newId() });
    if (!parsed.ok) return parsed;
    const after = withRun(act, file, parsed.value as Run);
    const [wrong] = nonsenseIn(after);
    if (wrong) return refuse("bad-value", wrong.path, wrong.message);
    const changed = TABLES.map((table) => ({ table, ...rowChanges(file[table], after[table]) }));
    const told = tellChanges(
      { before: file, after },
      changed.filter(({ any }) => any),
    );
    return ok({
      value: { runId: (parsed.value as Run).id },
      sentence: told.sentence,
      detail: told.detail,
      write: (db) => void writeTables({ ...act, db }, { before: file, after, tables: TABLES }),
    });
  });
}

function withRun(act: Act, file: LineFile, run: Run): LineFile {
  const anchor = endingAnchor(run);
  return {
    ...file,
    runs: [...file.runs, run],
    anchors: anchor === null ? file.anchors : [...file.anchors, { ...anchor, id: act.newId() }],
  };
}
