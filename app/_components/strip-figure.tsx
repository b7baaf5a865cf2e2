import { memo } from "react";
import { MEASURES } from "#lib/domain/strip/measures.ts";
import { northArrow } from "#lib/domain/strip/north.ts";
import { xOn } from "#lib/domain/strip/places.ts";
import styles from "./strip.module.css";
import { ChosenMark } from "./strip-chosen.tsx";
import { HatchDefs, hatchOf } from "./strip-hatches.tsx";
import { Flags, Joins, PipeMarks } from "./strip-marks.tsx";
import type { StripPart } from "./strip-part.ts";
import { Bands, MarkRows, Ruler, Runs } from "./strip-rows.tsx";
import { Titles } from "./strip-titles.tsx";

interface StripFigureProps extends StripPart {
  /** The stretch that a chosen row of a table is about. */
  readonly spot: { readonly from: number; readonly to: number } | null;
  readonly title: string;
}

/** The drawing itself, as laid out. */
export const StripFigure = memo(function StripFigure(props: StripFigureProps) {
  const { layout, id, title } = props;
  return (
    <svg
      className={styles["drawing"]}
      width={layout.width}
      height={layout.height}
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      aria-label={title}
      data-size={layout.size}
    >
      <HatchDefs prefix={id} />
      <Spot {...props} />
      <HoldTints {...props} />
      <Titles layout={layout} />
      <North {...props} />
      <Bands {...props} />
      <Runs {...props} />
      <MarkRows {...props} />
      <Ruler {...props} />
      <path className={styles["faint"]} d={`M${layout.left} ${layout.recordY}H${layout.right}`} />
      <PublicMain {...props} />
      <Pipe {...props} />
      <Joins {...props} />
      <PipeMarks {...props} />
      <Flags {...props} />
    </svg>
  );
});

/** Which way north is at the main connection, in the margin beside it. */
function North({ drawing: { north }, layout }: StripFigureProps) {
  if (north == null || layout.size === "slim") return null;
  const reach = MEASURES[layout.size].north;
  const middle = (layout.pipeTop + layout.pipeBottom) / 2;
  const { tip, tail, head, letter } = northArrow(north.turn, [reach + 13, middle], reach);
  return (
    <svg role="img" aria-label={north.sentence} overflow="visible">
      <title>{north.sentence}</title>
      <path className={styles["north"]} d={`M${tail.join(" ")}L${tip.join(" ")}`} />
      <polygon className={styles["northHead"]} points={head.join(" ")} />
      <text
        className={styles["northLetter"]}
        x={letter[0]}
        y={letter[1]}
        textAnchor="middle"
        dominantBaseline="central"
      >
        N
      </text>
    </svg>
  );
}

/** The place of what is chosen, shaded from the record down to the ruler. */
function Spot({ layout, spot }: StripFigureProps) {
  if (spot === null) return null;
  const from = xOn(layout, spot.from);
  const to = xOn(layout, spot.to);
  return (
    <rect
      className={styles["spot"]}
      x={Math.min(from, to - 6)}
      y={layout.recordY - 6}
      width={Math.max(to - from, 6)}
      height={layout.rulerY - layout.recordY + 6}
    />
  );
}

/** What stops work on most of the line is said by its bracket; a tint all over would say nothing. */
const MOST_OF_THE_LINE = 0.6;

/** Where work is stopped, tinted from the bracket down through the pipe. */
function HoldTints({ drawing, layout }: StripFigureProps) {
  const x = (station: number) => xOn(layout, station);
  return layout.holds.flatMap((flag) =>
    flag.marks
      .filter((mark) => mark.loud)
      .filter(
        ({ station, toStation }) =>
          (toStation ?? station) - station < drawing.extent * MOST_OF_THE_LINE,
      )
      .map((mark) => {
        const from = x(mark.station);
        const width = Math.max(x(mark.toStation ?? mark.station) - from, 3);
        const top = layout.pointsY - 4;
        return (
          <rect
            key={mark.id}
            className={styles["tint"]}
            x={from}
            y={top}
            width={width}
            height={layout.pipeBottom + 4 - top}
          />
        );
      }),
  );
}

