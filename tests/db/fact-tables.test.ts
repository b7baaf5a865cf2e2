import { getTableColumns, getTableName } from "drizzle-orm";
import type { SQLiteTable } from "drizzle-orm/sqlite-core";
import { expect, test } from "vitest";
import { openDb } from "#db/open.ts";
import * as schema from "#db/schema.ts";
import { AUTHORITY_PARTS } from "#lib/domain/facts/authority.ts";
import type { Fields } from "#lib/domain/facts/field.ts";
import { LINE_FACTS } from "#lib/domain/facts/line.ts";
import type { ListName } from "#lib/domain/facts/list-name.ts";
import { LISTS } from "#lib/domain/facts/lists.ts";
import { LIST_REFERENCES } from "#lib/domain/facts/references.ts";

const TABLES: Readonly<Record<ListName, SQLiteTable>> = schema;
const db = openDb(":memory:").$client;

interface Key {
  readonly id: number;
  readonly table: string;
  readonly from: string;
  readonly to: string;
}

/** The foreign keys of a table, each as `owner.line_id, owner.other_id > table.line_id, table.id`. */
function keysOf(table: string): string[] {
  const keys = db.pragma(`foreign_key_list("${table}")`) as Key[];
  return [...new Set(keys.map(({ id }) => id))].map((id) => {
    const parts = keys.filter((each) => each.id === id);
    return `${parts.map(({ from }) => from).join(", ")} > ${parts.map((each) => `${each.table}.${each.to}`).join(", ")}`;
  });
}

function columnOf(list: ListName, field: string): string {
  return getTableColumns(TABLES[list])[field]?.name ?? `no column for ${list}.${field}`;
}

test.each(
  LIST_REFERENCES.filter(({ inside }) => inside === null).map((each) => ({
    ...each,
    where: `${each.from}.${each.field}`,
  })),
)("the database itself holds $where to a row of $to", ({ from, field, to }) => {
  const target = getTableName(TABLES[to]);
  expect(keysOf(getTableName(TABLES[from]))).toContain(
    `line_id, ${columnOf(from, field)} > ${target}.line_id, ${target}.id`,
  );
});

test("the database itself holds a line to its authority, the authority's rule and its own option", () => {
  expect(keysOf("lines").sort()).toEqual([
    "authority_id > authorities.id",
    "authority_id, rule_id > rules.authority_id, rules.id",
    "id, option_id > work_options.line_id, work_options.id",
  ]);
});

/** Every row that has a table, by its table's name in the schema. */
const ROWS: Readonly<Record<string, { readonly fields: Fields }>> = {
  ...LISTS,
  ...AUTHORITY_PARTS,
  lines: LINE_FACTS,
};

test("the database itself holds every word of a closed set to it", () => {
  const held = db
    .prepare<[], string>("SELECT sql FROM sqlite_master WHERE type = 'trigger'")
    .pluck()
    .all()
    .join("\n");
  const tables: Readonly<Record<string, unknown>> = schema;
  for (const [list, { fields }] of Object.entries(ROWS))
    for (const [field, { holds }] of Object.entries(fields)) {
      if (holds.what !== "oneOf") continue;
      const table = tables[list] as SQLiteTable;
      const column = getTableColumns(table)[field]?.name ?? "no column";
      const words = holds.values.map((word) => `'${word}'`).join(", ");
      expect(held).toContain(`closed set: ${getTableName(table)}.${column}`);
      expect(held).toContain(`NEW.\`${column}\` NOT IN (${words})`);
    }
});
