import {
  day,
  feet,
  from1,
  maybe,
  name,
  oneOf,
  quantity,
  type RowOf,
  row,
  usually,
  whole,
  words,
} from "./field.ts";
import { PERMIT_KINDS } from "./permit.ts";

/**
 * What a requirement may hang on. Each is answered from the line’s file with yes, no or unknown
 * (lib/domain/permit/conditions.ts); unknown counts as if it applied.
 */
const CONDITION_FACTS = [
  "something-dug",
  "dug-in-right-of-way",
  "dug-on-lot",
  /** The deepest place dug lies deeper than so many feet. */
  "depth-over",
  /** Pavement, sidewalk or curb is cut. */
  "street-cut",
  "lot-crossed",
  "crossed-without-easement",
  "pipe-lined",
  "pipe-burst",
  "branch-capped",
  "undocumented-tie-in",
  /** More buildings connected than so many. */
  "buildings-over",
  /** The work is worth more than so many dollars. */
  "value-over",
] as const;
export type ConditionFact = (typeof CONDITION_FACTS)[number];

/** One thing on which a requirement hangs. Where it has several, any one of them makes it apply. */
export type RequirementCondition = RowOf<typeof REQUIREMENT_CONDITION>;

export const REQUIREMENT_CONDITION = row({
  one: "condition",
  fields: {
    /** Whose it is. */
    authorityId: words,
    requirementId: name("the requirement"),
    fact: oneOf(CONDITION_FACTS),
    /** Hundredths of feet, buildings or dollars, for what is over a limit. */
    limit: maybe(quantity),
    citation: words,
    asOf: day,
  },
});

/** Steps of a permit that may have to wait for another permit. */
const WAITING_STEPS = ["submitted", "issued", "working"] as const;
export type WaitingStep = (typeof WAITING_STEPS)[number];

/** How far the other permit has to be. */
const AWAITED_STEPS = ["submitted", "issued", "final"] as const;
export type AwaitedStep = (typeof AWAITED_STEPS)[number];

/** Which permit has to wait for which: the street use permit is not issued before the side sewer’s. */
export type PermitOrder = RowOf<typeof PERMIT_ORDER>;

export const PERMIT_ORDER = row({
  one: "order of permits",
  fields: {
    /** Whose it is. */
    authorityId: words,
    /** The permit that waits, and its step that may not be taken before. */
    kind: oneOf(PERMIT_KINDS),
    step: usually(oneOf(WAITING_STEPS), "submitted"),
    /** The permit that it waits for, and how far that has to be. */
    waitsFor: oneOf(PERMIT_KINDS),
    until: usually(oneOf(AWAITED_STEPS), "issued"),
    citation: words,
    asOf: day,
  },
});

/** What lies on top of a trench. */
export const SURFACES = [
  "not-set",
  "asphalt",
  "concrete",
  "sidewalk",
  "curb-and-gutter",
  "gravel",
  "lawn",
  "landscaping",
  "other",
] as const;
export type Surface = (typeof SURFACES)[number];

/** Surfaces whose cutting is a cut of the street. */
export const PAVED: readonly Surface[] = ["asphalt", "concrete", "sidewalk", "curb-and-gutter"];

/** The least that is cut and put back of one surface, as the authority has it. */
export type PavementRule = RowOf<typeof PAVEMENT_RULE>;

export const PAVEMENT_RULE = row({
  one: "pavement rule",
  fields: {
    /** Whose it is. */
    authorityId: words,
    surface: oneOf(SURFACES),
    /** Beyond the edge of the trench, on each of its four sides. */
    beyond: usually(feet, 0),
    leastWidth: maybe(feet),
    leastLength: maybe(feet),
    /** Years after paving in which it may not be cut; null: none. */
    noCutYears: maybe(whole(50)),
    citation: words,
    asOf: day,
  },
});

/** What an authority may want on the drawing. */
const DRAWING_ITEMS = [
  "north-arrow",
  "scale",
  "streets",
  "lot-lines",
  "buildings",
  "easements",
  "ties",
  "inverts",
  "depths",
  "cleanouts",
  "pipe-size-and-material",
  "connections",
  "flow-direction",
  "other",
] as const;
export type DrawingItemKind = (typeof DRAWING_ITEMS)[number];

/** One thing that the authority wants to see on the drawing. */
export type DrawingItem = RowOf<typeof DRAWING_ITEM>;

export const DRAWING_ITEM = row({
  one: "drawing item",
  fields: {
    /** Whose it is. */
    authorityId: words,
    item: oneOf(DRAWING_ITEMS),
    title: name("what the drawing has to show"),
    citation: words,
    asOf: day,
  },
});

/** One scale to which the authority lets a drawing be drawn. One without any takes every usual scale. */
export type DrawingScale = RowOf<typeof DRAWING_SCALE>;

export const DRAWING_SCALE = row({
  one: "drawing scale",
  fields: {
    /** Whose it is. */
    authorityId: words,
    /** Feet of ground to an inch of paper. */
    feetPerInch: from1(5_000),
    citation: words,
    asOf: day,
  },
});
