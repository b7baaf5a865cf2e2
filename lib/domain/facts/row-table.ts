import type { Deed } from "./user.ts";

/** The parts of a line's file that people fill as tables and save whole. */
export const ROW_TABLES = [
  "properties",
  "units",
  "parties",
  "roles",
  "points",
  "crossings",
  "land",
  "tieIns",
  "bends",
  "fixedPoints",
  "ties",
  "planShapes",
  "planPictures",
  "records",
  "entries",
  "runs",
  "anchors",
  "gaps",
  "observations",
  "tests",
  "agreements",
  "fixtures",
  "levels",
  "options",
  "changeOrders",
  "scope",
  "locateTickets",
  "inspections",
  "events",
  "permits",
  "digAreas",
  "spillSteps",
  "reconnections",
] as const;
export type RowTable = (typeof ROW_TABLES)[number];

/** What the field enters by itself; all else is office work. */
const FIELD_TABLES: readonly RowTable[] = [
  "runs",
  "anchors",
  "gaps",
  "observations",
  "tests",
  "ties",
  "reconnections",
];

/** What somebody has to be allowed to do to save such a table. */
export function deedOfTable(table: RowTable): Deed {
  return FIELD_TABLES.includes(table) ? "record-the-field" : "work-the-file";
}

/** Whether this names one of those tables: what comes from a browser may name anything. */
export function isRowTable(name: unknown): name is RowTable {
  return ROW_TABLES.some((table) => table === name);
}
