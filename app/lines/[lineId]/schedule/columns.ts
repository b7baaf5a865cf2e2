import type { GridColumn } from "#app/_components/grid/column.ts";
import { CLOCK_EVENT_WORDS, optionsOf } from "../terms.ts";

export const EVENT_COLUMNS: readonly GridColumn[] = [
  {
    key: "event",
    title: "Event",
    kind: "choice",
    width: 30,
    required: true,
    choices: optionsOf(CLOCK_EVENT_WORDS),
  },
  { key: "on", title: "Date", kind: "day", width: 14, required: true, example: "12/03/2026" },
  {
    key: "at",
    title: "Time",
    kind: "time",
    width: 10,
    hint: "When it begins; for rules in hours, and prints in letters",
    example: "8:00 AM",
  },
  {
    key: "until",
    title: "Until",
    kind: "time",
    width: 10,
    hint: "When it ends; prints in letters",
    example: "3:30 PM",
  },
  {
    key: "lastOn",
    title: "Last day",
    kind: "day",
    width: 14,
    hint: "If it takes several days",
  },
  {
    key: "reference",
    title: "Number or place",
    kind: "text",
    width: 18,
    hint: "The authority’s number; of a closed street, the place. Prints in letters",
    pasteHeadings: ["number", "place", "reference"],
    example: "Order No. 26-114",
  },
  { key: "note", title: "Note", kind: "text", width: 30, hint: "For the office only" },
];
