import type { Direction, FootageFrom } from "#lib/domain/facts/run.ts";
import styles from "./run-way.module.css";

const MAIN = 26;
const UPPER = 330;
const LOWER = 78;
const LENS = 190;
const PIPE = 62;
const RULE = 98;

/**
 * How a run was made, as one would sketch it: the main at the left, where the camera went in, which
 * way its lens looks, and the footage from its zero to the lens.
 */
export function WayDrawing({
  looks,
  measuredFrom,
}: {
  readonly looks: Direction;
  readonly measuredFrom: FootageFrom;
}) {
  const way = looks === "downstream" ? UPPER : LOWER;
  const zero = measuredFrom === "main" ? MAIN : way;
  const ahead = looks === "downstream" ? -1 : 1;
  const words = `The lens looks ${looks === "downstream" ? "toward the main" : "up the line"}; the footage is measured from ${measuredFrom === "main" ? "the main" : "where the camera went in"}.`;
  return (
    <svg className={styles["drawing"]} viewBox="0 0 360 124" role="img" aria-label={words}>
      <title>{words}</title>
      <circle className={styles["pipe"]} cx={MAIN} cy={PIPE} r={16} />
      <text x={MAIN} y={PIPE - 24} textAnchor="middle">
        main
      </text>
      <path
        className={styles["pipe"]}
        d={`M${MAIN + 15} ${PIPE - 7} H352 M${MAIN + 15} ${PIPE + 7} H352`}
      />
      <path
        className={styles["pipe"]}
        d={`M${way - 7} ${PIPE - 7} V22 M${way + 7} ${PIPE - 7} V22`}
      />
      <text x={way} y={14} textAnchor="middle">
        went in
      </text>
      <path className={styles["cable"]} d={`M${way} 22 V${PIPE} H${LENS}`} />
      <rect className={styles["camera"]} x={LENS - 11} y={PIPE - 4} width={22} height={8} rx={2} />
      <path
        className={styles["view"]}
        d={`M${LENS + ahead * 12} ${PIPE} L${LENS + ahead * 40} ${PIPE - 6} V${PIPE + 6} Z`}
      />
      <text x={LENS + ahead * 26} y={PIPE - 14} textAnchor="middle">
        looks
      </text>
      <path
        className={styles["measure"]}
        d={`M${zero} ${RULE - 6} V${RULE + 6} M${zero} ${RULE} H${LENS} M${LENS} ${RULE - 6} V${RULE + 6}`}
      />
      <text x={zero} y={RULE + 20} textAnchor="middle">
        0
      </text>
      <text x={LENS} y={RULE + 20} textAnchor="middle">
        31.5 ft
      </text>
    </svg>
  );
}
