import { PLAN_NOTE, type PlanView } from "#lib/domain/strip/draw-plan.ts";
import type { Shape } from "#lib/domain/strip/strip-shape.ts";
import styles from "./plan-figure.module.css";
import { Scroll } from "./scroll.tsx";

/**
 * The line on the ground, north up: the very shapes that the packet prints; on a phone the same with
 * less paper at its sides, so that the line is in view at once.
 */
export function PlanFigure({
  plan,
  narrow,
  note,
}: {
  readonly plan: PlanView;
  readonly narrow: PlanView | null;
  /** What else is said below it; empty: nothing. */
  readonly note: string;
}) {
  return (
    <figure className={styles["figure"]}>
      <div className={narrow === null ? undefined : styles["wide"]}>
        <Scroll>
          <PlanSvg plan={plan} className={`${styles["plan"]} ${styles["whole"]}`} />
        </Scroll>
      </div>
      {narrow === null ? null : (
        <div className={styles["narrow"]}>
          <Scroll>
            <PlanSvg plan={narrow} className={styles["plan"]} />
          </Scroll>
        </div>
      )}
      <figcaption className="muted small">
        {note === "" ? PLAN_NOTE : `${note} ${PLAN_NOTE}`}
      </figcaption>
    </figure>
  );
}

/** Points as pixels at which a drawing’s names are read on a phone. */
const READABLE = 4 / 3;

function PlanSvg({
  plan,
  className,
}: {
  readonly plan: PlanView;
  readonly className: string | undefined;
}) {
  return (
    <svg
      className={className}
      width={Math.round(plan.width * READABLE)}
      viewBox={`0 0 ${plan.width} ${Math.ceil(plan.height)}`}
      role="img"
      aria-label={plan.sentence}
    >
      {plan.shapes.map((shape, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the shapes of a plan never move
        <PlanShapeSvg key={index} shape={shape} />
      ))}
    </svg>
  );
}

function PlanShapeSvg({ shape }: { readonly shape: Shape }) {
  if (shape.kind === "words")
    return (
      <text
        className={styles[shape.tone]}
        x={round(shape.at[0])}
        y={round(shape.at[1])}
        fontSize={shape.size}
        fontWeight={shape.strong ? 600 : 400}
        textAnchor={shape.anchor}
      >
        {shape.text}
      </text>
    );
  const points = shape.points.map(([x, y]) => `${round(x)},${round(y)}`).join(" ");
  if (shape.kind === "area")
    return (
      <polygon
        points={points}
        className={`${styles[`fill-${shape.fill}`]} ${styles[`line-${shape.tone}`]}`}
        strokeWidth={shape.width}
      />
    );
  return (
    <polyline
      points={points}
      className={`${styles["open"]} ${styles[`line-${shape.tone}`]}`}
      strokeWidth={shape.width}
      strokeDasharray={shape.dash ? "3 2.5" : undefined}
    />
  );
}

function round(size: number): number {
  return Math.round(size * 100) / 100;
}
