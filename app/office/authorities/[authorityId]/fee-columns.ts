import type { GridColumn } from "#app/_components/grid/column.ts";
import { SURFACE_WORDS } from "#lib/domain/application/surface-area.ts";
import type { Fee, FeePer } from "#lib/domain/facts/authority.ts";
import { FOR_PERMIT, options, SOURCE } from "./column-parts.ts";

const PER: Record<FeePer, string> = {
  permit: "permit",
  connection: "connection",
  structure: "property served",
  inspection: "inspection",
  hour: "inspector’s hour",
  reinspection: "reinspection",
  deposit: "deposit, returned",
  cost: "cost of the work, in steps",
  "square-foot": "surface cut, in square feet",
};

const PARTS: Record<Fee["partCounts"], string> = {
  whole: "counts as a whole one",
  share: "by its share",
};

export const FEE_COLUMNS: readonly GridColumn[] = [
  {
    key: "title",
    title: "Fee",
    kind: "text",
    width: 30,
    required: true,
    example: "Side sewer permit",
  },
  { key: "amount", title: "Amount", kind: "cents", required: true, example: "350.00" },
  {
    key: "per",
    title: "Per",
    kind: "choice",
    required: true,
    width: 20,
    choices: options(PER),
    pasteHeadings: ["for each"],
  },
  ...SOURCE,
  {
    key: "step",
    title: "In steps of",
    kind: "whole",
    width: 10,
    hint: "Dollars of cost or square feet in one step: 100 where it is $1 for each $100",
    example: "100",
  },
  {
    key: "partCounts",
    title: "Part of a step",
    kind: "choice",
    width: 14,
    choices: options(PARTS),
  },
  { key: "least", title: "At least", kind: "cents", hint: "Blank if none", example: "5.00" },
  { key: "most", title: "At most", kind: "cents", hint: "Blank if none", example: "25.00" },
  {
    key: "surface",
    title: "Surface",
    kind: "choice",
    hint: "If square feet of only this surface count",
    choices: [
      { value: "", label: "any surface" },
      ...options(SURFACE_WORDS).filter(({ value }) => value !== "not-set"),
    ],
  },
  {
    key: "included",
    title: "Included",
    kind: "whole",
    hint: "So many pieces, dollars of cost, or square feet cost nothing extra",
  },
  FOR_PERMIT,
];

/** A new fee before anything is typed: one amount for each permit. */
export const FEE_BLANK = {
  per: "permit",
  included: 0,
  permitKind: null,
  step: null,
  partCounts: "whole",
  least: null,
  most: null,
  surface: null,
};
