import {
  day,
  decimal,
  feet,
  maybe,
  name,
  oneOf,
  percent,
  type RowOf,
  ref,
  row,
  words,
} from "./field.ts";
import { pipe } from "./line.ts";

/** What was carried out, as a named person says or an as-built drawing shows. */
export type BuiltWork = RowOf<typeof BUILT_WORK>;

export const BUILT_WORK = row({
  one: "work done",
  fields: {
    /** The scope item that it was; null: the whole work, as on an as-built drawing. */
    itemId: maybe(ref("scope")),
    /** The day on which it was done. */
    on: day,
    /** Who says so. */
    by: name("who says so"),
    /** What was built, and where it differs from what was priced. */
    words,
    uploadId: maybe(ref("uploads")),
  },
});

/** What was done to the pipe at a place. */
const BUILT_KINDS = [
  "replaced",
  "lined",
  "burst",
  "repaired",
  "reconnected",
  "capped",
  "cleanout",
  "other",
] as const;
export type BuiltKind = (typeof BUILT_KINDS)[number];

/**
 * A piece of the work as it was measured once it was built. It counts once somebody is named who
 * measured it, with the day (closing/built-parts.ts).
 */
export type BuiltPiece = RowOf<typeof BUILT_PIECE>;

export const BUILT_PIECE = row({
  one: "as-built measurement",
  most: 300,
  saved: "field",
  fields: {
    kind: oneOf(BUILT_KINDS),
    /** The scope item that it is part of. */
    itemId: maybe(ref("scope")),
    /** The branch that was reconnected or capped. */
    tieInId: maybe(ref("tieIns")),
    /** A point: `from` only. Feet from the main connection along the pipe. */
    from: maybe(feet),
    to: maybe(feet),
    ...pipe(),
    /** From the surface down to the invert, at its lower and at its upper end. */
    depthFrom: maybe(feet),
    depthTo: maybe(feet),
    /** Basis points: 200 is 2 %. */
    slope: maybe(percent),
    /** The run of the camera after the work, and the second of its video where it is seen. */
    runId: maybe(ref("runs")),
    runSecond: maybe(decimal(1_000_000)),
    measuredBy: words,
    measuredOn: maybe(day),
    note: words,
  },
});
