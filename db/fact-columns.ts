import {
  customType,
  integer,
  real,
  type SQLiteColumnBuilderBase,
  text,
} from "drizzle-orm/sqlite-core";
import { z } from "zod";
import type { Field, Fields, Holds, Plain } from "#lib/domain/facts/field.ts";

// The columns of a table of facts, as they follow from what its rows are made of. Field names are the
// domain's, so that a selected row is a domain object; column names put the unit last.

type Column<T> = SQLiteColumnBuilderBase<{
  name: string;
  dataType: "custom";
  columnType: "FactColumn";
  data: NonNullable<T>;
  driverParam: unknown;
  enumValues: undefined;
}> &
  (null extends T ? unknown : { _: { notNull: true } });

export type FactColumns<F extends Fields> = {
  [K in keyof F]: F[K] extends Field<infer T> ? Column<T> : never;
};

/** Columns that are not called after their field and its unit. */
export type ColumnNames<F extends Fields> = { readonly [K in keyof F]?: string };

/** A column for each field. */
export function factColumns<F extends Fields>(
  fields: F,
  named: ColumnNames<F> = {},
): FactColumns<F> {
  const columns = Object.entries(fields).map(([name, field]) => [
    name,
    columnOf(field, named[name] ?? columnName(name, field.holds)),
  ]);
  return Object.fromEntries(columns) as FactColumns<F>;
}

/** `tieInId` is `tie_in_id`, in the database's way of writing. */
export function snake(name: string): string {
  return name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

const UNITS: Partial<Record<Holds["what"], string>> = {
  feet: "cft",
  signedFeet: "cft",
  inches: "in",
  degrees: "deg",
  scale: "ppm",
  quantity: "hundredths",
  percent: "bp",
  cents: "cents",
  sum: "cents",
  inside: "json",
  several: "json",
  refs: "json",
};

function columnName(name: string, { what }: Holds): string {
  const unit = UNITS[what];
  return unit === undefined ? snake(name) : `${snake(name)}_${unit}`;
}

/** What all builders of columns can do. */
interface Builder {
  notNull(): Builder;
  default(value: unknown): Builder;
}

function columnOf({ holds, nullable, usual, late }: Field, name: string): Builder {
  const plain = builderOf(holds, name);
  if (nullable) return plain;
  return late && usual !== null ? plain.notNull().default(usual.value) : plain.notNull();
}

function builderOf(holds: Holds, name: string): Builder {
  switch (holds.what) {
    case "oneOf":
      return text(name, { enum: [...holds.values] as [string, ...string[]] });
    case "yesNo":
      return integer(name, { mode: "boolean" });
    case "inside":
    case "several":
    case "refs":
      return json(name, storedShape(holds));
    case "name":
    case "ref":
    case "idOf":
      return text(name);
    case "whole":
    case "from1":
      return integer(name);
    case "decimal":
    case "degrees":
      return real(name);
    default:
      return plainBuilder(holds.what, name);
  }
}

const WHOLE: ReadonlySet<Plain> = new Set([
  "feet",
  "signedFeet",
  "scale",
  "quantity",
  "percent",
  "cents",
  "sum",
]);
const REAL: ReadonlySet<Plain> = new Set(["inches", "clock", "parts"]);

function plainBuilder(what: Plain, name: string): Builder {
  if (WHOLE.has(what)) return integer(name);
  return REAL.has(what) ? real(name) : text(name);
}

/** A JSON text that is parsed by its shape whenever it is read. */
export function json<T>(name: string, shape: z.ZodType<T>) {
  return customType<{ data: T; driverData: string }>({
    dataType: () => "text",
    toDriver: (value) => JSON.stringify(value),
    fromDriver: (value) => shape.parse(JSON.parse(value)),
  })(name);
}

/** What was stored was looked at when it came in: only its kind is asked for, and what it may lack. */
function storedShape(holds: Holds): z.ZodType {
  switch (holds.what) {
    case "inside":
      return z.object(storedShapes(holds.fields));
    case "several":
      return z.array(z.object(storedShapes(holds.fields)));
    case "refs":
      return z.array(z.string());
    case "oneOf":
      return z.enum(holds.values);
    case "yesNo":
      return z.boolean();
    default:
      return isNumber(holds) ? z.number() : z.string();
  }
}

function storedShapes(fields: Fields): Record<string, z.ZodType> {
  const shapes = Object.entries(fields).map(([name, { holds, nullable, usual }]) => {
    const shape = nullable ? storedShape(holds).nullable() : storedShape(holds);
    return [name, usual === null ? shape : shape.default(usual.value)];
  });
  return Object.fromEntries(shapes);
}

function isNumber({ what }: Holds): boolean {
  const plain = what as Plain;
  return (
    WHOLE.has(plain) || REAL.has(plain) || ["whole", "from1", "decimal", "degrees"].includes(what)
  );
}
