import { RowsGrid as Grid, type RowsGridProps } from "#app/_components/rows-grid.client.tsx";
import { sentRows } from "#app/_components/sent-rows.ts";

/** One table of the line to type in; of a long one the first rows go with the page. */
export function RowsGrid({ rows, ...props }: RowsGridProps) {
  return <Grid {...props} {...sentRows(rows, props.where)} />;
}
