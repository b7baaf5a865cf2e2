import type { z } from "zod";
import { AUTHORITY, AUTHORITY_PARTS, eachPart } from "#lib/domain/facts/authority.ts";
import type { Field, Fields, Holds, ValuesOf } from "#lib/domain/facts/field.ts";
import { LINE_FACTS } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LIST_NAMES, type ListName } from "#lib/domain/facts/list-name.ts";
import { LISTS } from "#lib/domain/facts/lists.ts";
import { type FieldShapes, fieldsFor, type Use } from "./field.ts";

// The shape of every part of a line's file, as it follows from what the rows are made of. Whatever has
// a usual value may be left out; whatever is written out again is complete, its fields in order.

/** The shape of an object whose fields are known. */
type ShapeOf<F extends Fields> = z.ZodObject<{ [K in keyof F]: z.ZodType<ValuesOf<F>[K]> }>;

/** The shape of one row of each list of a line's file. */
export function rowShapes(use: Use): {
  readonly [L in ListName]: z.ZodType<LineFile[L][number]>;
} {
  const by = shaperFor(use);
  return Object.fromEntries(
    LIST_NAMES.map((list) => [list, rowShape(LISTS[list].fields, by)]),
  ) as never;
}

/** What shapes are made with; fields that are alike share one, so that the schema says it once. */
interface Shaper {
  readonly f: FieldShapes;
  readonly known: Map<object, z.ZodType>;
}

function shaperFor(use: Use): Shaper {
  return { f: fieldsFor(use), known: new Map() };
}

/** The shape of an object that has these fields. */
function rowShape<F extends Fields>(fields: F, by: Shaper): ShapeOf<F> {
  return by.f.row(shapesOf(fields, by));
}

function shapesOf<F extends Fields>(fields: F, by: Shaper): ShapeOf<F>["shape"] {
  const shapes = Object.entries(fields).map(([name, field]) => [name, shapeOf(field, by)]);
  return Object.fromEntries(shapes) as ShapeOf<F>["shape"];
}

function shapeOf({ holds, nullable, usual }: Field, by: Shaper): z.ZodType {
  const held = once(by, holds, () => heldShape(holds, by));
  if (usual === null) return held;
  return once(by, usual, () => {
    if (nullable) return held.nullable().default(null);
    // Of an address that is left out nothing is known: each of its parts says what that is.
    return holds.what === "inside" ? held.prefault({}) : held.default(usual.value);
  });
}

function once({ known }: Shaper, of: object, make: () => z.ZodType): z.ZodType {
  const shape = known.get(of) ?? make();
  known.set(of, shape);
  return shape;
}

function heldShape(holds: Holds, by: Shaper): z.ZodType {
  const { f } = by;
  switch (holds.what) {
    case "name":
      return f.name(holds.asks);
    case "ref":
      return f.ref(holds.asks ?? LISTS[holds.to].one);
    case "refs":
      return f.ref(LISTS[holds.to].one).array();
    case "idOf":
      return f.ref(holds.asks);
    case "oneOf":
      return f.oneOf(holds.values);
    case "whole":
    case "from1":
    case "decimal":
    case "degrees":
      return f[holds.what](holds.most);
    case "inside":
      return rowShape(holds.fields, by);
    case "several":
      return rowShape(holds.fields, by).array();
    default:
      return f[holds.what];
  }
}

/** Pages beside those of the lines, by the last word of their address. */
const TAKEN = ["new", "import"];

/** The facts about the line itself. */
export function lineShape(use: Use): z.ZodType<LineFile["line"]> {
  const by = shaperFor(use);
  const id = by.f.id
    .refine(
      (text) => !TAKEN.includes(text),
      "This word names another page; give the line another ID",
    )
    .default("line");
  return by.f.row({ ...shapesOf(LINE_FACTS.fields, by), id }) as never;
}

/** An authority with everything that it asks for; its parts may leave out whose they are. */
export function authorityShape(use: Use): z.ZodType<NonNullable<LineFile["authority"]>> {
  const by = shaperFor(use);
  const parts = eachPart((part) =>
    rowShape(AUTHORITY_PARTS[part].fields as Fields, by)
      .array()
      .default([]),
  );
  return by.f.row({ ...shapesOf(AUTHORITY.fields, by), ...parts }) as never;
}

/** The shape of fields that stand outside of any list. */
export function fieldsShape<F extends Fields>(fields: F, use: Use): ShapeOf<F> {
  return rowShape(fields, shaperFor(use));
}
