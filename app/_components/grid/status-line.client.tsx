"use client";

import type { GridColumn } from "./column.ts";
import styles from "./grid.module.css";
import { isDirty } from "./state.ts";
import type { Rows } from "./use-rows.ts";

/** Under a table: whether it is saved, the button that saves now, and what the column means. */
export function StatusLine({
  grid,
  hintId,
  column,
}: {
  readonly grid: Rows;
  readonly hintId: string;
  /** The column being typed in; null while the table has not the focus. */
  readonly column: GridColumn | null;
}) {
  const { state } = grid;
  return (
    <div className={styles["status"]}>
      <button
        type="button"
        className={isDirty(state) ? "button" : "link-button"}
        data-leave=""
        onClick={grid.save}
        aria-disabled={grid.saving}
      >
        Save now
      </button>
      <p role="status" aria-live="polite" className={styles["said"]} data-wrong={grid.wrong > 0}>
        {standing(grid)}
        {state.note === "" ? null : <span className="muted"> {state.note}</span>}
      </p>
      <p id={hintId} className={styles["hint"]}>
        {column?.hint === undefined ? null : (
          <>
            <strong>{column.title}:</strong> {column.hint}
          </>
        )}
        {column !== null && column.hint === undefined ? <Keys /> : null}
      </p>
    </div>
  );
}

/** `Saved 10:31`, or why it is not. */
function standing(grid: Rows): string {
  if (grid.saving) return "Saving …";
  if (grid.state.conflict !== null)
    return "Not saved yet: somebody else saved this table meanwhile.";
  if (grid.failure !== "") return `Not saved: ${withoutPrefix(grid.failure)}.`;
  if (grid.wrong > 0 && isDirty(grid.state)) return `Not saved yet: ${cells(grid.wrong)} mending.`;
  if (grid.wrong > 0) return `${cells(grid.wrong)} mending.`;
  if (isDirty(grid.state)) return "Not saved yet.";
  return grid.savedAt === null ? "All saved." : `Saved ${clockTime(grid.savedAt)}.`;
}

function cells(count: number): string {
  return count === 1 ? "1 cell needs" : `${count} cells need`;
}

function withoutPrefix(failure: string): string {
  return failure.replace(/^Nothing was saved[:.] /, "").replace(/\.$/, "");
}

function clockTime(at: string): string {
  const time = new Date(at);
  return `${time.getHours()}:${String(time.getMinutes()).padStart(2, "0")}`;
}

function Keys() {
  return (
    <span className={styles["keys"]}>
      <kbd>Enter</kbd> down, <kbd>F2</kbd> edit, <kbd>Ctrl Z</kbd> undo, <kbd>Ctrl D</kbd> as above,{" "}
      <kbd>Ctrl V</kbd> rows from a sheet, <kbd>Esc</kbd> leave
    </span>
  );
}
