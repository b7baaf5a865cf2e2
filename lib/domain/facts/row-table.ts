import { LIST_NAMES, type ListName } from "./list-name.ts";
import { LISTS } from "./lists.ts";
import type { Deed } from "./user.ts";

type Saved = { [L in ListName]: (typeof LISTS)[L]["saved"] extends null ? never : L };

/** The lists of a line's file that people fill as tables and save whole. */
export type RowTable = Saved[ListName];

export const ROW_TABLES: readonly RowTable[] = LIST_NAMES.filter(isRowTable);

/** What somebody has to be allowed to do to save such a table. */
export function deedOfTable(table: RowTable): Deed {
  return LISTS[table].saved === "field" ? "record-the-field" : "work-the-file";
}

/** Whether this names one of those tables: what comes from a browser may name anything. */
export function isRowTable(name: unknown): name is RowTable {
  return LIST_NAMES.some((list) => list === name && LISTS[list].saved !== null);
}
