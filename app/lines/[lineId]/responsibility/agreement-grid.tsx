import type { GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LineGrid } from "../line-grid.tsx";
import { propertyName } from "../names.ts";

/** Recorded agreements, one a row, with a column of parts for each property. */
export function AgreementGrid({
  lineId,
  file,
}: {
  readonly lineId: string;
  readonly file: LineFile;
}) {
  return (
    <LineGrid
      lineId={lineId}
      table="agreements"
      columns={columnsFor(file)}
      blank={{ title: "" }}
      addWord="agreement"
      label="Recorded agreements"
      emptyWords="No recorded agreement is known. Check with the county recorder for each lot; enter it in the first row."
    />
  );
}

function columnsFor(file: LineFile): GridColumn[] {
  return [
    {
      key: "title",
      title: "Agreement",
      kind: "text",
      width: 26,
      required: true,
      example: "Joint sewer agreement, lots 1 to 3",
    },
    {
      key: "recordingNumber",
      title: "Recording number",
      kind: "text",
      width: 16,
      example: "19581204-0117",
    },
    { key: "recordedOn", title: "Recorded on", kind: "day", width: 12, example: "1958-12-04" },
    {
      key: "fromStation",
      title: "From",
      kind: "feet",
      width: 7,
      hint: "Blank = from the main",
      example: "0",
    },
    { key: "toStation", title: "To", kind: "feet", width: 7, hint: "Blank = to the upper end" },
    { key: "terms", title: "Terms", kind: "text", width: 30, example: "Equal thirds" },
    {
      key: "termsEs",
      title: "Terms in Spanish",
      kind: "text",
      width: 30,
      hint: "For the Spanish reading copy; blank = the terms stay in English there",
      example: "Por terceras partes iguales",
    },
    ...file.properties.map(
      (property): GridColumn => ({
        key: `shares[propertyId=${property.id}].parts`,
        title: propertyName(file, property.id),
        kind: "whole",
        width: 8,
        hint: "Parts; blank if not named in the agreement",
      }),
    ),
  ];
}
