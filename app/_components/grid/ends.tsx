import { formatCell } from "./cell.ts";
import { type GridColumn, UNIT_WORDS } from "./column.ts";
import { computedSum } from "./computed.ts";
import { valueAt } from "./field-path.ts";
import styles from "./grid.module.css";
import type { GridState } from "./grid-state.ts";
import { NUMERIC } from "./row.client.tsx";

/** What each column is called, with its unit. */
export function Head({
  columns,
  readOnly,
}: {
  readonly columns: readonly GridColumn[];
  readonly readOnly: boolean;
}) {
  return (
    <thead>
      <tr>
        <th scope="col" className={styles["number"]}>
          <span className="hidden">Row</span>
        </th>
        {columns.map((column) => (
          <th
            key={column.key}
            scope="col"
            className={styles[NUMERIC.has(column.kind) ? "numeric" : "plain"]}
          >
            {column.title}
            {UNIT_WORDS[column.kind] === "" || column.kind === "day" ? null : (
              <span className={styles["unit"]}> {UNIT_WORDS[column.kind]}</span>
            )}
          </th>
        ))}
        {readOnly ? null : (
          <th scope="col" className={styles["end"]}>
            <span className="hidden">Remove</span>
          </th>
        )}
      </tr>
    </thead>
  );
}

/** Sums of the columns that have one. */
export function Foot({
  columns,
  state,
}: {
  readonly columns: readonly GridColumn[];
  readonly state: GridState;
}) {
  if (!columns.some((column) => column.total === true)) return null;
  return (
    <tfoot>
      <tr>
        <th scope="row" className={styles["number"]}>
          Total
        </th>
        {columns.map((column) => (
          <td key={column.key} className={styles[NUMERIC.has(column.kind) ? "numeric" : "plain"]}>
            {column.total === true ? sumOf(column, state) : ""}
          </td>
        ))}
        <td />
      </tr>
    </tfoot>
  );
}

function sumOf(column: GridColumn, state: GridState): string {
  const rows = state.lines.map((line) => line.values);
  if (column.computed !== undefined) return computedSum(column.computed, rows);
  const sum = rows.reduce((total, row) => {
    const value = valueAt(row, column.key);
    return typeof value === "number" ? total + value : total;
  }, 0);
  return formatCell(column, sum);
}
