import { distinct } from "#app/_components/grid/choices.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { SIDE_WORDS } from "#lib/domain/facts/line-words.ts";
import { MEASURED_WORDS, RECORD_KIND_WORDS, withNone } from "../field-terms.ts";
import { pipeColumns, uncertaintyColumn } from "../pipe-columns.ts";
import { MEASURED_SYNONYMS, SIDE_SYNONYMS } from "../synonyms.ts";
import { optionsOf } from "../terms.ts";
import { propertyChoices } from "../who/columns.ts";

export function recordColumns(file: Pick<LineFile, "uploads">): GridColumn[] {
  return [
    {
      key: "kind",
      title: "Kind",
      kind: "choice",
      choices: optionsOf(RECORD_KIND_WORDS),
      width: 9,
    },
    {
      key: "title",
      title: "Title",
      kind: "text",
      width: 24,
      required: true,
      example: "Side sewer card 1184",
    },
    { key: "number", title: "Number", kind: "text", width: 10, example: "1184" },
    {
      key: "dated",
      title: "Dated",
      kind: "text",
      width: 12,
      example: "1958",
      hint: "As written on it; a year alone is fine",
      pasteHeadings: ["date", "year"],
    },
    {
      key: "measuredFrom",
      title: "Measured from",
      kind: "choice",
      choices: optionsOf(MEASURED_WORDS, MEASURED_SYNONYMS),
      width: 14,
      hint: "Where its distances start: the main, or the house at the upper end",
    },
    {
      key: "length",
      title: "Length",
      kind: "feet",
      width: 8,
      hint: "Line length per the record; required if it measures from the upper end",
    },
    { key: "obtainedOn", title: "Obtained", kind: "day", width: 12 },
    ...uploadColumn(file),
    { key: "note", title: "Note", kind: "text", width: 28 },
  ];
}

function uploadColumn({ uploads }: Pick<LineFile, "uploads">): GridColumn[] {
  if (uploads.length === 0) return [];
  const choices = distinct(uploads.map(({ id, name }) => ({ value: id, label: name })));
  return [
    { key: "uploadId", title: "Scan", kind: "choice", choices: withNone(choices), width: 16 },
  ];
}

export function entryColumns(file: Pick<LineFile, "properties">): GridColumn[] {
  return [
    {
      key: "label",
      title: "Entry",
      kind: "text",
      width: 16,
      required: true,
      example: "House 14",
      pasteHeadings: ["label", "connection", "lateral", "house", "name"],
    },
    {
      key: "distance",
      title: "Distance",
      kind: "feet",
      width: 9,
      example: "34.0",
      hint: "As shown on the record; blank if none. “about 21” or “20–22” also fills Uncertainty ±",
      pasteHeadings: ["station", "footage", "feet", "ft", "at"],
      unsure: "uncertainty",
    },
    {
      key: "side",
      title: "Side",
      kind: "choice",
      choices: optionsOf(SIDE_WORDS, SIDE_SYNONYMS),
      width: 9,
      hint: "Left or right looking upstream",
    },
    ...pipeColumns({ example: "4" }),
    {
      key: "propertyId",
      title: "Property",
      kind: "choice",
      choices: withNone(propertyChoices(file)),
      width: 18,
      hint: "The property named on the record, if it is on this line",
      pasteHeadings: ["for", "address"],
    },
    { key: "note", title: "Note", kind: "text", width: 28 },
    uncertaintyColumn(
      "How far off the distance on the record may be; filled when it is typed as “about 21” or “20–22”",
    ),
  ];
}
