import { Line, Polygon, Polyline, Svg, Text } from "@react-pdf/renderer";
import type { Shape, StripPlan } from "#lib/domain/strip/strip-shape.ts";
import { FAMILY } from "./fonts.ts";
import { INK } from "./ink.ts";

/** A laid-out strip as vector drawing, one point of the plan to one point of the page. */
export function StripSvg({
  plan,
}: {
  readonly plan: Pick<StripPlan, "width" | "height" | "shapes">;
}) {
  return (
    <Svg width={plan.width} height={plan.height} viewBox={`0 0 ${plan.width} ${plan.height}`}>
      {plan.shapes.map((shape, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the shapes of a plan never move
        <ShapeSvg key={index} shape={shape} />
      ))}
    </Svg>
  );
}

function ShapeSvg({ shape }: { readonly shape: Shape }) {
  if (shape.kind === "words") {
    return (
      <Text
        x={shape.at[0]}
        y={shape.at[1]}
        fill={INK[shape.tone]}
        textAnchor={shape.anchor}
        {...(shape.upright ? { transform: `rotate(-90 ${shape.at[0]} ${shape.at[1]})` } : {})}
        style={{
          fontFamily: FAMILY as unknown as string,
          fontSize: shape.size,
          fontWeight: shape.strong ? 600 : 400,
        }}
      >
        {shape.text}
      </Text>
    );
  }
  const points = shape.points.map(([x, y]) => `${round(x)},${round(y)}`).join(" ");
  if (shape.kind === "area") {
    return (
      <Polygon
        points={points}
        fill={INK[shape.fill]}
        stroke={INK[shape.tone]}
        strokeWidth={shape.width}
      />
    );
  }
  const dash = shape.dash ? { strokeDasharray: "3 2.5" } : {};
  const [start, end] = shape.points;
  if (shape.points.length === 2 && start && end) {
    return (
      <Line
        x1={round(start[0])}
        y1={round(start[1])}
        x2={round(end[0])}
        y2={round(end[1])}
        stroke={INK[shape.tone]}
        strokeWidth={shape.width}
        {...dash}
      />
    );
  }
  return (
    <Polyline
      points={points}
      fill="none"
      stroke={INK[shape.tone]}
      strokeWidth={shape.width}
      {...dash}
    />
  );
}

function round(size: number): number {
  return Math.round(size * 100) / 100;
}
