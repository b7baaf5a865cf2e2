import type { PlanShape, ShapeKind } from "../facts/plan.ts";
import { cornersOf } from "../plan/outline.ts";
import type { Label } from "./plan-labels.ts";
import { between, type Drawn, middleOf, NAME, type PlanFile, type Sheet } from "./plan-sheet.ts";
import type { Point, Shape, Tone } from "./strip-shape.ts";

const GROUND: Record<
  ShapeKind,
  { readonly tone: Tone; readonly width: number; readonly dash: boolean }
> = {
  building: { tone: "soft", width: 1, dash: false },
  "lot-line": { tone: "faint", width: 0.9, dash: true },
  "street-edge": { tone: "soft", width: 0.7, dash: false },
  easement: { tone: "soft", width: 0.6, dash: true },
  other: { tone: "faint", width: 0.7, dash: false },
};

export function groundPart({ planShapes }: PlanFile, { to }: Sheet): Drawn {
  const drawn = planShapes.map((shape) => ({ shape, points: cornersOf(shape.outline).map(to) }));
  return {
    shapes: drawn.map(({ shape, points }) => groundShape(shape, points)),
    labels: drawn.flatMap(({ shape, points }) => groundLabel(shape, points)),
  };
}

function groundShape({ kind }: PlanShape, points: readonly Point[]): Shape {
  const { tone, width, dash } = GROUND[kind];
  return kind === "building" && points.length > 2
    ? { kind: "area", points, fill: "paper", tone, width }
    : { kind: "line", points, width, tone, dash };
}

function groundLabel({ kind, name }: PlanShape, points: readonly Point[]): Label[] {
  const [first, second] = points;
  if (name.trim() === "" || first === undefined || second === undefined) return [];
  const common = { text: name.trim(), size: NAME, tone: "soft" as const };
  if (kind === "building") {
    const middle = middleOf(points);
    const or = points.map((corner) => between(middle, corner, 0.4));
    return [{ ...common, at: middle, or, toward: null }];
  }
  return [{ ...common, at: middleOf([first, second]), toward: [0, -1] }];
}
