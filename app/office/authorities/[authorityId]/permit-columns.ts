import type { GridChoice, GridColumn } from "#app/_components/grid/column.ts";
import { CONDITION_WORDS } from "#lib/domain/application/conditions.ts";
import { SURFACE_WORDS } from "#lib/domain/application/surface-area.ts";
import type { ContractorPaper, Requirement } from "#lib/domain/facts/authority.ts";
import type { AwaitedStep, WaitingStep } from "#lib/domain/facts/permit-rule.ts";
import { DRAWING_WORDS } from "#lib/domain/packet/drawing-checklist.ts";
import { options, PERMITS, SOURCE } from "./column-parts.ts";

const PAPERS: Record<ContractorPaper, string> = {
  license: "contractor license",
  bond: "bond",
  insurance: "liability insurance",
  "additional-insured": "additional insured",
  "workers-compensation": "workers’ compensation",
  "business-license": "business license",
};

/** Where a requirement asks for one of the contractor’s papers. */
export const PAPER_COLUMN: GridColumn = {
  key: "paper",
  title: "Contractor’s document",
  kind: "choice",
  hint: "If it is one document that must be valid until the work ends",
  choices: [{ value: "", label: "–" }, ...options(PAPERS)],
};

const CONDITIONS: readonly GridChoice[] = Object.entries(CONDITION_WORDS).map(
  ([value, { words, limit }]) => ({
    value,
    label: limit === null ? words : `${words} (${limit})`,
  }),
);

const STEPS: Record<WaitingStep, string> = {
  submitted: "submitted",
  issued: "issued",
  working: "used for work",
};

const UNTIL: Record<AwaitedStep, string> = {
  submitted: "is submitted",
  issued: "is issued",
  final: "is final",
};

/** When a requirement applies; several rows of one requirement: any one is enough. */
export function conditionColumns(requirements: readonly Requirement[]): GridColumn[] {
  return [
    {
      key: "requirementId",
      title: "Requirement",
      kind: "choice",
      width: 34,
      required: true,
      choices: requirements.map(({ id, title }) => ({ value: id, label: title })),
    },
    {
      key: "fact",
      title: "Applies if",
      kind: "choice",
      width: 34,
      required: true,
      choices: CONDITIONS,
    },
    {
      key: "limit",
      title: "Limit",
      kind: "hundredths",
      width: 9,
      hint: "Feet, buildings or dollars, as the condition says",
      example: "5",
    },
    ...SOURCE,
  ];
}

export const ORDER_COLUMNS: readonly GridColumn[] = [
  { key: "kind", title: "This permit", kind: "choice", required: true, choices: options(PERMITS) },
  {
    key: "step",
    title: "Is not",
    kind: "choice",
    width: 14,
    required: true,
    choices: options(STEPS),
  },
  {
    key: "waitsFor",
    title: "Until this permit",
    kind: "choice",
    required: true,
    choices: options(PERMITS),
  },
  { key: "until", title: "Is", kind: "choice", width: 13, required: true, choices: options(UNTIL) },
  ...SOURCE,
];

export const PAVEMENT_COLUMNS: readonly GridColumn[] = [
  {
    key: "surface",
    title: "Surface",
    kind: "choice",
    required: true,
    choices: options(SURFACE_WORDS).filter(({ value }) => value !== "not-set"),
  },
  {
    key: "beyond",
    title: "Beyond each edge",
    kind: "feet",
    width: 11,
    hint: "How far the cut goes beyond the trench on every side",
    example: "1",
  },
  { key: "leastWidth", title: "Least width", kind: "feet", width: 10, example: "4" },
  { key: "leastLength", title: "Least length", kind: "feet", width: 10, example: "4" },
  {
    key: "noCutYears",
    title: "No cut for, years",
    kind: "whole",
    width: 9,
    hint: "Years after paving in which it may not be cut; blank if none",
    example: "5",
  },
  ...SOURCE,
];

export const DRAWING_COLUMNS: readonly GridColumn[] = [
  {
    key: "title",
    title: "The drawing shows",
    kind: "text",
    width: 36,
    required: true,
    example: "North arrow",
  },
  {
    key: "item",
    title: "Checked as",
    kind: "choice",
    width: 24,
    required: true,
    choices: options(DRAWING_WORDS),
    hint: "Wyebook checks these itself; “other” is marked by a person",
  },
  ...SOURCE,
];

export const SCALE_COLUMNS: readonly GridColumn[] = [
  {
    key: "feetPerInch",
    title: "1 in = … ft",
    kind: "whole",
    width: 12,
    required: true,
    hint: "Feet on the ground to one inch on paper",
    example: "20",
    pasteHeadings: ["scale", "feet per inch", "1 in ="],
  },
  ...SOURCE,
];
