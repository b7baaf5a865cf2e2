import type { RowsGridProps } from "#app/_components/rows-grid.client.tsx";
import { deedOfTable } from "#lib/domain/facts/row-table.ts";
import { lineFileOf } from "./file.ts";
import { RowsGrid } from "./rows-grid.tsx";

/** A table of the line, to be typed in by who may save it; on a closed file by nobody. */
export async function LineGrid(props: Omit<RowsGridProps, "rows" | "base" | "readOnly">) {
  const { lineId, table } = props;
  const { file, revisions, may } = await lineFileOf(lineId);
  return (
    <RowsGrid
      {...props}
      rows={file[table]}
      base={revisions[table]}
      readOnly={!may(deedOfTable(table))}
    />
  );
}
