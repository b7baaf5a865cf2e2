"use client";

import { type KeyboardEvent, useEffect, useId, useRef, useState } from "react";
import { formatFeet, plainFeet } from "#lib/domain/line/station.ts";
import type { StripDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import { layStrip, type StripSize } from "#lib/domain/strip/layout.ts";
import { useSelection } from "./selection.client.tsx";
import styles from "./strip.module.css";
import { StripFigure } from "./strip-figure.tsx";

/**
 * The strip drawing of a line: the record above the pipe, the camera below. Marks are chosen by
 * mouse, or by the arrow keys once the drawing has the focus; tables show the same choice.
 */
export function Strip({
  drawing,
  size = "large",
  onResize,
}: {
  readonly drawing: StripDrawing;
  readonly size?: StripSize;
  /** Where the page lets its reader choose the size. */
  readonly onResize?: (size: StripSize) => void;
}) {
  const id = useId().replace(/[^\w-]/g, "");
  const [zoom, setZoom] = useState(1);
  const [box, width] = useWidth();
  const { selected, select } = useSelection();
  const layout = layStrip(drawing, { width, size, zoom });
  const marks = inReadingOrder(drawing);
  const chosen = marks.find((mark) => mark.id === selected) ?? null;
  useRevealedMark(box, selected);

  function press(event: KeyboardEvent) {
    const next = markAfter(event.key, { marks, selected });
    if (next === undefined) return;
    event.preventDefault();
    select(next);
    if (next === null) return;
    box.current?.querySelector<SVGElement>(`[data-mark="${CSS.escape(next)}"]`)?.focus();
  }

  return (
    <figure className={styles["strip"]} data-size={size}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys move between the marks inside, which are buttons */}
      <div ref={box} className={styles["paper"]} onKeyDown={press}>
        <StripFigure
          drawing={drawing}
          layout={layout}
          size={size}
          id={id}
          selected={selected}
          onSelect={(mark) => select(mark === selected ? null : mark)}
        />
      </div>
      {layout.notes.length === 0 ? null : (
        <p className={styles["notes"]}>
          {layout.notes.map((note) => (
            <span key={note.letter}>
              <strong>{note.letter}</strong> {note.words}
            </span>
          ))}
        </p>
      )}
      <figcaption className={styles["caption"]}>
        <p role="status" className={styles["chosen"]}>
          {chosen === null ? (
            <span className="muted">{hintFor(size, drawing)}</span>
          ) : (
            chosen.sentence
          )}
        </p>
        <div className={styles["tools"]}>
          {onResize === undefined ? null : (
            <button
              type="button"
              className="link-button"
              onClick={() => onResize(size === "small" ? "large" : "small")}
            >
              {size === "small" ? "Larger drawing" : "Smaller drawing"}
            </button>
          )}
          <button
            type="button"
            className="link-button"
            onClick={() => setZoom(Math.min(zoom * 1.6, 12))}
          >
            Closer
          </button>
          <button
            type="button"
            className="link-button"
            disabled={zoom === 1}
            onClick={() => setZoom(Math.max(zoom / 1.6, 1))}
          >
            Farther
          </button>
          <button
            type="button"
            className="link-button"
            disabled={zoom === 1}
            onClick={() => setZoom(1)}
          >
            Whole line
          </button>
        </div>
        <details className={styles["text"]}>
          <summary>The same as a table</summary>
          <StripTable drawing={drawing} marks={marks} />
        </details>
      </figcaption>
    </figure>
  );
}

function hintFor(size: StripSize, drawing: StripDrawing): string {
  if (drawing.above.length + drawing.below.length + drawing.onPipe.length < 2) {
    return "Nothing stands on the drawing yet: it grows with the record and the runs.";
  }
  return size === "small"
    ? "Choose a mark to read what it is."
    : "Record above the pipe, camera below. Choose a mark to read what it is; arrow keys go from one to the next.";
}

function inReadingOrder(drawing: StripDrawing): StripMark[] {
  return [...drawing.onPipe, ...drawing.above, ...drawing.below].toSorted(
    (one, other) => one.station - other.station,
  );
}

/** The mark that a key leads to; null: none any more; undefined: the key means nothing here. */
function markAfter(
  key: string,
  { marks, selected }: { marks: readonly StripMark[]; selected: string | null },
): string | null | undefined {
  if (key === "Escape") return null;
  const at = marks.findIndex((mark) => mark.id === selected);
  const steps: Record<string, number> = {
    ArrowRight: at + 1,
    ArrowUp: at + 1,
    ArrowLeft: at < 0 ? 0 : at - 1,
    ArrowDown: at < 0 ? 0 : at - 1,
    Home: 0,
    End: marks.length - 1,
  };
  const next = steps[key];
  if (next === undefined) return undefined;
  return marks[Math.min(Math.max(next, 0), marks.length - 1)]?.id;
}

function StripTable({
  drawing,
  marks,
}: {
  readonly drawing: StripDrawing;
  readonly marks: readonly StripMark[];
}) {
  return (
    <div className="scroll stack-tight">
      <table className="plain">
        <caption>{drawing.title}</caption>
        <thead>
          <tr>
            <th scope="col" className="num">
              Station, ft
            </th>
            <th scope="col">Mark</th>
            <th scope="col">What it is</th>
          </tr>
        </thead>
        <tbody>
          {marks.map((mark) => (
            <tr key={mark.id}>
              <td className="num">
                {plainFeet(mark.station)}
                {mark.toStation === null ? "" : `–${plainFeet(mark.toStation)}`}
              </td>
              <th scope="row">{mark.label}</th>
              <td>{mark.sentence}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {[{ title: "Pipe", cells: drawing.pipes }, ...drawing.bands].map((band) => (
        <p key={band.title}>
          <strong>{band.title}:</strong>{" "}
          {band.cells
            .map((cell) => `${formatFeet(cell.from)} to ${formatFeet(cell.to)} ${cell.words}`)
            .join("; ")}
          .
        </p>
      ))}
    </div>
  );
}

/** Width of the paper on the screen; a sensible one until it is known, and for print. */
function useWidth() {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(1080);
  useEffect(() => {
    const { current } = box;
    if (current === null) return;
    const watcher = new ResizeObserver(([entry]) => {
      const wide = entry?.contentRect.width ?? 0;
      if (wide > 0) setWidth(Math.max(Math.floor(wide), 620));
    });
    watcher.observe(current);
    return () => watcher.disconnect();
  }, []);
  return [box, width] as const;
}

/** Scrolls a zoomed strip to what was chosen in a table. */
function useRevealedMark(box: { readonly current: HTMLElement | null }, selected: string | null) {
  useEffect(() => {
    const paper = box.current;
    if (selected === null || paper === null) return;
    const mark = paper.querySelector(`[data-mark="${CSS.escape(selected)}"]`);
    if (mark === null) return;
    const where = mark.getBoundingClientRect();
    const frame = paper.getBoundingClientRect();
    if (where.left >= frame.left && where.right <= frame.right) return;
    paper.scrollBy({ left: where.left - frame.left - frame.width / 2, behavior: "smooth" });
  }, [box, selected]);
}