/** The public main, seen across: two walls with breaks, as it runs on beyond the sheet. */
function PublicMain({ layout, drawing, pick }: StripFigureProps) {
  const mark = drawing.onPipe.find((one) => one.kind === "main");
  const large = layout.size === "large";
  const half = large ? 14 : 8;
  const middle = layout.left - half;
  const reach = MEASURES[layout.size].main;
  const top = layout.pipeTop - reach;
  const bottom = layout.pipeBottom + reach;
  const broken = (y: number) =>
    `M${middle - half - 5} ${y}q${half / 2 + 2.5} -5 ${half + 5} 0t${half + 5} 0`;
  const shape = (
    <>
      <rect
        className={styles["ground"]}
        x={middle - half}
        y={top}
        width={half * 2}
        height={bottom - top}
      />
      <path
        className={styles["wall"]}
        d={`M${middle - half} ${top}V${bottom}M${middle + half} ${top}V${layout.pipeTop}M${middle + half} ${layout.pipeBottom}V${bottom}`}
      />
      <path className={styles["fine"]} d={broken(top)} />
      <path className={styles["fine"]} d={broken(bottom)} />
      <text
        className={styles["small"]}
        transform={`translate(${middle + 4} ${(top + bottom) / 2}) rotate(-90)`}
        textAnchor="middle"
      >
        {large ? "public main" : "main"}
      </text>
    </>
  );
  if (mark === undefined) return shape;
  return (
    <ChosenMark mark={mark} pick={pick}>
      {shape}
    </ChosenMark>
  );
}

/** The trunk: hatched by material, its walls broken where no camera looked. */
function Pipe({ drawing, layout, id }: StripFigureProps) {
  const { pipeTop, pipeBottom } = layout;
  const x = (station: number) => xOn(layout, station);
  const end = Math.max(...drawing.pipes.map((pipe) => pipe.to), 0);
  const unseen = (drawing.bands.find((band) => band.title === "Camera")?.cells ?? []).filter(
    (cell) => cell.words !== "seen",
  );
  const walls = (from: number, to: number) =>
    `M${x(from)} ${pipeTop}H${x(to)}M${x(from)} ${pipeBottom}H${x(to)}`;
  const known = drawing.onPipe.some((mark) => mark.kind === "upper-end");
  return (
    <g>
      {drawing.pipes.map((pipe) => (
        <g key={pipe.from}>
          <rect
            className={styles["ground"]}
            x={x(pipe.from)}
            y={pipeTop}
            width={x(pipe.to) - x(pipe.from)}
            height={pipeBottom - pipeTop}
          />
          <rect
            className={styles["hatch"]}
            x={x(pipe.from)}
            y={pipeTop}
            width={x(pipe.to) - x(pipe.from)}
            height={pipeBottom - pipeTop}
            fill={`url(#${id}-${hatchOf(pipe.material)})`}
          />
          {pipe.from === 0 ? null : (
            <path className={styles["wall"]} d={`M${x(pipe.from)} ${pipeTop}V${pipeBottom}`} />
          )}
        </g>
      ))}
      <path className={styles["wall"]} d={walls(0, end)} />
      {unseen.map((cell) => (
        <path key={cell.from} className={styles["unseen"]} d={walls(cell.from, cell.to)} />
      ))}
      <path
        className={known ? styles["wall"] : styles["fine"]}
        d={upperEnd(x(end), { pipeTop, pipeBottom, known })}
      />
    </g>
  );
}

/** A straight end where it is known, a break where the pipe goes on unseen. */
function upperEnd(
  x: number,
  { pipeTop, pipeBottom, known }: { pipeTop: number; pipeBottom: number; known: boolean },
): string {
  if (known) return `M${x} ${pipeTop}V${pipeBottom}`;
  const half = (pipeBottom - pipeTop) / 2;
  return `M${x} ${pipeTop - 3}q4 ${half / 2 + 1.5} 0 ${half + 3}t0 ${half + 3}`;
}
