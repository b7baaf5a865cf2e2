import { distinct } from "#app/_components/grid/choices.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { FIXTURE_WORDS, METHOD_WORDS } from "#lib/domain/capacity/words.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { withNone } from "../../field-terms.ts";
import { propertyName } from "../../names.ts";
import { optionsOf } from "../../terms.ts";
import { propertyChoices } from "../../who/columns.ts";

export const LEVEL_COLUMNS: readonly GridColumn[] = [
  {
    key: "station",
    title: "Station",
    kind: "feet",
    width: 9,
    required: true,
    example: "92.0",
    hint: "Feet from the main connection",
  },
  {
    key: "ground",
    title: "Ground",
    kind: "feet",
    width: 9,
    example: "100.0",
    hint: "Ground level above any one fixed reference, the same for all rows",
    pasteHeadings: ["ground level", "surface", "rim"],
  },
  {
    key: "depth",
    title: "Depth",
    kind: "feet",
    width: 8,
    example: "5.0",
    hint: "From the ground down to the invert (inside bottom of the pipe)",
  },
  {
    key: "invert",
    title: "Invert",
    kind: "feet",
    width: 9,
    hint: "Above the same reference, only if it was measured directly",
    pasteHeadings: ["invert level", "invert elevation"],
  },
  {
    key: "method",
    title: "Measured by",
    kind: "choice",
    choices: optionsOf(METHOD_WORDS),
    width: 18,
  },
  {
    key: "uncertainty",
    title: "Uncertainty ±",
    kind: "feet",
    width: 7,
    hint: "Blank = usual for the method",
    pasteHeadings: ["uncertainty"],
  },
  { key: "note", title: "Note", kind: "text", width: 24, example: "Locator at the alley cleanout" },
];

/** Units have a column only on lines that have any. */
export function fixtureColumns(file: LineFile): GridColumn[] {
  const properties = propertyChoices(file);
  const units = distinct(
    file.units.map(({ id, name, propertyId }) => ({
      value: id,
      label: `${name || "a unit"}, ${propertyName(file, propertyId)}`,
    })),
  );
  const unit: GridColumn = {
    key: "unitId",
    title: "Unit",
    kind: "choice",
    choices: withNone(units, "all of it"),
    width: 22,
  };
  return [
    {
      key: "propertyId",
      title: "Property",
      kind: "choice",
      choices: properties,
      width: 20,
      required: true,
    },
    ...(units.length === 0 ? [] : [unit]),
    {
      key: "fixture",
      title: "Fixture",
      kind: "choice",
      choices: optionsOf(FIXTURE_WORDS),
      width: 16,
      required: true,
    },
    { key: "count", title: "Count", kind: "whole", width: 9, required: true, example: "1" },
    { key: "note", title: "Note", kind: "text", width: 24, example: "Owner, by phone" },
  ];
}
