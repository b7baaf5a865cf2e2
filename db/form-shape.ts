import { z } from "zod";
import { FORM_FIELD_KINDS, FORM_LINES, FORM_SOURCES } from "#lib/domain/facts/form.ts";

// The parts of an authority's form as they are stored and as they come from a page.

const name = z.string().min(1, "Enter a name").max(300, "Enter at most 300 characters");
const words = z.string().max(2_000, "Enter at most 2,000 characters");
const points = z.number().min(-2_000).max(20_000);

const PlaceShape = z.object({
  page: z.int().min(1).max(1_000),
  left: points,
  top: points,
  width: points,
  height: points,
});

export const FieldsShape = z
  .object({
    name,
    kind: z.enum(FORM_FIELD_KINDS),
    lines: z.enum(FORM_LINES),
    places: PlaceShape.array(),
    hint: words,
    printed: words.default(""),
    most: z.int().min(0).nullable(),
    options: z.string().array(),
    needed: z.boolean(),
    locked: z.boolean(),
    placed: z.boolean(),
  })
  .array();

export const PagesShape = z.object({ width: points, height: points }).array();

export const MappingsShape = z
  .object({
    field: name,
    source: z.enum(FORM_SOURCES),
    fact: z.string().max(100),
    row: z.int().min(0, "Enter a number from 0 to 99").max(99, "Enter a number from 0 to 99"),
    words,
    when: z.object({ value: z.string().max(300), option: z.string().max(300) }).array(),
  })
  .array();

export const NotesShape = z.string().array();
