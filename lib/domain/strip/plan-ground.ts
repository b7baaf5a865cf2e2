import type { PlanShape, ShapeKind } from "../facts/plan.ts";
import { streetOf } from "../party/stakeholders.ts";
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

export function groundPart({ planShapes, properties }: PlanFile, { to }: Sheet): Drawn {
  const drawn = planShapes.map((shape) => ({ shape, points: cornersOf(shape.outline).map(to) }));
  return {
    shapes: drawn.map(({ shape, points }) => groundShape(shape, points)),
    labels: drawn.flatMap(({ shape, points }) =>
      shape.kind === "building"
        ? buildingLabels(linesOf(shape, properties), points)
        : edgeLabel(shape, points),
    ),
  };
}

function groundShape({ kind }: PlanShape, points: readonly Point[]): Shape {
  const { tone, width, dash } = GROUND[kind];
  return kind === "building" && points.length > 2
    ? { kind: "area", points, fill: "paper", tone, width }
    : { kind: "line", points, width, tone, dash };
}

/** A building’s name under the address that it belongs to, house number first: outlines are narrow. */
function linesOf({ name, propertyId }: PlanShape, properties: PlanFile["properties"]): string[] {
  const property = properties.find(({ id }) => id === propertyId);
  const address = property === undefined ? "" : streetOf(property.address);
  const [, number = "", street = address] = /^(\d\S*)\s+(.+)$/.exec(address) ?? [];
  return [number, street, name.trim()].filter((line) => line !== "");
}

/** Over the middle, or nearer to a corner where that is taken. */
function buildingLabels(lines: readonly string[], points: readonly Point[]): Label[] {
  if (lines.length === 0 || points.length === 0) return [];
  const at = middleOf(points);
  const or = points.map((corner) => between(at, corner, 0.4));
  return [{ text: lines.join("\n"), size: NAME, tone: "soft", at, or, toward: null }];
}

function edgeLabel({ name }: PlanShape, points: readonly Point[]): Label[] {
  const [first, second] = points;
  if (name.trim() === "" || first === undefined || second === undefined) return [];
  const at = middleOf([first, second]);
  return [{ text: name.trim(), size: NAME, tone: "soft", at, toward: [0, -1] }];
}
