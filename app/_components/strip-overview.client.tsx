"use client";

import type { PointerEvent } from "react";
import type { FileDrawing } from "#lib/domain/strip/drawing.ts";
import styles from "./strip.module.css";

/** The whole line in a bar, with the part that the drawing shows; press or drag to go there. */
export function StripOverview({
  drawing,
  from,
  to,
  onGo,
}: {
  readonly drawing: FileDrawing;
  /** The part that is in view, 0 to 1. */
  readonly from: number;
  readonly to: number;
  /** Brings a part of the line to the middle. */
  readonly onGo: (part: number) => void;
}) {
  const go = (event: PointerEvent<SVGSVGElement>) => {
    if (event.type === "pointermove" && event.buttons !== 1) return;
    const box = event.currentTarget.getBoundingClientRect();
    onGo((event.clientX - box.left) / box.width);
  };
  const at = (station: number) => `${(station / drawing.extent) * 100}%`;
  const first = Math.max(from, 0);
  return (
    <svg
      className={styles["overview"]}
      aria-hidden="true"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        go(event);
      }}
      onPointerMove={go}
    >
      <line className={styles["wall"]} x1="0" x2="100%" y1="11" y2="11" />
      {drawing.above.map((mark) => (
        <line
          key={mark.id}
          className={mark.loud ? styles["loudLine"] : styles["fine"]}
          x1={at(mark.station)}
          x2={at(mark.station)}
          y1="5"
          y2="10"
        />
      ))}
      {drawing.below.map((mark) => (
        <line
          key={mark.id}
          className={mark.loud ? styles["loudLine"] : styles["fine"]}
          x1={at(mark.station)}
          x2={at(mark.station)}
          y1="12"
          y2="18"
        />
      ))}
      <rect
        className={styles["window"]}
        x={`${first * 100}%`}
        y="1"
        width={`${(Math.min(to, 1) - first) * 100}%`}
        height="20"
      />
    </svg>
  );
}
