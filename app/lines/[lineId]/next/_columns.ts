import type { GridColumn } from "#app/_components/grid/column.ts";
import { CLOCK_EVENT_WORDS, optionsOf } from "../_terms.ts";

export const EVENT_COLUMNS: readonly GridColumn[] = [
  {
    key: "event",
    title: "What",
    kind: "choice",
    width: 30,
    required: true,
    choices: optionsOf(CLOCK_EVENT_WORDS),
  },
  { key: "on", title: "On", kind: "day", width: 14, required: true, example: "2026-12-03" },
  {
    key: "at",
    title: "Time",
    kind: "time",
    width: 10,
    hint: "For rules in hours",
    example: "4:05 pm",
  },
  { key: "note", title: "Note", kind: "text", width: 40, example: "Order no. 26-114, by letter" },
];
