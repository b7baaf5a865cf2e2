"use client";

import { Scroll } from "../scroll.tsx";
import { formatCell } from "./cell.ts";
import type { GridColumn, GridRow } from "./column.ts";
import { valueAt } from "./field-path.ts";
import styles from "./grid.module.css";
import type { GridSpec } from "./grid-state.ts";
import { type Clash, isSame, mergeRows } from "./merge.ts";
import { allRows } from "./state.ts";
import type { Rows } from "./use-rows.ts";

/** Two people changed the same cells: both versions, and the choice between them. */
export function ConflictPanel({ grid, spec }: { readonly grid: Rows; readonly spec: GridSpec }) {
  const { conflict } = grid.state;
  if (conflict === null) return null;
  const by = conflict.by === "" ? "Someone else" : conflict.by;
  const { clashes } = mergeRows(grid.state.baseRows, allRows(grid.state), conflict.rows);
  return (
    <div className={`box box-mend stack-tight ${styles["conflict"]}`} role="alert">
      <p className="box-title">
        {by} saved this table{conflict.at === "" ? "" : ` at ${timeOf(conflict.at)}`} while you were
        editing the same {clashes.length === 1 ? "row" : "rows"}.
      </p>
      <p>Nothing is lost yet. Choose which version to keep:</p>
      <Scroll>
        <table className="plain">
          <thead>
            <tr>
              <th scope="col">Row</th>
              {spec.columns.map((column) => (
                <th scope="col" key={column.key}>
                  {column.title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {clashes.flatMap((clash) => [
              <Side key={`${clash.id}-mine`} whose="yours" clash={clash} spec={spec} />,
              <Side key={`${clash.id}-theirs`} whose={`of ${by}`} clash={clash} spec={spec} />,
            ])}
          </tbody>
        </table>
      </Scroll>
      <div className="cluster">
        <button
          type="button"
          className="button button-main"
          onClick={() => grid.dispatch({ do: "keep-mine" })}
        >
          Keep my version
        </button>
        <button
          type="button"
          className="button"
          onClick={() => grid.dispatch({ do: "take-theirs" })}
        >
          Keep their version
        </button>
      </div>
    </div>
  );
}

function Side({
  whose,
  clash,
  spec,
}: {
  readonly whose: string;
  readonly clash: Clash;
  readonly spec: GridSpec;
}) {
  const row = whose === "yours" ? clash.mine : clash.theirs;
  return (
    <tr>
      <th scope="row">{whose}</th>
      {row === null ? (
        <td colSpan={spec.columns.length}>removed</td>
      ) : (
        spec.columns.map((column) => (
          <td key={column.key}>
            {differs(clash, column) ? <strong>{shown(column, row)}</strong> : shown(column, row)}
          </td>
        ))
      )}
    </tr>
  );
}

function differs(clash: Clash, column: GridColumn): boolean {
  if (clash.mine === null || clash.theirs === null) return true;
  return !isSame(valueAt(clash.mine, column.key), valueAt(clash.theirs, column.key));
}

function shown(column: GridColumn, row: GridRow): string {
  return formatCell(column, valueAt(row, column.key));
}

function timeOf(at: string): string {
  return new Date(at).toLocaleTimeString("en-US", { hour: "numeric", minute: "2-digit" });
}
