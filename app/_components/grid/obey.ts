import { formatCell } from "./cell.ts";
import type { CellCommand } from "./cell-keys.ts";
import { valueAt } from "./field-path.ts";
import { focusCell, stayNear } from "./focus.ts";
import type { GridSpec, GridState } from "./grid-state.ts";
import { newRowId } from "./new-id.ts";
import { blankKey } from "./paste-rows.ts";
import type { Rows } from "./use-rows.ts";

interface Here {
  readonly row: number;
  readonly column: number;
  readonly box: HTMLElement | null;
  readonly grid: Rows;
  readonly spec: GridSpec;
}

/** Does what was pressed in a cell, and puts the cursor where it goes then. */
export function obey(command: CellCommand, { row, column, box, grid, spec }: Here) {
  const { state, dispatch } = grid;
  if (typeof command === "object") {
    focusCell(box, placeAt(command, { row, column }, { state, spec }));
  } else if (command === "undo" || command === "redo") {
    dispatch({ do: command });
    stayNear(box, { row, column });
  } else if (command === "remove-row") {
    const line = state.lines[row];
    if (line === undefined) return;
    dispatch({ do: "remove", key: line.key });
    stayNear(box, { row, column });
  } else if (command === "fill-down") {
    const above = state.lines[row - 1];
    const into = spec.columns[column];
    if (above === undefined || into === undefined) return;
    const text = formatCell(into, valueAt(above.values, into.key));
    const key = state.lines[row]?.key ?? blankKey(state);
    dispatch({ do: "type", key, column: into, text, newId: newRowId() });
  } else if (command === "cancel") box?.querySelector<HTMLElement>("[data-leave]")?.focus();
}

function placeAt(
  command: Extract<CellCommand, object>,
  at: { row: number; column: number },
  { state, spec }: { state: GridState; spec: GridSpec },
): { row: number; column: number } {
  const lastRow = state.lines.length;
  const lastColumn = spec.columns.length - 1;
  if ("edge" in command) {
    if (command.edge === "row-start") return { row: at.row, column: 0 };
    if (command.edge === "row-end") return { row: at.row, column: lastColumn };
    if (command.edge === "first") return { row: 0, column: 0 };
    return { row: lastRow, column: lastColumn };
  }
  return {
    row: Math.min(Math.max(at.row + command.rows, 0), lastRow),
    column: Math.min(Math.max(at.column + command.columns, 0), lastColumn),
  };
}
