"use client";

import { useRef } from "react";
import { choicesOf } from "./choices.ts";
import type { GridColumn } from "./column.ts";
import styles from "./grid.module.css";
import { type Place, placeAfter } from "./problems.ts";
import { isDirty } from "./state.ts";
import type { Rows } from "./use-rows.ts";

/**
 * Under a table: whether it is saved, the button that saves now, the way to what is to be mended, and
 * what the column means. It keeps its height, so that nothing below moves when the table is left.
 */
export function StatusLine({
  grid,
  hintId,
  column,
  onGo,
}: {
  readonly grid: Rows;
  readonly hintId: string;
  /** The column being typed in; null while the table has not the focus. */
  readonly column: GridColumn | null;
  readonly onGo: (place: Place) => void;
}) {
  const { state, unread } = grid;
  function save() {
    const [first] = unread;
    if (first === undefined) grid.save();
    else onGo(first);
  }
  return (
    <div className={styles["status"]}>
      <div className={styles["standing"]}>
        <button
          type="button"
          className={isDirty(state) ? "button" : "link-button"}
          data-leave=""
          onClick={save}
          aria-disabled={grid.saving}
        >
          Save now
        </button>
        <p
          role="status"
          aria-live="polite"
          className={styles["said"]}
          data-wrong={grid.problems.length > 0}
        >
          {isToMend(grid) ? <ToMend grid={grid} onGo={onGo} /> : standing(grid)}
          {state.note === "" ? null : <span className="muted"> {state.note}</span>}
        </p>
      </div>
      <p id={hintId} className={styles["hint"]}>
        {column?.hint === undefined ? null : (
          <>
            <strong>{column.title}:</strong> {column.hint}
          </>
        )}
        {column !== null && column.hint === undefined ? <Keys column={column} /> : null}
      </p>
    </div>
  );
}

function isToMend({ saving, state, failure, problems }: Rows): boolean {
  return !saving && state.conflict === null && failure === "" && problems.length > 0;
}

/** How many cells are to be mended; a press goes to the first, another to the next. */
function ToMend({ grid, onGo }: { readonly grid: Rows; readonly onGo: (place: Place) => void }) {
  const last = useRef<Place | null>(null);
  const { problems, state } = grid;
  function go() {
    last.current = placeAfter(problems, last.current);
    if (last.current !== null) onGo(last.current);
  }
  return (
    <>
      {isDirty(state) ? "Not saved: " : null}
      <button type="button" className={`link-button ${styles["go"]}`} onClick={go}>
        {problems.length === 1 ? "1 cell needs fixing" : `${problems.length} cells need fixing`}
      </button>
      .
    </>
  );
}

/** `Saved 10:31`, or why it is not. */
function standing(grid: Rows): string {
  if (grid.saving) return "Saving …";
  if (grid.state.conflict !== null)
    return "Not saved: someone else saved this table in the meantime.";
  if (grid.failure !== "") return `Not saved: ${withoutPrefix(grid.failure)}.`;
  if (isDirty(grid.state)) return "Not saved yet.";
  return grid.savedAt === null ? "All saved." : `Saved ${clockTime(grid.savedAt)}.`;
}

function withoutPrefix(failure: string): string {
  return failure.replace(/^Not saved[:.] /, "").replace(/\.$/, "");
}

function clockTime(at: string): string {
  return new Date(at).toLocaleTimeString("en-US", { hour: "numeric", minute: "2-digit" });
}

function Keys({ column }: { readonly column: GridColumn }) {
  return (
    <span className={styles["keys"]}>
      <kbd>Enter</kbd> next row, <kbd>F2</kbd> {choicesOf(column).length > 0 ? "choices" : "edit"},{" "}
      <kbd>Ctrl+Z</kbd> undo, <kbd>Ctrl+D</kbd> copy from above, <kbd>Ctrl+V</kbd> paste rows,{" "}
      <kbd>Esc</kbd> cancel, then leave the table
    </span>
  );
}
