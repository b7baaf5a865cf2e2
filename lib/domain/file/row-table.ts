/** The parts of a line's file that people fill as tables and save whole. */
export const ROW_TABLES = [
  "properties",
  "units",
  "parties",
  "roles",
  "points",
  "crossings",
  "tieIns",
  "records",
  "entries",
  "runs",
  "anchors",
  "gaps",
  "observations",
  "tests",
  "agreements",
  "scope",
  "locateTickets",
  "inspections",
  "events",
  "permits",
] as const;
export type RowTable = (typeof ROW_TABLES)[number];
