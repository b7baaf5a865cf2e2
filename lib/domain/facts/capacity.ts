import {
  feet,
  maybe,
  oneOf,
  type RowOf,
  ref,
  row,
  signedFeet,
  usually,
  whole,
  words,
} from "./field.ts";
import { FIXTURES } from "./fixtures.ts";

/** Plumbing fixtures of one kind at a property or in one unit of it. */
export type FixtureCount = RowOf<typeof FIXTURE_COUNT>;

export const FIXTURE_COUNT = row({
  one: "fixture count",
  saved: "office",
  fields: {
    propertyId: ref("properties"),
    unitId: maybe(ref("units")),
    fixture: oneOf(FIXTURES),
    count: usually(whole(10_000), 1),
    note: words,
  },
});

export const LEVEL_METHODS = [
  "locator",
  "level",
  "cleanout-drop",
  "pothole",
  "as-built",
  "other",
] as const;
export type LevelMethod = (typeof LEVEL_METHODS)[number];

/** How deep and how high the pipe lies at one station, as somebody measured it. */
export type Level = RowOf<typeof LEVEL>;

export const LEVEL = row({
  one: "level",
  saved: "office",
  fields: {
    station: feet,
    /** Of the ground, above any one datum; null where only the depth is known. */
    ground: maybe(signedFeet),
    /** From the ground down to the invert. */
    depth: maybe(feet),
    /** Of the invert above the same datum, where it was measured itself. */
    invert: maybe(signedFeet),
    method: usually(oneOf(LEVEL_METHODS), "locator"),
    /** Either way; null: the usual of the method. */
    uncertainty: maybe(feet),
    note: words,
  },
});
