import { getLineFile } from "#db/queries/line-file.ts";
import { getLastSave, getRevisions } from "#db/queries/revision.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { danglingReferences, nameRow } from "#lib/domain/facts/references.ts";
import { deedOfTable, isRowTable, type RowTable } from "#lib/domain/facts/row-table.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { type Nonsense, nonsenseIn } from "#lib/domain/report/sense.ts";
import { ROW_SHAPES } from "#lib/exchange/rows.ts";
import { err, ok, type Result } from "#lib/result.ts";
import type { Act } from "./act.ts";
import { callFirstCells } from "./call-first.ts";
import { closedWords } from "./change.ts";
import { correctionCells, correctionRemoval } from "./correction-guard.ts";
import { inspectionCells } from "./inspection-guard.ts";
import { settledElsewhere } from "./row-guard.ts";
import { saveTables } from "./row-writes.ts";
import { heldCells, orderCells, removalWords } from "./scope-guard.ts";
import { followSightings } from "./sightings.ts";
import { oddlyTyped, statesWritten } from "./typed-cells.ts";

/** What is wrong in one cell; `row` counts the rows that were sent, from 0. */
export interface CellProblem {
  readonly row: number;
  readonly column: string;
  readonly message: string;
}

/** Why a table was not saved. Nothing was written. */
export interface RowsRefusal {
  readonly reason:
    | "not-allowed"
    | "changed-meanwhile"
    | "bad-rows"
    | "bad-value"
    | "not-found"
    | "in-use"
    | "not-in-this-state";
  readonly cells: readonly CellProblem[];
  /** Who saved it meanwhile; for `in-use`, who names what was to be removed; for a closed file, since when. */
  readonly by: string;
  readonly at: string;
}

export interface RowsSaved {
  readonly revision: number;
  /** Rows that are kept otherwise than they came: trimmed, say, or with the tie-in that they show. */
  readonly otherwise: readonly { readonly id: string }[];
}

/** As it comes from a browser: nothing of it is known to be what it should be. */
interface RowsInput {
  readonly lineId: string;
  /** One of `ROW_TABLES`; anything else is refused. */
  readonly table: unknown;
  /** The revision that the rows were read at: a whole number. */
  readonly base: unknown;
  /** The rows in their order; with `order`, only those that are new or changed. */
  readonly rows: unknown;
  /** The ids of all rows in their order, where `rows` are not all of them. */
  readonly order?: unknown;
}

interface RowsOrder {
  readonly lineId: string;
  readonly table: RowTable;
  readonly base: number;
  readonly rows: readonly unknown[];
  readonly order: readonly string[] | null;
}

const MOST_ROWS = 5_000;

/**
 * Saves one table of a line whole: rows that are new are added, those that are gone are removed,
 * the order is kept. Refuses any list that is no such table (letters, splits, consents, signatures
 * and money have operations of their own), where somebody saved it since `base`, where a cell makes no
 * sense, and where something else names a row that would be gone.
 */
export function saveRows(act: Act, input: RowsInput): Result<RowsSaved, RowsRefusal> {
  const order = orderOf(input);
  if (order === null) return refuseRows("bad-value", { by: NO_TABLE });
  if (!mayDo(act.actor.role, deedOfTable(order.table))) return refuseRows("not-allowed");
  return act.db.transaction((db) => saveIn({ ...act, db }, order), { behavior: "immediate" });
}

const ODD_ORDER = "The rows do not fit the table as it stands; reload the page and try again";
const NO_TABLE = "This is no table that is saved as rows; reload the page and try again";

function orderOf({ lineId, table, base, rows, order }: RowsInput): RowsOrder | null {
  if (!isRowTable(table) || !Array.isArray(rows)) return null;
  if (typeof base !== "number" || !Number.isInteger(base)) return null;
  if (order === undefined) return { lineId, table, base, rows, order: null };
  if (!Array.isArray(order) || !order.every((id) => typeof id === "string")) return null;
  return { lineId, table, base, rows, order };
}

/** The whole table in its order: what was sent, else as it stands; null where an id is neither. */
function wholeTable(file: LineFile, { table, rows, order }: RowsOrder): readonly unknown[] | null {
  if (order === null) return rows;
  const known = new Map<unknown, unknown>(file[table].map((row) => [row.id, row]));
  for (const row of rows) known.set(idIn(row), row);
  const whole = order.map((id) => known.get(id));
  const named = new Set<unknown>(order);
  const fits = named.size === order.length && rows.every((row) => named.has(idIn(row)));
  return fits && whole.every((row) => row !== undefined) ? whole : null;
}

function idIn(row: unknown): unknown {
  return typeof row === "object" && row !== null ? Reflect.get(row, "id") : undefined;
}

