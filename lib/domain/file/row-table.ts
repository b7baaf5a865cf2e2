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

/** Whether this names one of those tables: what comes from a browser may name anything. */
export function isRowTable(name: unknown): name is RowTable {
  return ROW_TABLES.some((table) => table === name);
}
