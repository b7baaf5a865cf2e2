import { CLOCK_RULE, HOLIDAY } from "./clock-rule.ts";
import {
  cents,
  day,
  feet,
  from1,
  inside,
  late,
  maybe,
  name,
  oneOf,
  parts,
  type RowOf,
  ref,
  row,
  several,
  timeOfDay,
  usually,
  usualValues,
  whole,
  words,
  yesNo,
} from "./field.ts";
import { ADDRESS } from "./party.ts";
import { PERMIT_KINDS } from "./permit.ts";
import {
  DRAWING_ITEM,
  DRAWING_SCALE,
  PAVEMENT_RULE,
  PERMIT_ORDER,
  REQUIREMENT_CONDITION,
  SURFACES,
} from "./permit-rule.ts";
import { PROOF_RULE } from "./proof-rule.ts";
import { STATUTORY_PAPER } from "./statutory-paper.ts";

/**
 * Who owns and who mends, by place on the line. Patterns found in US codes;
 * which one applies, up to which boundary, is the authority's data.
 */
export const RULE_PATTERNS = [
  /** Owners up to, not including, the connection at the main. */
  "owners-to-main",
  /** Owners including the tap, tee or saddle. */
  "owners-including-tap",
  /** The authority stops at the outside of the main. */
  "owners-from-outside-of-main",
  /** The authority has the part in the right-of-way. */
  "authority-in-right-of-way",
  /** Divided at a cleanout; while none is entered, unclear. */
  "divided-at-cleanout",
  /** Owners own all; below the boundary the authority does what the rule gives it. */
  "owners-own-authority-mends-lower",
  /** Owners hold all; below the boundary each kind of work is whose the rule says. */
  "by-kind-of-work",
  /** The lower part is the authority's once the owner proves the fault is there. */
  "authority-when-proven",
  /** The code or the authority says that it is not clear. */
  "unclear",
] as const;
export type RulePattern = (typeof RULE_PATTERNS)[number];

/** Which owners answer for the owners' part of the shared pipe. */
export const SHARED_RULES = [
  "all-whose-flow-passes",
  "next-downstream-tie-in",
  "all-connected-equally",
  "parties-decide",
  "unclear",
] as const;
export type SharedRule = (typeof SHARED_RULES)[number];

const BOUNDARIES = [
  "main-connection",
  "right-of-way-line",
  "curb",
  "property-line",
  "cleanout",
  "foundation",
] as const;
export type Boundary = (typeof BOUNDARIES)[number];

export const WORK_KINDS = ["clearing", "repair", "replacement"] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

/** Who does one kind of work below the boundary, where a rule divides the line. */
const WORK_HOLDERS = ["owners", "authority", "unclear"] as const;
export type WorkHolder = (typeof WORK_HOLDERS)[number];

/** One responsibility rule, with where it is written and when that was last looked at. */
export type ResponsibilityRule = RowOf<typeof RESPONSIBILITY_RULE>;

export const RESPONSIBILITY_RULE = row({
  one: "rule",
  fields: {
    /** Whose it is. */
    authorityId: words,
    title: name("a title"),
    pattern: oneOf(RULE_PATTERNS),
    boundary: oneOf(BOUNDARIES),
    sharedRule: oneOf(SHARED_RULES),
    /** Who does each kind of work below the boundary; of no meaning where the rule divides nothing. */
    clearingBy: late(usually(oneOf(WORK_HOLDERS), "owners")),
    repairBy: late(usually(oneOf(WORK_HOLDERS), "authority")),
    replacementBy: late(usually(oneOf(WORK_HOLDERS), "authority")),
    citation: words,
    url: words,
    asOf: day,
    note: words,
  },
});

export const SHEET_KINDS = [
  "application",
  "attestation",
  "line-drawing",
  "schedule-of-connections",
  "observation-log",
  "tests",
  "capacity",
  "scope",
  "proposed-pipe",
  "pavement",
  "crew-safety",
  "responsibility",
  "split",
  "consents",
  "proof-of-notice",
  "contractor-standing",
  "holds-and-waivers",
  "as-built",
  "upload",
] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

