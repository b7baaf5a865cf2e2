import { useEffect, useRef } from "react";
import type { GridLine, GridState } from "./grid-state.ts";
import type { Place } from "./problems.ts";
import { drawRow } from "./use-row-window.ts";

/** Puts the cursor into a cell, or opens the row that is folded around it. */
export function focusCell(
  box: HTMLElement | null,
  { row, column }: { row: number; column: number },
) {
  // The blank line may become a row with the same stroke: look for the cell once that is drawn.
  requestAnimationFrame(() => {
    drawRow(box, row);
    const cell =
      box?.querySelector<HTMLElement>(`[data-place="${row}:${column}"]`) ??
      box?.querySelector<HTMLElement>(`tr[data-folded="true"][data-number="${row}"] button`);
    cell?.focus();
    cell?.scrollIntoView({ block: "nearest", inline: "nearest" });
  });
}

/** Where the row with the cursor went, the cursor goes to the row that took its place. */
export function stayNear(box: HTMLElement | null, { row, column }: Place) {
  requestAnimationFrame(() => {
    if (box === null || box.contains(document.activeElement)) return;
    drawRow(box, row);
    const at = Array.from({ length: row + 1 }, (_none, up) => row - up);
    const cells = at.map((each) =>
      box.querySelector<HTMLElement>(`[data-place="${each}:${column}"]`),
    );
    cells.find((cell) => cell !== null)?.focus();
  });
}

/** Brings the row of what was selected on the strip into view, unless somebody is typing here. */
export function useRevealed(
  box: { readonly current: HTMLElement | null },
  selected: string | null,
  lines: readonly GridLine[],
) {
  const now = useRef(lines);
  now.current = lines;
  useEffect(() => {
    if (selected === null || box.current?.contains(document.activeElement)) return;
    const at = now.current.findIndex(({ id }) => id === selected);
    if (at < 0) return;
    drawRow(box.current, at);
    const row = box.current?.querySelector(`[data-row-id="${CSS.escape(selected)}"]`);
    row?.scrollIntoView({ block: "nearest" });
  }, [box, selected]);
}

/** Once it is said where pasted columns go, the cursor is back where they were pasted. */
export function useBackToCell(
  box: { readonly current: HTMLElement | null },
  asked: GridState["asked"],
) {
  const before = useRef(asked);
  useEffect(() => {
    const last = before.current;
    before.current = asked;
    if (last !== null && asked === null)
      focusCell(box.current, { row: last.at, column: last.column });
  }, [box, asked]);
}
