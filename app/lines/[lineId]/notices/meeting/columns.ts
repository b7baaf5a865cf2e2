import type { GridColumn } from "#app/_components/grid/column.ts";

export const MEETING_COLUMNS: readonly GridColumn[] = [
  { key: "on", title: "Day", kind: "day", width: 13, required: true },
  { key: "at", title: "From", kind: "time", width: 9 },
  { key: "until", title: "To", kind: "time", width: 9 },
  {
    key: "place",
    title: "Place",
    kind: "text",
    width: 30,
    example: "Kitchen of 12 Fennel Row",
  },
  { key: "note", title: "Note", kind: "text", width: 30 },
];
