import { RowsGrid as Grid, type RowsGridProps } from "#app/_components/rows-grid.client.tsx";
import { sentRows } from "#app/_components/sent-rows.ts";
import { newRow } from "./new-row.ts";

/**
 * One table of the line to type in; of a long one the first rows go with the page. `blank` names what
 * a new row has on this page otherwise than usual.
 */
export function RowsGrid({ rows, blank, ...props }: RowsGridProps) {
  return <Grid {...props} blank={newRow(props.table, blank)} {...sentRows(rows, props.where)} />;
}