/** By when the authority wants something: with the application, before work begins, before the final. */
const REQUIREMENT_DUES = ["submission", "work", "final"] as const;
export type RequirementDue = (typeof REQUIREMENT_DUES)[number];

/** What a contractor has to have in force, each with the day on which it runs out. */
const CONTRACTOR_PAPERS = [
  "license",
  "bond",
  "insurance",
  "additional-insured",
  "workers-compensation",
  "business-license",
] as const;
export type ContractorPaper = (typeof CONTRACTOR_PAPERS)[number];

/** One thing that the authority wants: in the packet, or later. */
export type Requirement = RowOf<typeof REQUIREMENT>;

export const REQUIREMENT = row({
  one: "requirement",
  fields: {
    /** Whose it is. */
    authorityId: words,
    sheet: oneOf(SHEET_KINDS),
    title: name("a title"),
    detail: words,
    citation: words,
    asOf: day,
    mandatory: yesNo,
    due: late(usually(oneOf(REQUIREMENT_DUES), "submission")),
    /** Where what it asks for is a permit of this kind, in force while the work goes on. */
    permitKind: maybe(oneOf(PERMIT_KINDS)),
    /** Where what it asks for is this paper of the contractor, in force to the end of the work. */
    paper: maybe(oneOf(CONTRACTOR_PAPERS)),
  },
});

/** What a fee is counted by. A deposit comes back with the final. */
const FEE_PERS = [
  "permit",
  "connection",
  "structure",
  "inspection",
  "hour",
  "reinspection",
  "deposit",
  /** The work’s cost, in steps of so many dollars. */
  "cost",
  /** Surface cut, in steps of so many square feet. */
  "square-foot",
] as const;
export type FeePer = (typeof FEE_PERS)[number];

/** A step that is not full is charged as a full one, or by its share. */
const PART_COUNTS = ["whole", "share"] as const;

export type Fee = RowOf<typeof FEE>;

export const FEE = row({
  one: "fee",
  fields: {
    /** Whose it is. */
    authorityId: words,
    title: name("a title"),
    amount: cents,
    per: oneOf(FEE_PERS),
    /** Asked only for permits of this kind; null: for each. */
    permitKind: late(maybe(oneOf(PERMIT_KINDS))),
    /** So many are in the base fee already: pieces, dollars of cost or square feet. */
    included: late(usually(whole(10_000_000), 0)),
    /** For how many dollars or square feet the amount is; null: for each square foot, or not entered. */
    step: late(maybe(from1(1_000_000))),
    partCounts: late(usually(oneOf(PART_COUNTS), "whole")),
    /** What it comes to at least and at most; null: nothing is said. */
    least: late(maybe(cents)),
    most: late(maybe(cents)),
    /** Of which surface square feet are counted; null: of every one. */
    surface: late(maybe(oneOf(SURFACES))),
    citation: words,
    asOf: day,
  },
});

/** What an inspection has to be passed before: nothing, covering the pipe, or the final. */
const INSPECTION_NEEDS = ["no", "backfill", "final"] as const;
export type InspectionNeed = (typeof INSPECTION_NEEDS)[number];

/** In what the lead of an inspection’s booking is counted. */
const BOOKING_UNITS = ["hours", "business-days"] as const;

/** One kind of inspection of this authority: how it is booked, and what cannot go on before it passed. */
export type InspectionKind = RowOf<typeof INSPECTION_KIND>;

export const INSPECTION_KIND = row({
  one: "kind of inspection",
  fields: {
    /** Whose it is. */
    authorityId: words,
    title: name("a title"),
    /** For permits of this kind; null: for each. */
    permitKind: maybe(oneOf(PERMIT_KINDS)),
    neededBefore: usually(oneOf(INSPECTION_NEEDS), "no"),
    /** How long before it is booked; 0: nothing is said. */
    lead: usually(whole(1_000), 0),
    leadUnit: usually(oneOf(BOOKING_UNITS), "business-days"),
    /** Calls after this time of day count for the next business day; empty: none is said. */
    cutOff: timeOfDay,
    /** The result is a test’s figures: pressure at its start and end, minutes, and who witnessed it. */
    asksForFigures: yesNo,
    citation: words,
    asOf: day,
  },
});

