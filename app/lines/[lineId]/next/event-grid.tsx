import { RowsGrid } from "#app/_components/rows-grid.client.tsx";
import { db } from "#app/_db.ts";
import { getRevisions } from "#db/queries/revision.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import { EVENT_COLUMNS } from "./_columns.ts";

export function EventGrid({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  return (
    <RowsGrid
      lineId={lineId}
      table="events"
      base={getRevisions(db(), lineId).events}
      rows={file.events.map((event) => ({ ...event }))}
      columns={EVENT_COLUMNS}
      blank={{
        event: "authority-order",
        on: null,
        at: "",
        until: "",
        lastOn: null,
        reference: "",
        note: "",
      }}
      addWord="event"
      emptyWords="Nothing of the kind happened yet."
      label="What happened that starts clocks"
    />
  );
}
