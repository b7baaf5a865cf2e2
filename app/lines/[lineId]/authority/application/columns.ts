import type { GridColumn } from "#app/_components/grid/column.ts";
import { METHOD_WORDS } from "#lib/domain/application/proposed-pipe.ts";
import { SURFACE_WORDS } from "#lib/domain/application/surface-area.ts";
import type { TrenchWalls } from "#lib/domain/facts/application.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { MATERIAL_WORDS, optionsOf } from "../../terms.ts";
import { propertyChoices } from "../../who/columns.ts";

const WALLS: Readonly<Record<TrenchWalls, string>> = {
  "not-set": "not set",
  shored: "shored or shielded",
  "type-a": "sloped, type A soil",
  "type-b": "sloped, type B soil",
  "type-c": "sloped, type C soil",
};

/** Who let the contractor apply for them, property by property. */
export function authorizationColumns({
  properties,
  parties,
  uploads,
}: Pick<LineFile, "properties" | "parties" | "uploads">): GridColumn[] {
  return [
    {
      key: "propertyId",
      title: "Property",
      kind: "choice",
      width: 22,
      required: true,
      choices: propertyChoices({ properties }),
    },
    {
      key: "partyId",
      title: "Owner",
      kind: "choice",
      width: 24,
      required: true,
      choices: parties.map(({ id, name }) => ({ value: id, label: name })),
    },
    { key: "signedOn", title: "Signed", kind: "day", width: 13, example: "11/20/2026" },
    {
      key: "uploadId",
      title: "Document",
      kind: "choice",
      width: 22,
      choices: [
        { value: "", label: "–" },
        ...uploads.map(({ id, name }) => ({ value: id, label: name })),
      ],
      hint: "A document stored in this file",
    },
    { key: "note", title: "Note", kind: "text", width: 24 },
  ];
}

/** The pipe that each piece of work puts in. */
export function pipeColumns({ scope }: Pick<LineFile, "scope">): GridColumn[] {
  return [
    {
      key: "itemId",
      title: "Work",
      kind: "choice",
      width: 26,
      required: true,
      choices: scope.map(({ id, title }) => ({ value: id, label: title })),
    },
    {
      key: "material",
      title: "Material",
      kind: "choice",
      width: 16,
      choices: optionsOf(MATERIAL_WORDS),
    },
    { key: "diameter", title: "Size", kind: "inches", width: 7, example: "8" },
    {
      key: "length",
      title: "Length",
      kind: "feet",
      width: 9,
      hint: "Blank: as long as the section of the work",
    },
    { key: "slope", title: "Slope", kind: "percent", width: 8, example: "2", hint: "In percent" },
    { key: "method", title: "Method", kind: "choice", width: 13, choices: optionsOf(METHOD_WORDS) },
    { key: "bedding", title: "Bedding", kind: "text", width: 20, example: "6 in crushed rock" },
    { key: "joint", title: "Joint", kind: "text", width: 16, example: "rubber gasket" },
    {
      key: "connection",
      title: "Connection",
      kind: "text",
      width: 22,
      example: "shielded coupling",
    },
    { key: "note", title: "Note", kind: "text", width: 20, hint: "Stays in the office" },
  ];
}

export const BLANK_PIPE = {
  material: "unknown",
  diameter: null,
  length: null,
  slope: null,
  method: "not-set",
  bedding: "",
  joint: "",
  connection: "",
  note: "",
};

/** Surfaces that are opened. */
export const SURFACE_COLUMNS: readonly GridColumn[] = [
  { key: "from", title: "From", kind: "feet", width: 8, required: true, example: "0" },
  { key: "to", title: "To", kind: "feet", width: 8, required: true, example: "12" },
  {
    key: "surface",
    title: "Surface",
    kind: "choice",
    width: 14,
    choices: optionsOf(SURFACE_WORDS),
  },
  {
    key: "trenchWidth",
    title: "Trench width",
    kind: "feet",
    width: 9,
    hint: "At the bottom",
    example: "3",
  },
  {
    key: "depth",
    title: "Depth",
    kind: "feet",
    width: 8,
    hint: "Of the trench. Blank: by the depths on file",
  },
  { key: "walls", title: "Walls", kind: "choice", width: 18, choices: optionsOf(WALLS) },
  { key: "pavedOn", title: "Paved on", kind: "day", width: 13 },
  { key: "restoration", title: "Restoration", kind: "text", width: 26, example: "hot mix, 4 in" },
  { key: "note", title: "Note", kind: "text", width: 20, hint: "Stays in the office" },
];

export const BLANK_SURFACE = {
  from: null,
  to: null,
  surface: "not-set",
  trenchWidth: null,
  depth: null,
  walls: "not-set",
  pavedOn: null,
  restoration: "",
  note: "",
};
