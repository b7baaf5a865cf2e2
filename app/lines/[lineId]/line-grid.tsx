import type { RowsGridProps } from "#app/_components/rows-grid.client.tsx";
import { db } from "#app/db.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { deedOfTable } from "#lib/domain/facts/row-table.ts";
import { lineFileOf } from "./file.ts";
import { RowsGrid } from "./rows-grid.tsx";

/** A table of the line, to be typed in by who may save it; on a closed file by nobody. */
export async function LineGrid(props: Omit<RowsGridProps, "base" | "readOnly">) {
  const { lineId, table } = props;
  const { may } = await lineFileOf(lineId);
  const base = getRevisions(db(), lineId)[table];
  return <RowsGrid {...props} base={base} readOnly={!may(deedOfTable(table))} />;
}
