import {
  day,
  degrees,
  feet,
  idOf,
  inches,
  late,
  maybe,
  name,
  oneOf,
  type RowOf,
  ref,
  row,
  usually,
  whole,
  words,
  yesNo,
} from "./field.ts";
import { PLUMBING_CODES, SLOPE_NAMES } from "./plumbing-code.ts";

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

/** What is known of a piece of pipe. */
export function pipe() {
  return {
    /** Inside diameter. */
    diameter: maybe(inches),
    material: usually(oneOf(MATERIALS), "unknown"),
    fitting: usually(oneOf(FITTINGS), "unknown"),
  };
}

/** The facts about the shared pipe itself. */
export type LineFacts = RowOf<typeof LINE_FACTS>;

export const LINE_FACTS = row({
  one: "line",
  fields: {
    /** What the office calls it, say `Alley behind Fennel Row`. */
    name: name("a name for the line"),
    town: words,
    openedOn: day,
    closedOn: maybe(day),
    /** Station of the upper end of the trunk; null while nobody knows. */
    upperEnd: maybe(feet),
    /** The pipe at the main connection, until a material observation says otherwise. */
    material: usually(oneOf(MATERIALS), "unknown"),
    /** Inside diameter in inches. */
    diameter: maybe(inches),
    /** Along the public MAIN from its downstream manhole to the main connection: another axis. */
    mainStation: maybe(feet),
    mainNote: words,
    /** Which way the trunk leaves the main, looking upstream: degrees clockwise from north, by halves; null: unknown. */
    bearing: maybe(degrees(359.5)),
    /** What shows it: a compass, a plat, a map. */
    bearingFrom: late(words),
    authorityId: maybe(idOf("authority")),
    /** Which of the authority's rules the office applies here; null until chosen. */
    ruleId: maybe(idOf("rule")),
    /** The code whose tables the load is held against, and the least slope that is tested; null until chosen. */
    plumbingCode: maybe(oneOf(PLUMBING_CODES)),
    leastSlope: maybe(oneOf(SLOPE_NAMES)),
    /** The way of doing the work that was chosen (split/work-option.ts); null until then. */
    optionId: maybe(ref("options")),
    /** Whether a neighbor's statement shows the others' amounts, and what other rules would give. */
    statementOthers: late(yesNo),
    statementRules: late(yesNo),
    /** Months for which the office stands behind the work, and for what; null: no warranty of its own. */
    warrantyMonths: maybe(whole(1_200)),
    warrantyCovers: late(words),
    note: words,
  },
});

/** Places on the trunk where something other than a tie-in happens. */
const POINT_KINDS = [
  "right-of-way-line",
  "curb",
  "property-line",
  "cleanout",
  "foundation",
  "manhole",
  "easement-edge",
] as const;
export type PointKind = (typeof POINT_KINDS)[number];

export type LinePoint = RowOf<typeof LINE_POINT>;

export const LINE_POINT = row({
  one: "point",
  most: 200,
  saved: "office",
  fields: {
    kind: oneOf(POINT_KINDS),
    station: feet,
    /** Depth to the invert at this point, for cautions and slope; null where not measured. */
    depth: maybe(feet),
    note: words,
  },
});

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
export type TieIn = RowOf<typeof TIE_IN>;

export const TIE_IN = row({
  one: "tie-in",
  most: 80,
  saved: "office",
  fields: {
    /** Short name on drawings: `T1`. */
    label: name("a short name, e.g. T1"),
    parentId: maybe(ref("tieIns", "tie-in that it joins")),
    /** Set by a person; null: taken from the sightings (see run/sighting.ts). */
    station: maybe(feet),
    side: usually(oneOf(SIDES), "unknown"),
    ...pipe(),
    kind: usually(oneOf(TIE_IN_KINDS), "unknown"),
    /** The property whose sewage comes through, once settled by a pairing, by tests or by its owner. */
    propertyId: maybe(ref("properties")),
    /** Proven dead, with who proved it and how. */
    inactive: yesNo,
    /** How `kind`, `propertyId` or `inactive` were settled; empty while they are not. */
    settledReason: words,
    settledBy: words,
    settledOn: maybe(day),
    /** The owner accepted in writing that the tie-in is theirs. */
    ownerAccepted: yesNo,
    note: words,
  },
});

const EASEMENT_STATES = ["recorded", "none", "unknown"] as const;
export type EasementState = (typeof EASEMENT_STATES)[number];

/** A lot that the trunk crosses. Its owner has a stake even where it is not connected. */
export type Crossing = RowOf<typeof CROSSING>;

export const CROSSING = row({
  one: "crossed lot",
  saved: "office",
  fields: {
    propertyId: ref("properties"),
    from: feet,
    to: feet,
    easement: usually(oneOf(EASEMENT_STATES), "unknown"),
    recordingNumber: words,
    note: words,
  },
});
