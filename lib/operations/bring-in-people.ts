import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { listed } from "#lib/domain/party/listed.ts";
import type { ListedFields } from "#lib/domain/party/listed-row.ts";
import { nonsenseIn } from "#lib/domain/report/sense.ts";
import { LISTED_ROW } from "#lib/exchange/listed-row.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import type { BroughtIn } from "./bring-in-rows.ts";
import { changeLine, refuse } from "./change.ts";
import { rowChanges, tellChanges } from "./row-changes.ts";
import { writeTables } from "./row-writes.ts";
import type { CellProblem } from "./save-rows.ts";

const TABLES = ["properties", "units", "parties", "roles"] as const satisfies readonly RowTable[];
const MOST_ROWS = 5_000;

/**
 * Adds a list of owners to the properties and people of a line, in one transaction. Rows that can't
 * be read, or that contradict what is on file under the same name, are named with column and reason
 * and stay outside; what is on file already is left as it is.
 */
export function bringInPeople(
  act: Act,
  { lineId, rows }: { readonly lineId: string; readonly rows: readonly object[] },
): Result<BroughtIn, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "bring-in-people" } as const;
  return changeLine(act, deal, (file) => {
    if (!Array.isArray(rows) || rows.length > MOST_ROWS)
      return refuse("bad-value", "rows", `A list has at most ${MOST_ROWS} rows`);
    const { good, left } = parsed(rows);
    const listing = listed(
      file,
      good.map(({ fields }) => fields),
      act.newId,
    );
    const after: LineFile = { ...file, ...listing.after };
    const wrong = nonsenseIn(after)[0];
    if (wrong) return refuse("bad-value", wrong.list, wrong.message);
    const changed = TABLES.map((table) => ({ table, ...rowChanges(file[table], after[table]) }));
    const told = tellChanges(
      { before: file, after },
      changed.filter(({ any }) => any),
    );
    const outcome = outcomeOf(good, listing.rows);
    const any = changed.some((each) => each.any);
    return ok({
      value: { ...outcome, left: [...left, ...outcome.left] },
      sentence: any ? `Imported from a list of owners: ${told.sentence}` : null,
      detail: told.detail,
      write: (db) => void writeTables({ ...act, db }, { before: file, after, tables: TABLES }),
    });
  });
}

interface Good {
  readonly at: number;
  readonly fields: ListedFields;
}

function parsed(rows: readonly object[]): { good: Good[]; left: CellProblem[] } {
  const good: Good[] = [];
  const left: CellProblem[] = [];
  rows.forEach((row, at) => {
    const read = LISTED_ROW.safeParse(row);
    if (read.success) good.push({ at, fields: read.data });
    else
      for (const { path, message } of read.error.issues)
        left.push({ row: at, column: path.map(String).join("."), message });
  });
  return { good, left };
}

function outcomeOf(good: readonly Good[], rows: ReturnType<typeof listed>["rows"]): BroughtIn {
  const added: number[] = [];
  const left: CellProblem[] = [];
  const doubles: number[] = [];
  good.forEach(({ at }, index) => {
    const row = rows[index];
    if (row === undefined) return;
    if (row.problems.length > 0)
      left.push(...row.problems.map(({ column, message }) => ({ row: at, column, message })));
    else if (row.there) doubles.push(at);
    else added.push(at);
  });
  return { added, left, doubles };
}
