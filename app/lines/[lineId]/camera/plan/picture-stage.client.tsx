"use client";

import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from "react";
import type { Pixel } from "#lib/domain/plan/picture.ts";
import { pixelAt, pixelBeside } from "#lib/domain/plan/tracing.ts";
import styles from "./trace.module.css";

/** A picture in the browser. */
export interface ShownPicture {
  readonly src: string;
  readonly width: number;
  readonly height: number;
}

const ARROWS: Readonly<Record<string, Pixel>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** How far an arrow key moves the cross, in parts of the picture's width; with Shift it is one pixel. */
const STEP = 1 / 60;
const CLOSEST = 8;
/** How wide a picture is shown, in pixels of the screen, until that is known. */
const USUAL = 760;

/**
 * A picture whose points are pressed: with the mouse or a finger, or by moving a cross with the arrow
 * keys and pressing Enter. Backspace takes the last one back. What is drawn over it is in its pixels.
 */
export function PictureStage({
  picture,
  label,
  sayAt,
  onPress,
  onUndo,
  children,
}: {
  readonly picture: ShownPicture;
  /** What is to be pressed. */
  readonly label: string;
  /** A pixel in words, for the cross that keys move. */
  readonly sayAt: (pixel: Pixel) => string;
  readonly onPress: (pixel: Pixel) => void;
  readonly onUndo: () => void;
  /** What is drawn over the picture; the size of a screen pixel in pixels of the picture is given. */
  readonly children: (unit: number) => ReactNode;
}) {
  const { src, width, height } = picture;
  const [cross, setCross] = useState<Pixel | null>(null);
  const [zoom, setZoom] = useState(1);
  const drawing = useRef<SVGSVGElement>(null);
  const sill = useRef<HTMLDivElement>(null);
  const hintId = useId();
  const unit = width / ((sill.current?.clientWidth || USUAL) * zoom);

  function press(event: { readonly clientX: number; readonly clientY: number }) {
    const shown = drawing.current?.getBoundingClientRect();
    if (shown === undefined) return;
    const pixel = pixelAt({ x: event.clientX, y: event.clientY }, shown, picture);
    setCross(null);
    if (pixel !== null) onPress(pixel);
  }

  /** Closer or farther, with the middle of what shows staying where it is. */
  function look(next: number) {
    const box = sill.current;
    if (box === null) return;
    const x = (box.scrollLeft + box.clientWidth / 2) / box.scrollWidth;
    const y = (box.scrollTop + box.clientHeight / 2) / box.scrollHeight;
    setZoom(next);
    requestAnimationFrame(() => {
      box.scrollLeft = x * box.scrollWidth - box.clientWidth / 2;
      box.scrollTop = y * box.scrollHeight - box.clientHeight / 2;
    });
  }

  function steer(event: KeyboardEvent) {
    const arrow = ARROWS[event.key];
    const here = cross ?? { x: Math.round(width / 2), y: Math.round(height / 2) };
    if (arrow !== undefined) {
      const step = event.shiftKey ? 1 : Math.max(1, Math.round((width * STEP) / zoom));
      setCross(pixelBeside(here, { x: arrow.x * step, y: arrow.y * step }, picture));
    } else if (event.key === "Enter" || event.key === " ") {
      setCross(here);
      onPress(here);
    } else if (event.key === "Backspace" || event.key === "Delete") onUndo();
    else return;
    event.preventDefault();
  }

  return (
    <div className="stack-tight">
      <div ref={sill} className={styles["window"]}>
        <div
          role="application"
          aria-label={label}
          aria-describedby={hintId}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the keys that move the cross arrive here
          tabIndex={0}
          className={styles["stage"]}
          style={{ width: `${zoom * 100}%` }}
          onClick={press}
          onKeyDown={steer}
        >
          <svg
            ref={drawing}
            className={styles["picture"]}
            viewBox={`0 0 ${width} ${height}`}
            aria-hidden="true"
          >
            <image href={src} width={width} height={height} />
            {children(unit)}
            {cross === null ? null : <Cross at={cross} unit={unit} />}
          </svg>
        </div>
      </div>
      <div className="cluster">
        <button
          type="button"
          className="link-button"
          disabled={zoom >= CLOSEST}
          onClick={() => look(zoom * 2)}
        >
          Closer
        </button>
        <button
          type="button"
          className="link-button"
          disabled={zoom === 1}
          onClick={() => look(zoom / 2)}
        >
          Farther
        </button>
        <span id={hintId} className="muted small">
          By keyboard: arrows move a cross (with Shift by one pixel), Enter presses, Backspace takes
          the last point back.
        </span>
        <span role="status" className="small">
          {cross === null ? "" : `Cross: ${sayAt(cross)}`}
        </span>
      </div>
    </div>
  );
}

function Cross({ at: { x, y }, unit }: { readonly at: Pixel; readonly unit: number }) {
  const arm = 14 * unit;
  const path = `M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}`;
  const mark = useRef<SVGPathElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: wherever the keys move it, it stays in view
  useEffect(() => {
    mark.current?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }, [x, y]);
  return (
    <>
      <path className={styles["halo"]} d={path} />
      <path ref={mark} className={styles["cross"]} d={path} />
    </>
  );
}

/** A point that was pressed, with its name. */
export function Mark({
  at: { x, y },
  unit,
  words,
}: {
  readonly at: Pixel;
  readonly unit: number;
  readonly words: string;
}) {
  return (
    <>
      <circle className={styles["mark"]} cx={x} cy={y} r={4.5 * unit} />
      <text className={styles["words"]} x={x + 8 * unit} y={y - 6 * unit} fontSize={14 * unit}>
        {words}
      </text>
    </>
  );
}
