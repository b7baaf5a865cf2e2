import type { GridColumn } from "#app/_components/grid/column.ts";
import { RowsGrid } from "#app/_components/rows-grid.client.tsx";
import { db } from "#app/_db.ts";
import { getRevisions } from "#db/queries/revision.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import { CLOCK_EVENT_WORDS, optionsOf } from "../_terms.ts";

const COLUMNS: readonly GridColumn[] = [
  {
    key: "event",
    title: "What",
    kind: "choice",
    width: 30,
    required: true,
    choices: optionsOf(CLOCK_EVENT_WORDS),
  },
  { key: "on", title: "On", kind: "day", width: 14, required: true, example: "2026-12-03" },
  { key: "note", title: "Note", kind: "text", width: 40, example: "Order no. 26-114, by letter" },
];

export function EventGrid({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  return (
    <RowsGrid
      lineId={lineId}
      table="events"
      base={getRevisions(db(), lineId).events}
      rows={file.events.map((event) => ({ ...event }))}
      columns={COLUMNS}
      blank={{ event: "authority-order", on: null, note: "" }}
      addWord="event"
      emptyWords="Nothing of the kind happened yet."
      label="What happened that starts clocks"
    />
  );
}
