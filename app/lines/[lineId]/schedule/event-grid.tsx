import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LineGrid } from "../line-grid.tsx";
import { EVENT_COLUMNS } from "./columns.ts";

export function EventGrid({ lineId }: { readonly lineId: string; readonly file: LineFile }) {
  return (
    <LineGrid
      lineId={lineId}
      table="events"
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
      emptyWords="No events yet."
      label="Events that start deadlines"
    />
  );
}
