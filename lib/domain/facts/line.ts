import type { Cft } from "../length/station.ts";
import type { Day } from "../time/day.ts";
import type { PlumbingCode, SlopeName } from "./plumbing-code.ts";

export const MATERIALS = [
  "vitrified-clay",
  "concrete",
  "cast-iron",
  "ductile-iron",
  "pvc",
  "abs",
  "polyethylene",
  "bituminous-fibre",
  "asbestos-cement",
  "cured-in-place-liner",
  "unknown",
] as const;
export type Material = (typeof MATERIALS)[number];

/** Left or right as seen by somebody who looks upstream, whatever way the camera went. */
export const SIDES = ["left", "right", "crown", "unknown"] as const;
export type Side = (typeof SIDES)[number];

export const FITTINGS = ["wye", "tee", "saddle", "break-in", "unknown"] as const;
export type Fitting = (typeof FITTINGS)[number];

/** The facts about the shared pipe itself. */
export interface LineFacts {
  readonly id: string;
  /** What the office calls it, say `Alley behind Fennel Row`. */
  readonly name: string;
  readonly town: string;
  readonly openedOn: Day;
  readonly closedOn: Day | null;
  /** Station of the upper end of the trunk; null while nobody knows. */
  readonly upperEnd: Cft | null;
  /** The pipe at the main connection, until a material observation says otherwise. */
  readonly material: Material;
  /** Inside diameter in inches. */
  readonly diameter: number | null;
  /** Along the public MAIN from its downstream manhole to the main connection: another axis. */
  readonly mainStation: Cft | null;
  readonly mainNote: string;
  /** Which way the trunk leaves the main, looking upstream: degrees clockwise from north, by halves; null: unknown. */
  readonly bearing: number | null;
  /** What shows it: a compass, a plat, a map. */
  readonly bearingFrom: string;
  readonly authorityId: string | null;
  /** Which of the authority's rules the office applies here; null until chosen. */
  readonly ruleId: string | null;
  /** The code whose tables the load is held against, and the least slope that is tested; null until chosen. */
  readonly plumbingCode: PlumbingCode | null;
  readonly leastSlope: SlopeName | null;
  /** The way of doing the work that was chosen (split/work-option.ts); null until then. */
  readonly optionId: string | null;
  /** Whether a neighbor's statement shows the others' amounts, and what other rules would give. */
  readonly statementOthers: boolean;
  readonly statementRules: boolean;
  /** Months for which the office stands behind the work, and for what; null: no warranty of its own. */
  readonly warrantyMonths: number | null;
  readonly warrantyCovers: string;
  readonly note: string;
}

/** Places on the trunk where something other than a tie-in happens. */
export const POINT_KINDS = [
  "right-of-way-line",
  "curb",
  "property-line",
  "cleanout",
  "foundation",
  "manhole",
  "easement-edge",
] as const;
export type PointKind = (typeof POINT_KINDS)[number];

export interface LinePoint {
  readonly id: string;
  readonly kind: PointKind;
  readonly station: Cft;
  /** Depth to the invert at this point, for cautions and slope; null where not measured. */
  readonly depth: Cft | null;
  readonly note: string;
}

/** What a branch serves. A tie-in is not a building until something shows it. */
export const TIE_IN_KINDS = [
  "unknown",
  "building",
  "yard-drain",
  "roof-drain",
  "cleanout-riser",
  "capped-stub",
  "old-septic-line",
] as const;
export type TieInKind = (typeof TIE_IN_KINDS)[number];

/**
 * A branch's joint to its parent pipe, and the branch that starts there.
 * `parentId` null: it joins the trunk. Otherwise it joins that tie-in's branch.
 */
export interface TieIn {
  readonly id: string;
  /** Short name on drawings: `T1`. */
  readonly label: string;
  readonly parentId: string | null;
  /** Set by a person; null: taken from the sightings (see run/sighting.ts). */
  readonly station: Cft | null;
  readonly side: Side;
  /** Inches. */
  readonly diameter: number | null;
  readonly material: Material;
  readonly fitting: Fitting;
  readonly kind: TieInKind;
  /** The property whose sewage comes through, once settled by a pairing, by tests or by its owner. */
  readonly propertyId: string | null;
  /** Proven dead, with who proved it and how. */
  readonly inactive: boolean;
  /** How `kind`, `propertyId` or `inactive` were settled; empty while they are not. */
  readonly settledReason: string;
  readonly settledBy: string;
  readonly settledOn: Day | null;
  /** The owner accepted in writing that the tie-in is theirs. */
  readonly ownerAccepted: boolean;
  readonly note: string;
}

export const EASEMENT_STATES = ["recorded", "none", "unknown"] as const;
export type EasementState = (typeof EASEMENT_STATES)[number];

/** A lot that the trunk crosses. Its owner has a stake even where it is not connected. */
export interface Crossing {
  readonly id: string;
  readonly propertyId: string;
  readonly from: Cft;
  readonly to: Cft;
  readonly easement: EasementState;
  readonly recordingNumber: string;
  readonly note: string;
}
