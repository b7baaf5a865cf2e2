import { newestTicket } from "#lib/domain/calendar/happenings.ts";
import { whiteLineBar } from "#lib/domain/clocks/white-line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { LineGrid } from "../line-grid.tsx";
import { inspectionColumns, locateColumns, utilityColumns } from "./columns.ts";

interface GridProps {
  readonly lineId: string;
  readonly file: LineFile;
}

export function LocateGrid({ lineId, file }: GridProps) {
  const unlined = whiteLineBar(file);
  return (
    <>
      <LineGrid
        lineId={lineId}
        table="locateTickets"
        columns={locateColumns(file)}
        blank={{ calledOn: null }}
        addWord="ticket"
        label="Locate tickets"
        emptyWords="No ticket yet. White-line the dig area, then call 811."
      />
      {unlined === null ? null : (
        <p className="strong">
          {capital(unlined.because)}.
          {unlined.citation === "" ? null : <span className="muted"> ({unlined.citation})</span>}
        </p>
      )}
    </>
  );
}

export function UtilityGrid({ lineId, file }: GridProps) {
  if (file.locateTickets.length === 0) return null;
  return (
    <>
      <h3>Utilities’ responses</h3>
      <LineGrid
        lineId={lineId}
        table="utilityResponses"
        columns={utilityColumns(file)}
        blank={{ ticketId: newestTicket(file)?.id ?? "", utility: "" }}
        addWord="utility"
        label="Utilities’ responses"
        emptyWords="No response yet. List every utility that the ticket names."
      />
    </>
  );
}

export function InspectionGrid({ lineId, file }: GridProps) {
  if (file.permits.length === 0) {
    return <p>Add the permit first; every inspection belongs to one.</p>;
  }
  return (
    <LineGrid
      lineId={lineId}
      table="inspections"
      columns={inspectionColumns(file)}
      blank={{ permitId: file.permits[0]?.id ?? "", bookedFor: null, kindId: null }}
      addWord="inspection"
      label="Inspections"
      emptyWords="No inspection scheduled."
    />
  );
}
