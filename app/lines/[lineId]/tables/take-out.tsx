import type { TakenTable } from "./taken.ts";

/** A table of the line’s file for a spreadsheet, both ways that offices ask for. */
export function TakeOut({
  lineId,
  table,
  what,
}: {
  readonly lineId: string;
  readonly table: TakenTable;
  readonly what: string;
}) {
  const href = `/lines/${lineId}/tables/${table}`;
  return (
    <span className="cluster screen-only">
      <a href={`${href}?as=xlsx`} download>
        {what}, XLSX
      </a>
      <a href={href} download aria-label={`${what}, CSV`}>
        CSV
      </a>
    </span>
  );
}