export const REFUSAL_STEP_KINDS = [
  "notice",
  "mediation",
  "authority-order",
  "arbitration",
  "court",
  "other",
] as const;
export type RefusalStepKind = (typeof REFUSAL_STEP_KINDS)[number];

/** A lawful step that is open where a neighbor refuses, as the authority or the code has it. */
export type RefusalStep = RowOf<typeof REFUSAL_STEP>;

export const REFUSAL_STEP = row({
  one: "refusal step",
  fields: {
    /** Whose it is. */
    authorityId: words,
    kind: usually(oneOf(REFUSAL_STEP_KINDS), "other"),
    title: name("a title"),
    detail: words,
    /** Days to wait after the step before; null where nothing is said. */
    days: maybe(whole(3_650)),
    citation: words,
    asOf: day,
  },
});

/** What an authority is asked for and asks for, each a list of its own. */
export const AUTHORITY_PARTS = {
  rules: RESPONSIBILITY_RULE,
  requirements: REQUIREMENT,
  fees: FEE,
  inspectionKinds: INSPECTION_KIND,
  clockRules: CLOCK_RULE,
  holidays: HOLIDAY,
  /** In the order in which they may be taken. */
  refusalSteps: REFUSAL_STEP,
  /** On what a requirement hangs; one without any always applies. */
  conditions: REQUIREMENT_CONDITION,
  permitOrders: PERMIT_ORDER,
  pavementRules: PAVEMENT_RULE,
  drawingItems: DRAWING_ITEM,
  /** To which its drawings may be drawn; none: to every usual one (lib/domain/strip/plan-scale.ts). */
  scales: DRAWING_SCALE,
  /** Where it says nothing the house's table does (lib/domain/notices/way-rule.ts). */
  proofRules: PROOF_RULE,
  /** What the law of the state asks of the contractor. */
  statutoryPapers: STATUTORY_PAPER,
};
export type AuthorityPart = keyof typeof AUTHORITY_PARTS;

/** Every part of an authority by name, in the order in which they are written. */
export const AUTHORITY_PART_NAMES = Object.keys(AUTHORITY_PARTS) as readonly AuthorityPart[];

type Parts = { readonly [P in AuthorityPart]: readonly RowOf<(typeof AUTHORITY_PARTS)[P]>[] };

/** All parts, each made of its name. */
export function eachPart<T>(make: (part: AuthorityPart) => T): {
  readonly [P in AuthorityPart]: T;
} {
  return Object.fromEntries(AUTHORITY_PART_NAMES.map((part) => [part, make(part)])) as {
    [P in AuthorityPart]: T;
  };
}

/** An authority of which no part is entered yet. */
export function noParts(): Parts {
  return eachPart(() => []);
}

export type Authority = RowOf<typeof AUTHORITY> & Parts;

export const AUTHORITY = row({
  one: "authority",
  fields: {
    name: name("the authority's name"),
    office: words,
    address: usually(inside(ADDRESS), usualValues(ADDRESS)),
    phone: words,
    email: words,
    note: words,
  },
});

/** Shares are parts of the sum of all parts in the same agreement (`1` of `3`, or `33` of `100`). */
const AGREEMENT_SHARE = {
  propertyId: ref("properties"),
  parts,
};

/** A recorded agreement on the shared pipe. It outranks every default. */
export type Agreement = RowOf<typeof AGREEMENT>;

export const AGREEMENT = row({
  one: "agreement",
  most: 50,
  saved: "office",
  fields: {
    title: name("a title"),
    recordingNumber: words,
    recordedOn: maybe(day),
    /** The part of the trunk that it covers; null: to the end. */
    fromStation: maybe(feet),
    toStation: maybe(feet),
    terms: words,
    /** The terms as the office has them in Spanish, for the reading copy; empty: in English alone. */
    termsEs: late(words),
    shares: several(AGREEMENT_SHARE),
  },
});
