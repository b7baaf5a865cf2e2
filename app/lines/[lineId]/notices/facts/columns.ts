import type { GridColumn } from "#app/_components/grid/column.ts";
import type { Plantings, Restoration } from "#lib/domain/facts/dig-area.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SpillStepKind } from "#lib/domain/facts/spill-step.ts";
import { optionsOf } from "../../terms.ts";
import { propertyChoices } from "../../who/columns.ts";

const RESTORATION_WORDS: Readonly<Record<Restoration, string>> = {
  "not-set": "not set",
  "nothing-dug": "no digging",
  backfill: "backfill and compact",
  seed: "backfill and reseed",
  sod: "backfill and sod",
  gravel: "backfill and gravel",
  asphalt: "backfill and patch asphalt",
  concrete: "backfill and patch concrete",
  "by-owner": "backfill; owner does the surface",
};

const PLANTING_WORDS: Readonly<Record<Plantings, string>> = {
  "not-set": "not set",
  none: "none there",
  stay: "stay as they are",
  replanted: "taken out and replanted",
  removed: "taken out for good",
};

const SPILL_WORDS: Readonly<Record<SpillStepKind, string>> = {
  known: "first noticed",
  "office-called": "office was called",
  "crew-on-site": "crew on site",
  "flow-stopped": "flow stopped",
  reported: "reported to",
  "cleaned-up": "cleaned up",
};

export function digAreaColumns(file: Pick<LineFile, "properties">): readonly GridColumn[] {
  return [
    {
      key: "propertyId",
      title: "Property",
      kind: "choice",
      width: 20,
      required: true,
      choices: propertyChoices(file),
    },
    {
      key: "place",
      title: "Where on the lot",
      kind: "text",
      width: 26,
      example: "back yard, along the alley fence",
    },
    { key: "length", title: "Length", kind: "feet", width: 9, example: "20" },
    { key: "width", title: "Width", kind: "feet", width: 9, example: "4" },
    { key: "firstOn", title: "First day", kind: "day", width: 14, example: "Dec 7, 2026" },
    { key: "lastOn", title: "Last day", kind: "day", width: 14, example: "Dec 9, 2026" },
    {
      key: "restoration",
      title: "Restoration",
      kind: "choice",
      width: 26,
      choices: optionsOf(RESTORATION_WORDS),
    },
    {
      key: "notRestored",
      title: "Not restored",
      kind: "text",
      width: 20,
      hint: "Prints in the letter",
      example: "the rose bed",
    },
    {
      key: "plantings",
      title: "Trees and plantings",
      kind: "choice",
      width: 22,
      choices: optionsOf(PLANTING_WORDS),
    },
    {
      key: "plants",
      title: "Which",
      kind: "text",
      width: 20,
      hint: "Prints in the letter",
      example: "the apple tree at the fence",
    },
    { key: "contact", title: "Contact on the day", kind: "text", width: 18 },
    { key: "contactPhone", title: "Phone", kind: "text", width: 16, example: "(360) 555-0102" },
    { key: "note", title: "Note", kind: "text", width: 24, hint: "Stays in the office" },
  ];
}

export const BLANK_AREA = {
  propertyId: null,
  place: "",
  length: null,
  width: null,
  firstOn: null,
  lastOn: null,
  restoration: "not-set",
  notRestored: "",
  plantings: "not-set",
  plants: "",
  contact: "",
  contactPhone: "",
  note: "",
};

export const SPILL_COLUMNS: readonly GridColumn[] = [
  {
    key: "kind",
    title: "Event",
    kind: "choice",
    width: 20,
    required: true,
    choices: optionsOf(SPILL_WORDS),
  },
  { key: "on", title: "Date", kind: "day", width: 14, required: true, example: "Dec 3, 2026" },
  { key: "at", title: "Time", kind: "time", width: 10, example: "6:20 AM" },
  {
    key: "place",
    title: "Where, or to whom",
    kind: "text",
    width: 24,
    example: "alley behind 12 Fennel Row",
  },
  { key: "number", title: "Number given", kind: "text", width: 16 },
  { key: "gallons", title: "Gallons, about", kind: "whole", width: 10 },
  { key: "reached", title: "Reached", kind: "text", width: 20, example: "a street drain" },
  { key: "note", title: "Note", kind: "text", width: 24, hint: "Stays in the office" },
];

export const BLANK_SPILL_STEP = {
  kind: "known",
  on: null,
  at: "",
  place: "",
  number: "",
  gallons: null,
  reached: "",
  note: "",
};
