import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { isSameEntry, isSameRun, isSameSeen } from "#lib/domain/facts/same-place.ts";
import type { Deed } from "#lib/domain/facts/user.ts";
import { nonsenseIn } from "#lib/domain/report/sense.ts";
import { ROW_SHAPES } from "#lib/exchange/rows.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { rowChanges, tellChanges } from "./row-changes.ts";
import { writeTables } from "./row-writes.ts";
import type { CellProblem } from "./save-rows.ts";
import { followSightings } from "./sightings.ts";

export const BRINGABLE = ["entries", "observations", "runs"] as const;
type Bringable = (typeof BRINGABLE)[number];

interface BringIn {
  readonly lineId: string;
  readonly table: Bringable;
  /**
   * The record whose entries they are, or the run that saw them; empty for runs, which stand by
   * themselves, and for observations that each name their own run.
   */
  readonly to: string;
  /** Fields as the file holds them; ids and the record or run are given here. */
  readonly rows: readonly object[];
  /** Brings in also what is at a place where the file, or an earlier row, has the same. */
  readonly doubles: boolean;
}

/** What became of the rows; they are counted from 0 as they were sent. */
export interface BroughtIn {
  readonly added: readonly number[];
  /** What is wrong with those that stayed outside. */
  readonly left: readonly CellProblem[];
  /** Those that were left out because the same is there already. */
  readonly doubles: readonly number[];
}

interface Row {
  readonly id: string;
}

interface Sorted extends BroughtIn {
  readonly rows: readonly Row[];
}

const MOST_ROWS = 5_000;
const DEEDS: Record<Bringable, Deed> = {
  entries: "work-the-file",
  observations: "record-the-field",
  runs: "record-the-field",
};

/** What a file of rows never says: it is settled by a person, or found by the program. */
const NEVER_BROUGHT: Record<Bringable, object> = {
  entries: { explanation: "", explainedBy: "", explainedOn: null },
  observations: { tieInId: null, pictureId: null, quote: "", reading: "read" },
  runs: {},
};

/**
 * Adds many rows to a record or a run at once. Those that make sense are added in one transaction,
 * the others are named with row, column and reason and stay outside; so do doubles, unless wanted.
 */
export function bringInRows(act: Act, input: BringIn): Result<BroughtIn, Refusal> {
  const { lineId, table } = input;
  const deal = { lineId, deed: DEEDS[table], action: "bring-in-rows" } as const;
  return changeLine(act, deal, (file) => {
    const owner = input.to === "" ? ok(null) : ownerOf(file, input);
    if (!owner.ok) return owner;
    if (table === "entries" && owner.value === null)
      return refuse("bad-value", "to", "Open this page again from a record");
    if (file[table].length + input.rows.length > MOST_ROWS)
      return refuse("bad-value", "rows", `A table has at most ${MOST_ROWS} rows`);
    const { rows, ...brought } = sorted(act, file, input);
    const after = withRows(act, file, { table, rows });
    const elsewhere = nonsenseIn(after)[0];
    if (elsewhere) return refuse("bad-value", elsewhere.list, elsewhere.message);
    const tables: RowTable[] = [...new Set<RowTable>([table, "observations", "tieIns"])];
    const told = tellChanges(
      { before: file, after },
      tables
        .map((each) => ({ table: each, ...rowChanges(file[each], after[each]) }))
        .filter(({ any }) => any),
    );
    return ok({
      value: brought,
      sentence: rows.length === 0 ? null : `Imported from a file: ${told.sentence}`,
      detail: told.detail,
      write: (db) => void writeTables({ ...act, db }, { before: file, after, tables }),
    });
  });
}

function ownerOf(file: LineFile, { table, to }: BringIn): Result<Row, Refusal> {
  return table === "entries"
    ? find(file.records, to, { path: "to", what: "the record" })
    : find<Row>(file.runs, to, { path: "to", what: "the run" });
}

/** Rows in their shape and with sense; what is wrong with the others; doubles. */
function sorted(act: Act, file: LineFile, input: BringIn): Sorted {
  const { table } = input;
  const good: { at: number; row: Row }[] = [];
  const left: CellProblem[] = [];
  const doubles: number[] = [];
  input.rows.forEach((fields, at) => {
    const parsed = ROW_SHAPES[table].safeParse(ownRow(act, fields, input));
    if (!parsed.success) {
      left.push(...parsed.error.issues.map((issue) => cellOf(at, issue.path, issue.message)));
      return;
    }
    const there = [...file[table], ...good.map(({ row }) => row)];
    if (!input.doubles && there.some((other) => isSame(table, other, parsed.data)))
      doubles.push(at);
    else good.push({ at, row: parsed.data });
  });
  const senseless = senselessIn(act, file, { table, good });
  const kept = good.filter(({ at }) => !senseless.some(({ row }) => row === at));
  return {
    rows: kept.map(({ row }) => row),
    added: kept.map(({ at }) => at),
    left: [...left, ...senseless],
    doubles,
  };
}

function ownRow(act: Act, fields: object, { table, to }: BringIn): object {
  const given = to === "" ? {} : OWNERS[table](to);
  return { ...fields, ...NEVER_BROUGHT[table], ...given, id: act.newId() };
}

const OWNERS: Record<Bringable, (id: string) => object> = {
  entries: (recordId) => ({ recordId }),
  observations: (runId) => ({ runId }),
  runs: () => ({}),
};

function cellOf(row: number, path: readonly PropertyKey[], message: string): CellProblem {
  return { row, column: path.map(String).join("."), message };
}

function senselessIn(
  act: Act,
  file: LineFile,
  { table, good }: { table: Bringable; good: readonly { at: number; row: Row }[] },
): CellProblem[] {
  const after = withRows(act, file, { table, rows: good.map(({ row }) => row) });
  return nonsenseIn(after).flatMap(({ list, row, path, message }) => {
    const mine = list === table ? good[row - file[table].length] : undefined;
    return mine === undefined ? [] : [cellOf(mine.at, [path], message)];
  });
}

function withRows(
  act: Act,
  file: LineFile,
  { table, rows }: { table: Bringable; rows: readonly Row[] },
): LineFile {
  const after = { ...file, [table]: [...file[table], ...rows] } as LineFile;
  return followSightings(act, after, { table, before: file });
}

function isSame(table: Bringable, a: Row, b: Row): boolean {
  if (table === "runs")
    return isSameRun(a as LineFile["runs"][number], b as LineFile["runs"][number]);
  return table === "entries"
    ? isSameEntry(a as LineFile["entries"][number], b as LineFile["entries"][number])
    : isSameSeen(a as LineFile["observations"][number], b as LineFile["observations"][number]);
}
