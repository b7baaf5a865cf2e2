import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { METHOD_WORDS, percentOf } from "#lib/domain/capacity/words.ts";
import type { Capacity } from "#lib/domain/findings/capacity.ts";
import { plainFeet } from "#lib/domain/length/station.ts";
import styles from "./capacity.module.css";
import { FRAME, type SectionShape, sectionShape } from "./section-shape.ts";

/** The pipe from the side, with what every level may be off; the same as a table for who cannot see it. */
export function LongSection({ capacity }: { readonly capacity: Capacity }) {
  const shape = sectionShape(capacity);
  if (shape === null) return null;
  return (
    <figure className="stack-tight">
      <Scroll>
        <svg
          className={styles["section"]}
          viewBox={`0 0 ${FRAME.width} ${FRAME.height}`}
          role="img"
          aria-label="Profile: ground and invert by station (same data as the table)."
        >
          <Grid shape={shape} />
          <Ground shape={shape} />
          <Pipe shape={shape} />
          {shape.slopes.map(({ x, y, at }) => (
            <text key={at} x={x} y={y - 10} className={styles["slope"]}>
              {percentOf(capacity.slopes[at]?.slope ?? 0)}
              {capacity.slopes[at]?.verdict === "average-only" ? " on average" : ""}
            </text>
          ))}
        </svg>
      </Scroll>
      <figcaption className="small muted">
        Flow is to the left. Bars show how far each invert may be off; drawn {shape.stretched} times
        taller than long.
      </figcaption>
      <details>
        <summary>Levels as a table</summary>
        <LevelTable capacity={capacity} />
      </details>
    </figure>
  );
}

function Grid({ shape }: { readonly shape: SectionShape }) {
  const right = FRAME.width - FRAME.right;
  const foot = FRAME.height - FRAME.bottom + 20;
  return (
    <g>
      {shape.ticks.map(({ level, y }) => (
        <g key={level}>
          <line x1={FRAME.left} x2={right} y1={y} y2={y} className={styles["tick"]} />
          <text x={FRAME.left - 8} y={y + 4} className={styles["level"]}>
            {plainFeet(level)}
          </text>
        </g>
      ))}
      {shape.points
        .filter(({ named }) => named)
        .map(({ station, x }) => (
          <text key={station} x={x} y={foot} className={styles["station"]}>
            {plainFeet(station)}
          </text>
        ))}
      <text x={FRAME.left - 8} y={12} className={styles["level"]}>
        level, ft
      </text>
      <text x={right} y={foot + 18} className={styles["end"]}>
        feet from the main
      </text>
    </g>
  );
}

function Ground({ shape }: { readonly shape: SectionShape }) {
  const known = shape.points.flatMap(({ x, groundY }) =>
    groundY === null ? [] : [{ x, y: groundY }],
  );
  const [first] = known;
  if (first === undefined) return null;
  return (
    <g>
      <polyline points={pathOf(known)} className={styles["ground"]} />
      {known.map(({ x, y }) => (
        <circle key={x} cx={x} cy={y} r={2.5} className={styles["dot"]} />
      ))}
      <text x={first.x + 8} y={first.y - 8} className={styles["name"]}>
        ground
      </text>
    </g>
  );
}

function Pipe({ shape }: { readonly shape: SectionShape }) {
  const [first] = shape.points;
  return (
    <g>
      <polyline
        points={pathOf(shape.points.map(({ x, invertY }) => ({ x, y: invertY })))}
        className={styles["pipe"]}
      />
      {shape.points.map(({ station, x, highY, lowY, invertY }) => (
        <g key={station}>
          <path
            d={`M${x} ${highY}V${lowY}M${x - 5} ${highY}h10M${x - 5} ${lowY}h10`}
            className={styles["whisker"]}
          />
          <circle cx={x} cy={invertY} r={3.5} className={styles["dot"]} />
        </g>
      ))}
      {first === undefined ? null : (
        <text x={first.x + 8} y={first.invertY + 18} className={styles["name"]}>
          invert
        </text>
      )}
    </g>
  );
}

function pathOf(points: readonly { readonly x: number; readonly y: number }[]): string {
  return points.map(({ x, y }) => `${x},${y}`).join(" ");
}

function LevelTable({ capacity }: { readonly capacity: Capacity }) {
  const feet = (length: number | null) => (length === null ? "unknown" : plainFeet(length));
  return (
    <Scroll>
      <table className="plain">
        <Heads
          of={[
            "Station, ft",
            "Ground, ft",
            "Depth, ft",
            "Invert, ft",
            "Uncertainty, ± ft",
            "Measured by",
          ]}
        />
        <tbody>
          {capacity.levels.map((level) => (
            <tr key={level.levelId}>
              <th scope="row">{plainFeet(level.station)}</th>
              <td>{feet(level.ground)}</td>
              <td>{feet(level.depth)}</td>
              <td>{feet(level.invert)}</td>
              <td>± {plainFeet(level.uncertainty)}</td>
              <td>
                {METHOD_WORDS[level.method]}
                {level.used ? "" : "; not used for slope"}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
