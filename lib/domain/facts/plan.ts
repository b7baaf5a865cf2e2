import type { Cft } from "../length/station.ts";
import {
  day,
  degrees,
  feet,
  maybe,
  name,
  oneOf,
  outline,
  type RowOf,
  ref,
  row,
  signedFeet,
  usually,
  whole,
  words,
} from "./field.ts";

/** A place on the ground: hundredths of a foot east and north of the main connection. */
export interface Spot {
  readonly east: Cft;
  readonly north: Cft;
}

/** The way a bend turns, for somebody who walks upstream. */
const TURNS = ["left", "right"] as const;

/** Where the trunk changes its bearing. */
export type Bend = RowOf<typeof BEND>;

export const BEND = row({
  one: "bend",
  most: 100,
  saved: "office",
  fields: {
    station: feet,
    turn: oneOf(TURNS),
    /** By how much, in degrees: 22.5, 45, 90. */
    degrees: degrees(180),
    note: words,
  },
});

/** Something that stays where it is, from which a tape is pulled: the corner of a house, a hydrant, a manhole. */
export type FixedPoint = RowOf<typeof FIXED_POINT>;

export const FIXED_POINT = row({
  one: "fixed point",
  most: 200,
  saved: "office",
  fields: {
    name: name("what it is, e.g. NE corner of the house at 12"),
    /** Where it stands on the plan; null: not known. */
    east: maybe(signedFeet),
    north: maybe(signedFeet),
    note: words,
  },
});

/** On which side a point lies for somebody who stands at the first fixed point and faces the second. */
const TIE_SIDES = ["left", "right", "unknown"] as const;
export type TieSide = (typeof TIE_SIDES)[number];

/** A point of the line held by two taped distances from fixed points. It is of a tie-in, a point, or a station. */
export type Tie = RowOf<typeof TIE>;

export const TIE = row({
  one: "tie",
  most: 400,
  saved: "field",
  fields: {
    tieInId: maybe(ref("tieIns")),
    pointId: maybe(ref("points", "point on the line")),
    station: maybe(feet),
    fromId: ref("fixedPoints"),
    fromDistance: feet,
    otherId: ref("fixedPoints", "other fixed point"),
    otherDistance: feet,
    /** Taped between the two fixed points; null: not taped, so the plan’s own distance is used. */
    apart: maybe(feet),
    side: usually(oneOf(TIE_SIDES), "unknown"),
    tapedBy: words,
    tapedOn: maybe(day),
    note: words,
  },
});

export const SHAPE_KINDS = ["building", "lot-line", "street-edge", "easement", "other"] as const;
export type ShapeKind = (typeof SHAPE_KINDS)[number];

/** Something on the ground, drawn as a simple shape. A building is closed, everything else is a line. */
export type PlanShape = RowOf<typeof PLAN_SHAPE>;

export const PLAN_SHAPE = row({
  one: "shape of the plan",
  most: 400,
  saved: "office",
  fields: {
    kind: usually(oneOf(SHAPE_KINDS), "building"),
    /** What stands in it on the drawing: `12`, `garage`, `Cinder Alley`. */
    name: words,
    propertyId: maybe(ref("properties")),
    /** Its corners (outline.ts). */
    outline,
    note: words,
  },
});

/** A plan that was uploaded, to trace over: two points of it a known length apart, and where the main connection is. */
export type PlanPicture = RowOf<typeof PLAN_PICTURE>;

export const PLAN_PICTURE = row({
  one: "plan picture",
  most: 20,
  saved: "office",
  fields: {
    uploadId: ref("uploads", "stored picture"),
    /** Its size in pixels. */
    width: whole(100_000),
    height: whole(100_000),
    /** Pixels from its left and upper edge. */
    oneX: whole(100_000),
    oneY: whole(100_000),
    otherX: whole(100_000),
    otherY: whole(100_000),
    /** How far the two points are apart on the ground. */
    apart: feet,
    mainX: whole(100_000),
    mainY: whole(100_000),
    /** The bearing that points up on the picture, in degrees. */
    up: usually(degrees(359.5), 0),
    note: words,
  },
});
