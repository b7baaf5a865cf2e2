import {
  cents,
  day,
  feet,
  idOf,
  inches,
  maybe,
  oneOf,
  percent,
  type RowOf,
  ref,
  row,
  usually,
  words,
} from "./field.ts";
import { MATERIALS } from "./line.ts";
import { PERMIT_KINDS } from "./permit.ts";
import { SURFACES } from "./permit-rule.ts";

/** As whom the applicant signs. */
export const APPLICANTS = ["not-set", "contractor", "owner", "owners-agent"] as const;
export type ApplicantIs = (typeof APPLICANTS)[number];

/** What is applied for, as counters name it. */
export const WORK_TYPES = [
  "not-set",
  "repair",
  "replacement",
  "relocation",
  "new-connection",
  "lining",
  "capping",
  "emergency-repair",
  "other",
] as const;
export type WorkType = (typeof WORK_TYPES)[number];

/** What an application says beside the facts of the line, one for each kind of permit. */
export type Application = RowOf<typeof APPLICATION>;

export const APPLICATION = row({
  one: "application",
  most: 20,
  fields: {
    permitKind: oneOf(PERMIT_KINDS),
    /** Who signs it, and as whom. */
    applicant: words,
    applicantIs: usually(oneOf(APPLICANTS), "not-set"),
    /** The day on which the applicant signed that what it says is true, and the signed paper. */
    attestedOn: maybe(day),
    attestationId: maybe(ref("uploads", "stored paper")),
    workType: usually(oneOf(WORK_TYPES), "not-set"),
    /** Null: the value of the scope of work. */
    valuation: maybe(cents),
    /** How traffic and how people on foot get past the work. */
    traffic: words,
    pedestrians: words,
    /** As the certificate of insurance names the additional insured, and the certificate. */
    insuredAs: words,
    certificateId: maybe(ref("uploads", "stored paper")),
    note: words,
  },
});

/** An owner’s word that the contractor may apply for them. */
export const OWNER_AUTHORIZATION = row({
  one: "owner’s authorization",
  most: 300,
  saved: "office",
  fields: {
    propertyId: ref("properties"),
    partyId: ref("parties"),
    signedOn: maybe(day),
    uploadId: maybe(ref("uploads", "stored paper")),
    note: words,
  },
});

/** How new pipe is laid. */
const LAYING_METHODS = [
  "not-set",
  "open-trench",
  "bore",
  "burst",
  "liner",
  "slip-line",
  "other",
] as const;
export type LayingMethod = (typeof LAYING_METHODS)[number];

/** The pipe that one piece of work puts in. */
export type ProposedPipe = RowOf<typeof PROPOSED_PIPE>;

export const PROPOSED_PIPE = row({
  one: "proposed pipe",
  most: 300,
  saved: "office",
  fields: {
    itemId: ref("scope", "piece of work"),
    material: usually(oneOf(MATERIALS), "unknown"),
    diameter: maybe(inches),
    /** Null: as long as the section where the work is done. */
    length: maybe(feet),
    /** Basis points: 200 is 2 %, about 1/4 inch in a foot. */
    slope: maybe(percent),
    method: usually(oneOf(LAYING_METHODS), "not-set"),
    bedding: words,
    joint: words,
    /** How it is joined to the main or to the old pipe. */
    connection: words,
    note: words,
  },
});

/** How the walls of the trench stand: held up, or sloped for a type of soil. */
const TRENCH_WALLS = ["not-set", "shored", "type-a", "type-b", "type-c"] as const;
export type TrenchWalls = (typeof TRENCH_WALLS)[number];

/** One surface that is opened, and how it is put back. */
export type SurfaceCut = RowOf<typeof SURFACE_CUT>;

export const SURFACE_CUT = row({
  one: "surface to cut",
  most: 300,
  saved: "office",
  fields: {
    /** Stations over which it is cut; the same for a pit. */
    from: feet,
    to: feet,
    surface: usually(oneOf(SURFACES), "not-set"),
    /** At the bottom. */
    trenchWidth: maybe(feet),
    /** Of the trench; null: by the depths on file. */
    depth: maybe(feet),
    walls: usually(oneOf(TRENCH_WALLS), "not-set"),
    pavedOn: maybe(day),
    restoration: words,
    note: words,
  },
});

/** What a person said of one item of the authority’s drawing checklist. */
export const DRAWING_STATES = ["shown", "not-shown", "does-not-apply"] as const;
export type DrawingState = (typeof DRAWING_STATES)[number];

export type DrawingMark = RowOf<typeof DRAWING_MARK>;

export const DRAWING_MARK = row({
  one: "item of the drawing",
  most: 300,
  fields: {
    itemId: idOf("drawing item"),
    state: oneOf(DRAWING_STATES),
    by: words,
    on: day,
    note: words,
  },
});
