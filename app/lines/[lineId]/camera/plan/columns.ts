import type { GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { ShapeKind } from "#lib/domain/facts/plan.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { pointName } from "#lib/domain/plan/ties.ts";
import { optionsOf } from "../../terms.ts";
import { propertyChoices } from "../../who/columns.ts";

const TURN_WORDS = { left: "left", right: "right" } as const;

export const BEND_COLUMNS: readonly GridColumn[] = [
  { key: "station", title: "Station", kind: "feet", width: 9, required: true, example: "64.0" },
  {
    key: "turn",
    title: "Turns",
    kind: "choice",
    choices: optionsOf(TURN_WORDS),
    width: 8,
    required: true,
    hint: "Looking upstream",
  },
  {
    key: "degrees",
    title: "By",
    kind: "degrees",
    width: 9,
    required: true,
    example: "45",
  },
  { key: "note", title: "Note", kind: "text", width: 30 },
];

export const BEND_BLANK = { turn: "left" };

export const FIXED_COLUMNS: readonly GridColumn[] = [
  {
    key: "name",
    title: "Fixed point",
    kind: "text",
    width: 24,
    required: true,
    example: "SE corner of 12",
  },
  {
    key: "east",
    title: "East of the main",
    kind: "feet",
    width: 10,
    hint: "West is negative; blank if unknown",
    example: "19.4",
  },
  {
    key: "north",
    title: "North of the main",
    kind: "feet",
    width: 10,
    hint: "South is negative",
    example: "25.5",
  },
  { key: "note", title: "Note", kind: "text", width: 24 },
];

const SIDE_OF = { left: "left", right: "right", unknown: "not specified" } as const;

export function tieColumns(
  file: Pick<LineFile, "tieIns" | "points" | "fixedPoints">,
): GridColumn[] {
  const fixed = file.fixedPoints.map(({ id, name }) => ({ value: id, label: name }));
  const tieIns = file.tieIns.map(({ id, label }) => ({ value: id, label }));
  const points = file.points.map(({ id, kind, station }) => ({
    value: id,
    label: `${pointName(kind)} at ${formatFeet(station)}`,
  }));
  const none = { value: "", label: "–" };
  return [
    {
      key: "tieInId",
      title: "Tie-in",
      kind: "choice",
      choices: [none, ...tieIns],
      width: 8,
      hint: "One of the three: tie-in, point, station",
    },
    { key: "pointId", title: "Point", kind: "choice", choices: [none, ...points], width: 16 },
    { key: "station", title: "Station", kind: "feet", width: 8, hint: "0 is the main connection" },
    {
      key: "fromId",
      title: "First fixed point",
      kind: "choice",
      choices: fixed,
      width: 18,
      required: true,
    },
    {
      key: "fromDistance",
      title: "Taped",
      kind: "feet",
      width: 8,
      required: true,
      example: "26.6",
    },
    {
      key: "otherId",
      title: "Second fixed point",
      kind: "choice",
      choices: fixed,
      width: 18,
      required: true,
    },
    {
      key: "otherDistance",
      title: "Taped (second)",
      kind: "feet",
      width: 8,
      required: true,
      example: "20.1",
    },
    {
      key: "apart",
      title: "Between the two",
      kind: "feet",
      width: 9,
      hint: "Taped from one to the other; blank = as on the plan",
    },
    {
      key: "side",
      title: "Side",
      kind: "choice",
      choices: optionsOf(SIDE_OF),
      width: 9,
      hint: "As seen standing at the first and facing the second",
    },
    { key: "tapedBy", title: "By", kind: "text", width: 14 },
    { key: "tapedOn", title: "On", kind: "day", width: 12 },
    { key: "note", title: "Note", kind: "text", width: 20 },
  ];
}

export const SHAPE_WORDS: Record<ShapeKind, string> = {
  building: "building",
  "lot-line": "lot line",
  "street-edge": "street edge",
  easement: "easement",
  other: "other",
};

export function shapeColumns(file: Pick<LineFile, "properties">): GridColumn[] {
  return [
    {
      key: "kind",
      title: "What",
      kind: "choice",
      choices: optionsOf(SHAPE_WORDS),
      width: 12,
      required: true,
    },
    {
      key: "name",
      title: "Name",
      kind: "text",
      width: 14,
      hint: "Printed on the drawing",
      example: "Garage",
    },
    {
      key: "propertyId",
      title: "Property",
      kind: "choice",
      choices: [{ value: "", label: "–" }, ...propertyChoices(file)],
      width: 20,
    },
    {
      key: "outline",
      title: "Corners, ft east and north of the main",
      kind: "text",
      width: 44,
      required: true,
      hint: "Comma within each pair, semicolon between pairs; west and south are negative",
      example: "12,4; 52,4; 52,32; 12,32",
    },
    { key: "note", title: "Note", kind: "text", width: 20 },
  ];
}

export const SHAPE_BLANK = { kind: "building" };
