import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { missingFigures } from "#lib/domain/permit/inspections.ts";

/**
 * Cells of inspections that this save marks as passed though the authority asks for figures that are
 * not there, and of windows that end before they begin.
 */
export function inspectionCells({
  table,
  before,
  after,
}: {
  readonly table: RowTable;
  readonly before: LineFile;
  readonly after: LineFile;
}): { row: number; column: string; message: string }[] {
  if (table !== "inspections") return [];
  const old = new Set(before.inspections.map((each) => JSON.stringify(each)));
  return after.inspections.flatMap((inspection, row) => {
    if (old.has(JSON.stringify(inspection))) return [];
    const [figure] = missingFigures(after, inspection);
    const { bookedAt, bookedUntil } = inspection;
    return [
      ...(figure === undefined
        ? []
        : [{ row, column: "result", message: `The authority asks for it: enter ${figure}` }]),
      ...(bookedAt !== "" && bookedUntil !== "" && bookedUntil < bookedAt
        ? [{ row, column: "bookedUntil", message: "The window ends before it begins" }]
        : []),
    ];
  });
}
