import { usualRow } from "#lib/domain/facts/field.ts";
import { LISTS } from "#lib/domain/facts/lists.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";

type Values = Readonly<Record<string, unknown>>;

/** What a row of a table holds before anybody typed: the usual values of its list, and a page's own. */
export function newRow(table: RowTable, blank: Values = {}): Values {
  return { ...usualRow(LISTS[table]), ...blank };
}
