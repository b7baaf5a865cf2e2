import type { GridColumn } from "#app/_components/grid/column.ts";
import { RowsGrid } from "#app/_components/rows-grid.client.tsx";
import { db } from "#app/_db.ts";
import { getRevisions } from "#db/queries/revision.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import { INSPECTION_WORDS, optionsOf, PERMIT_KIND_WORDS } from "../_terms.ts";

interface GridProps {
  readonly lineId: string;
  readonly file: LineFile;
}

const LOCATE_COLUMNS: readonly GridColumn[] = [
  {
    key: "number",
    title: "Ticket",
    kind: "text",
    width: 18,
    required: true,
    example: "26-555-0100",
  },
  { key: "calledOn", title: "Called in", kind: "day", width: 13, required: true },
  {
    key: "workBeginsOn",
    title: "Work begins",
    kind: "day",
    width: 13,
    hint: "As said to the one-call center",
  },
  { key: "note", title: "Note", kind: "text", width: 30, example: "Gas and water answered" },
];

export function LocateGrid({ lineId, file }: GridProps) {
  return (
    <RowsGrid
      lineId={lineId}
      table="locateTickets"
      base={getRevisions(db(), lineId).locateTickets}
      rows={file.locateTickets.map((ticket) => ({ ...ticket }))}
      columns={LOCATE_COLUMNS}
      blank={{ number: "", calledOn: null, workBeginsOn: null, note: "" }}
      addWord="ticket"
      label="Locate tickets"
      emptyWords="No ticket was called in yet. Mark the dig in white first, then call 811."
    />
  );
}

export function InspectionGrid({ lineId, file }: GridProps) {
  if (file.permits.length === 0) {
    return <p>An inspection belongs to a permit; add the permit first.</p>;
  }
  return (
    <RowsGrid
      lineId={lineId}
      table="inspections"
      base={getRevisions(db(), lineId).inspections}
      rows={file.inspections.map((inspection) => ({ ...inspection }))}
      columns={inspectionColumns(file)}
      blank={{
        permitId: file.permits[0]?.id ?? "",
        title: "",
        bookedFor: null,
        inspector: "",
        result: "booked",
        note: "",
      }}
      addWord="inspection"
      label="Inspections"
      emptyWords="No inspection is booked yet."
    />
  );
}

function inspectionColumns(file: LineFile): GridColumn[] {
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
      choices: file.permits.map((permit) => ({
        value: permit.id,
        label: `${PERMIT_KIND_WORDS[permit.kind]} ${permit.number}`.trim(),
      })),
    },
    { key: "bookedFor", title: "Booked for", kind: "day", width: 13, required: true },
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
