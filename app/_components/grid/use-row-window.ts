import { useCallback, useEffect, useLayoutEffect, useState } from "react";
import { flushSync } from "react-dom";
import { DRAWN_WHOLE, type RowSpan, rowsInView, spansToDraw } from "./row-window.ts";

/** Before a row was measured. */
const USUAL_HEIGHT = 36;
const WANTED = "rowwanted";

export interface RowWindow {
  readonly spans: readonly RowSpan[];
  /** Pixels of one row, for the space that stands for rows not drawn. */
  readonly rowHeight: number;
}

/**
 * Which rows of a long table are drawn: those near the window, the last one, and whichever was asked
 * for last. All of them on paper. A short table is drawn whole and is not watched.
 */
export function useRowWindow(
  box: { readonly current: HTMLElement | null },
  count: number,
): RowWindow {
  const isLong = count > DRAWN_WHOLE;
  const [rowHeight, setRowHeight] = useState(USUAL_HEIGHT);
  const [inView, setInView] = useState<RowSpan>({ from: 0, to: DRAWN_WHOLE / 2 });
  const [wanted, setWanted] = useState(0);
  const [printing, setPrinting] = useState(false);

  const look = useCallback(() => {
    const body = box.current?.querySelector("tbody");
    if (!isLong || body === null || body === undefined) return;
    const height = heightOfRow(body) ?? USUAL_HEIGHT;
    setRowHeight((old) => (Math.abs(old - height) > 1 ? height : old));
    const { top } = body.getBoundingClientRect();
    const now = rowsInView({ count, top, height: window.innerHeight, rowHeight: height });
    setInView((old) => (now.from === old.from && now.to === old.to ? old : now));
  }, [box, count, isLong]);

  useEffect(() => {
    if (!isLong) return;
    let frame = 0;
    const soon = () => {
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(look);
    };
    soon();
    const options = { capture: true, passive: true };
    window.addEventListener("scroll", soon, options);
    window.addEventListener("resize", soon);
    return () => {
      cancelAnimationFrame(frame);
      window.removeEventListener("scroll", soon, options);
      window.removeEventListener("resize", soon);
    };
  }, [look, isLong]);

  useEffect(() => {
    const element = box.current;
    if (!isLong || element === null) return;
    const want = (event: Event) => {
      if (event instanceof CustomEvent) flushSync(() => setWanted(Number(event.detail)));
    };
    // The row with the cursor stays, wherever one scrolls.
    const enter = (event: FocusEvent) => {
      const row = event.target instanceof Element ? event.target.closest("[data-number]") : null;
      if (row !== null) setWanted(Number(row.getAttribute("data-number")));
    };
    const print = () => flushSync(() => setPrinting(true));
    const printed = () => setPrinting(false);
    element.addEventListener(WANTED, want);
    element.addEventListener("focusin", enter);
    window.addEventListener("beforeprint", print);
    window.addEventListener("afterprint", printed);
    return () => {
      element.removeEventListener(WANTED, want);
      element.removeEventListener("focusin", enter);
      window.removeEventListener("beforeprint", print);
      window.removeEventListener("afterprint", printed);
    };
  }, [box, isLong]);

  useKeptWidths(box, isLong, inView);
  const spans = printing
    ? [{ from: 0, to: count }]
    : spansToDraw(count, inView, [wanted, count - 1]);
  return { spans, rowHeight };
}

/** Has a row drawn that may be far from the window, before its cell is looked for. */
export function drawRow(box: HTMLElement | null, row: number): void {
  box?.dispatchEvent(new CustomEvent(WANTED, { detail: row }));
}

function heightOfRow(body: HTMLElement): number | null {
  const rows = [...body.querySelectorAll<HTMLElement>("tr[data-row-id]")];
  if (rows.length === 0) return null;
  return rows.reduce((sum, row) => sum + row.offsetHeight, 0) / rows.length;
}

/** Columns never get narrower while other rows are drawn: the table would jump under the eye. */
function useKeptWidths(
  box: { readonly current: HTMLElement | null },
  isLong: boolean,
  inView: RowSpan,
) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: measured anew for other rows
  useLayoutEffect(() => {
    if (!isLong) return;
    for (const head of box.current?.querySelectorAll<HTMLElement>("thead th") ?? []) {
      const least = Number.parseFloat(head.style.minWidth) || 0;
      if (head.offsetWidth > least) head.style.minWidth = `${head.offsetWidth}px`;
    }
  }, [box, isLong, inView]);
}