function saveIn(act: Act, input: RowsOrder): Result<RowsSaved, RowsRefusal> {
  const { lineId, table, base } = input;
  const file = getLineFile(act.db, lineId);
  if (file === null) return refuseRows("not-found", { by: "the line" });
  const closed = closedWords(file);
  if (closed !== null) return refuseRows("not-in-this-state", { by: closed });
  const revision = getRevisions(act.db, lineId)[table];
  if (base !== revision) {
    const last = getLastSave(act.db, { lineId, table });
    return refuseRows("changed-meanwhile", last ?? {});
  }
  const whole = wholeTable(file, input);
  if (whole === null) return refuseRows("bad-value", { by: ODD_ORDER });
  const parsed = parseRows(table, whole, new Set<unknown>(file[table]));
  if (!parsed.ok) return parsed;
  const typed = statesWritten({ ...file, [table]: parsed.value }, { table, before: file });
  const wanted = followSightings(act, typed, { table, before: file });
  const refusal = refusalOf(act, { table, before: file, after: wanted });
  if (refusal !== null) return err(refusal);
  const states = { before: file, after: wanted };
  const written = saveTables(act, { ...states, tables: [table, "observations", "tieIns"] });
  const own = written.find((each) => each.table === table);
  return ok({
    revision: own?.revision ?? revision,
    otherwise: wanted[table].filter((row, at) => !isAsSent(row, whole[at])),
  });
}

function isAsSent(row: object, sent: unknown): boolean {
  return Object.entries(row).every(
    ([name, value]) => JSON.stringify(value) === JSON.stringify(Reflect.get(Object(sent), name)),
  );
}

/** The rows in their shape, or every cell that has none; those that are stored as they are have theirs. */
function parseRows<T extends RowTable>(
  table: T,
  rows: readonly unknown[],
  stored: ReadonlySet<unknown>,
): Result<LineFile[T], RowsRefusal> {
  if (rows.length > MOST_ROWS) {
    const message = `A table has at most ${MOST_ROWS} rows; these are ${rows.length}`;
    return refuseRows("bad-rows", { cells: [{ row: MOST_ROWS, column: "id", message }] });
  }
  const good: unknown[] = [];
  const cells: CellProblem[] = [];
  rows.forEach((row, at) => {
    if (stored.has(row)) {
      good.push(row);
      return;
    }
    const parsed = ROW_SHAPES[table].safeParse(row);
    if (parsed.success) good.push(parsed.data);
    else
      for (const { path, message } of parsed.error.issues)
        cells.push({ row: at, column: columnOf(path.join("."), row), message });
  });
  if (cells.length > 0) return refuseRows("bad-rows", { cells });
  return ok(good as unknown as LineFile[T]);
}

function refusalOf(
  act: Act,
  pair: { table: RowTable; before: LineFile; after: LineFile },
): RowsRefusal | null {
  const { table, before, after } = pair;
  const rows = after[table] as readonly unknown[];
  const wrong = nonsenseIn(after);
  const own = wrong.filter(({ list }) => list === table);
  const cells = [
    ...settledElsewhere(pair),
    ...orderCells(pair),
    ...oddlyTyped(pair),
    ...heldCells(pair, act.today),
    ...callFirstCells(pair, act.today),
    ...correctionCells(pair, act.today),
    ...inspectionCells(pair),
    ...own.map(({ row, path, message }) => ({ row, column: columnOf(path, rows[row]), message })),
  ];
  if (cells.length > 0) return { reason: "bad-rows", cells, by: "", at: "" };
  const stays = removalWords(pair) ?? correctionRemoval(pair);
  if (stays !== null) return { reason: "not-in-this-state", cells: [], by: stays, at: "" };
  const [elsewhere] = wrong;
  return elsewhere ? inUse(before, after, elsewhere) : null;
}

/** Something in another table rests on what would be gone or become another. */
function inUse(before: LineFile, after: LineFile, elsewhere: Nonsense): RowsRefusal {
  const { list, row, path, message } = elsewhere;
  const { id } = (after[list] as readonly { id: string }[])[row] ?? { id: "" };
  const namer = nameRow(before, list, id);
  const gone = danglingReferences(after).find(
    (each) => each.from === list && each.row === row && each.path === path,
  );
  const by = gone
    ? `${nameRow(before, gone.to, gone.id)} is named by ${namer}`
    : `${namer}: ${message}`;
  return { reason: "in-use", cells: [], by, at: "" };
}

/** `address.street`; a member of a list by what it is for: `shares[propertyId=p1].parts`. */
function columnOf(path: string, row: unknown): string {
  const inList = /^(\w+)\.(\d+)\.(\w+)$/.exec(path);
  if (!inList) return path;
  const [, list = "", at = "", field = ""] = inList;
  const members = (row as Record<string, unknown>)[list];
  const member = Array.isArray(members) ? (members[Number(at)] as Record<string, unknown>) : {};
  return `${list}[propertyId=${String(member?.["propertyId"] ?? "")}].${field}`;
}

function refuseRows(
  reason: RowsRefusal["reason"],
  rest: Partial<Omit<RowsRefusal, "reason">> = {},
): { readonly ok: false; readonly error: RowsRefusal } {
  return { ok: false, error: { reason, cells: [], by: "", at: "", ...rest } };
}
