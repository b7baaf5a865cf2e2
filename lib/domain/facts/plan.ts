import type { Cft } from "../length/station.ts";
import type { Day } from "../time/day.ts";

/** A place on the ground: hundredths of a foot east and north of the main connection. */
export interface Spot {
  readonly east: Cft;
  readonly north: Cft;
}

/** The way a bend turns, for somebody who walks upstream. */
export const TURNS = ["left", "right"] as const;
type Turn = (typeof TURNS)[number];

/** Where the trunk changes its bearing. */
export interface Bend {
  readonly id: string;
  readonly station: Cft;
  readonly turn: Turn;
  /** By how much, in degrees: 22.5, 45, 90. */
  readonly degrees: number;
  readonly note: string;
}

/** Something that stays where it is, from which a tape is pulled: the corner of a house, a hydrant, a manhole. */
export interface FixedPoint {
  readonly id: string;
  readonly name: string;
  /** Where it stands on the plan; null: not known. */
  readonly east: Cft | null;
  readonly north: Cft | null;
  readonly note: string;
}

/** On which side a point lies for somebody who stands at the first fixed point and faces the second. */
export const TIE_SIDES = ["left", "right", "unknown"] as const;
export type TieSide = (typeof TIE_SIDES)[number];

/** A point of the line held by two taped distances from fixed points. It is of a tie-in, a point, or a station. */
export interface Tie {
  readonly id: string;
  readonly tieInId: string | null;
  readonly pointId: string | null;
  readonly station: Cft | null;
  readonly fromId: string;
  readonly fromDistance: Cft;
  readonly otherId: string;
  readonly otherDistance: Cft;
  /** Taped between the two fixed points; null: not taped, so the plan’s own distance is used. */
  readonly apart: Cft | null;
  readonly side: TieSide;
  readonly tapedBy: string;
  readonly tapedOn: Day | null;
  readonly note: string;
}

export const SHAPE_KINDS = ["building", "lot-line", "street-edge", "easement", "other"] as const;
export type ShapeKind = (typeof SHAPE_KINDS)[number];

/** Something on the ground, drawn as a simple shape. A building is closed, everything else is a line. */
export interface PlanShape {
  readonly id: string;
  readonly kind: ShapeKind;
  /** What stands in it on the drawing: `12`, `garage`, `Cinder Alley`. */
  readonly name: string;
  readonly propertyId: string | null;
  /** Its corners (outline.ts). */
  readonly outline: string;
  readonly note: string;
}

/** A plan that was uploaded, to trace over: two points of it a known length apart, and where the main connection is. */
export interface PlanPicture {
  readonly id: string;
  readonly uploadId: string;
  /** Its size in pixels. */
  readonly width: number;
  readonly height: number;
  /** Pixels from its left and upper edge. */
  readonly oneX: number;
  readonly oneY: number;
  readonly otherX: number;
  readonly otherY: number;
  /** How far the two points are apart on the ground. */
  readonly apart: Cft;
  readonly mainX: number;
  readonly mainY: number;
  /** The bearing that points up on the picture, in degrees. */
  readonly up: number;
  readonly note: string;
}
