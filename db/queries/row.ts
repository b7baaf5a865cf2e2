import { and, eq, getTableColumns, max, sql } from "drizzle-orm";
import type { SQLiteColumn, SQLiteTable } from "drizzle-orm/sqlite-core";
import type { Db } from "#db/open.ts";
import * as schema from "#db/schema.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";

/** A table of rows that belong to a line and keep the order that people gave them. */
type OwnedTable = SQLiteTable & {
  readonly lineId: SQLiteColumn;
  readonly id: SQLiteColumn;
  readonly position: SQLiteColumn;
};

/** The lists of a line's file that are kept as rows; the history is only ever added to. */
export type RowList = Exclude<keyof LineFile, "line" | "authority" | "history">;

/** One row of a list, as the domain knows it. */
export type RowOf<L extends RowList> = LineFile[L][number];

const TABLES: { readonly [L in RowList]: OwnedTable } = {
  properties: schema.properties,
  units: schema.units,
  parties: schema.parties,
  roles: schema.roles,
  sameParties: schema.sameParties,
  points: schema.points,
  crossings: schema.crossings,
  land: schema.land,
  tieIns: schema.tieIns,
  bends: schema.bends,
  fixedPoints: schema.fixedPoints,
  ties: schema.ties,
  planShapes: schema.planShapes,
  planPictures: schema.planPictures,
  records: schema.records,
  entries: schema.entries,
  runs: schema.runs,
  anchors: schema.anchors,
  gaps: schema.gaps,
  observations: schema.observations,
  narrations: schema.narrations,
  videos: schema.videos,
  alignments: schema.alignments,
  pairings: schema.pairings,
  tests: schema.tests,
  testDays: schema.testDays,
  rulings: schema.rulings,
  waivers: schema.waivers,
  agreements: schema.agreements,
  agreementSteps: schema.agreementSteps,
  fixtures: schema.fixtures,
  levels: schema.levels,
  options: schema.options,
  changeOrders: schema.changeOrders,
  scope: schema.scope,
  splits: schema.splits,
  digAreas: schema.digAreas,
  notices: schema.notices,
  deliveries: schema.deliveries,
  replies: schema.replies,
  householdCalls: schema.householdCalls,
  rollCall: schema.rollCall,
  consents: schema.consents,
  signatures: schema.signatures,
  ledger: schema.ledger,
  permits: schema.permits,
  permitSteps: schema.permitSteps,
  requirementMarks: schema.requirementMarks,
  locateTickets: schema.locateTickets,
  inspections: schema.inspections,
  events: schema.events,
  reconnections: schema.reconnections,
  built: schema.built,
  spillSteps: schema.spillSteps,
  uploads: schema.uploads,
};

/** The rows of one list of a line, in order, as domain objects. */
export function listRows<T extends OwnedTable>(
  db: Db,
  table: T,
  lineId: string,
): Omit<T["$inferSelect"], "lineId" | "position">[] {
  return selectOf(db, table).all({ lineId }) as Omit<T["$inferSelect"], "lineId" | "position">[];
}

interface Select {
  all(values: { readonly lineId: string }): unknown[];
}

/** A database's selects, each written and prepared once; a transaction is on its own database’s session. */
const prepared = new WeakMap<object, Map<OwnedTable, Select>>();

function selectOf(db: Db, table: OwnedTable): Select {
  const session: object = Reflect.get(db, "session");
  const selects = prepared.get(session) ?? new Map<OwnedTable, Select>();
  prepared.set(session, selects);
  const known = selects.get(table);
  if (known !== undefined) return known;
  const { lineId: _lineId, position: _position, ...columns } = getTableColumns(table);
  const made = db
    .select(columns as Record<string, SQLiteColumn>)
    .from(table as SQLiteTable)
    .where(eq(table.lineId, sql.placeholder("lineId")))
    .orderBy(table.position)
    .prepare();
  selects.set(table, made);
  return made;
}

/** Adds a row, at the end unless a position is given. */
export function insertRow<L extends RowList>(
  db: Db,
  list: L,
  { lineId, row, position }: { lineId: string; row: RowOf<L>; position?: number },
): void {
  const at = position ?? endOf(db, list, lineId);
  db.insert(TABLES[list] as SQLiteTable)
    .values({ ...row, lineId, position: at })
    .run();
}

/** Puts a row in the place of the one with its id; says whether there was one. */
export function updateRow<L extends RowList>(
  db: Db,
  list: L,
  { lineId, row, position }: { lineId: string; row: RowOf<L>; position?: number },
): boolean {
  const { id, ...values } = row;
  const table = TABLES[list];
  const changed = db
    .update(table as SQLiteTable)
    .set(position === undefined ? values : { ...values, position })
    .where(and(eq(table.lineId, lineId), eq(table.id, id)))
    .run();
  return changed.changes > 0;
}

/** Takes a row out; says whether it was there. */
export function removeRow(
  db: Db,
  list: RowList,
  { lineId, id }: { lineId: string; id: string },
): boolean {
  const table = TABLES[list];
  const gone = db
    .delete(table as SQLiteTable)
    .where(and(eq(table.lineId, lineId), eq(table.id, id)))
    .run();
  return gone.changes > 0;
}

/**
 * Lets rows refer to one another in any order until the transaction ends, where every reference
 * must hold.
 */
export function checkReferencesAtEnd(db: Db): void {
  db.run(sql`PRAGMA defer_foreign_keys = ON`);
}

function endOf(db: Db, list: RowList, lineId: string): number {
  const table = TABLES[list];
  const last = db
    .select({ position: max(table.position) })
    .from(table as SQLiteTable)
    .where(eq(table.lineId, lineId))
    .get();
  return Number(last?.position ?? -1) + 1;
}

/** Every list of a line's file that is kept as rows. */
export const ROW_LISTS = Object.keys(TABLES) as RowList[];
