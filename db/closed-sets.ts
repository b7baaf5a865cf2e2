import { getTableName, is } from "drizzle-orm";
import { getTableConfig, SQLiteTable } from "drizzle-orm/sqlite-core";
import * as schema from "./schema.ts";

// A column with an `enum` takes the words of its tuple and no others, in the database too. Triggers
// hold it to them instead of a CHECK: a CHECK is part of its table, so that a new word would have
// to build the whole table anew, while triggers are brought up to date whenever the words changed.

/** A trigger as the database keeps it. */
export interface ClosedSetTrigger {
  readonly name: string;
  readonly sql: string;
}

const INSERT = "_words_inserted";
const UPDATE = "_words_updated";

/** The triggers that hold every column of the schema to its closed set of words. */
export function closedSetTriggers(): ClosedSetTrigger[] {
  const exported: unknown[] = Object.values(schema);
  return exported.flatMap((each) => (is(each, SQLiteTable) ? triggersOf(each) : []));
}

/** Whether a trigger of this name is one of them, or was in an earlier version. */
export function holdsClosedSet(name: string): boolean {
  return name.endsWith(INSERT) || name.endsWith(UPDATE);
}

function triggersOf(table: SQLiteTable): ClosedSetTrigger[] {
  const name = getTableName(table);
  const closed = getTableConfig(table).columns.filter(
    ({ enumValues }) => enumValues !== undefined && enumValues.length > 0,
  );
  if (closed.length === 0) return [];
  const columns = closed.map((column) => quoted(column.name));
  const body = closed.map(
    (column) =>
      `\tSELECT RAISE(ABORT, 'closed set: ${name}.${column.name}') WHERE NEW.${quoted(column.name)} NOT IN (${literals(column.enumValues ?? [])});`,
  );
  return [
    trigger(name + INSERT, `BEFORE INSERT ON ${quoted(name)}`, body),
    trigger(name + UPDATE, `BEFORE UPDATE OF ${columns.join(", ")} ON ${quoted(name)}`, body),
  ];
}

function trigger(name: string, when: string, body: readonly string[]): ClosedSetTrigger {
  return { name, sql: `CREATE TRIGGER ${quoted(name)} ${when}\nBEGIN\n${body.join("\n")}\nEND` };
}

function quoted(name: string): string {
  return `\`${name}\``;
}

function literals(values: readonly string[]): string {
  return values.map((value) => `'${value.replaceAll("'", "''")}'`).join(", ");
}
