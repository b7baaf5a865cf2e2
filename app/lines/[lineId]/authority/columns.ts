import { distinct } from "#app/_components/grid/choices.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { INSPECTION_WORDS, optionsOf, PERMIT_KIND_WORDS } from "../terms.ts";

export const LOCATE_COLUMNS: readonly GridColumn[] = [
  {
    key: "number",
    title: "Ticket",
    kind: "text",
    width: 18,
    required: true,
    example: "26-555-0100",
  },
  { key: "calledOn", title: "Called in", kind: "day", width: 13, required: true },
  { key: "calledAt", title: "Called at", kind: "time", width: 9, hint: "For rules in hours" },
  {
    key: "workBeginsOn",
    title: "Work start",
    pasteHeadings: ["work begins"],
    kind: "day",
    width: 13,
    hint: "As told to the one-call center",
  },
  { key: "workBeginsAt", title: "Start time", kind: "time", width: 9, hint: "For rules in hours" },
  { key: "note", title: "Note", kind: "text", width: 30, example: "Gas and water responded" },
];

/** What is kept of an inspection; two permits of one kind and number are told apart. */
export function inspectionColumns({ permits }: Pick<LineFile, "permits">): GridColumn[] {
  return [
    {
      key: "title",
      title: "Inspection",
      kind: "text",
      width: 24,
      required: true,
      example: "Open trench before bedding",
    },
    {
      key: "permitId",
      title: "Permit",
      kind: "choice",
      width: 22,
      required: true,
      choices: distinct(
        permits.map(({ id, kind, number }) => ({
          value: id,
          label: `${PERMIT_KIND_WORDS[kind]} ${number}`.trim(),
        })),
      ),
    },
    {
      key: "bookedFor",
      title: "Scheduled for",
      pasteHeadings: ["booked for"],
      kind: "day",
      width: 13,
      required: true,
    },
    { key: "bookedAt", title: "At", kind: "time", width: 9 },
    { key: "inspector", title: "Inspector", kind: "text", width: 16 },
    {
      key: "result",
      title: "Result",
      kind: "choice",
      width: 11,
      choices: optionsOf(INSPECTION_WORDS),
    },
    { key: "note", title: "Note", kind: "text", width: 24 },
  ];
}
