import type { Point, Shape } from "./strip-shape.ts";

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** How a draughtsman would fill each material; the word always stands beside it. */
const HATCHES: Record<string, (box: Box) => Shape[]> = {
  "vitrified-clay": (box) => slanted(box, 9, 1),
  "cast-iron": (box) => slanted(box, 3.5, 1),
  "ductile-iron": (box) => slanted(box, 3.5, -1),
  concrete: dotted,
  pvc: () => [],
  abs: (box) => level(box, [0.35, 0.65], false),
  polyethylene: (box) => level(box, [0.5], false),
  "bituminous-fibre": (box) => [...slanted(box, 6, 1), ...slanted(box, 6, -1)],
  "asbestos-cement": upright,
  "cured-in-place-liner": (box) => [...level(box, [0.2, 0.8], false), ...zigzag(box)],
  unknown: (box) => level(box, [0.5], true),
};

/** The strokes that fill a piece of pipe of this material; a name not listed is drawn as unknown. */
export function pipeHatch(material: string, box: Box): Shape[] {
  const draw = HATCHES[material] ?? HATCHES["unknown"];
  return draw ? draw(box) : [];
}

/** Strokes at 45 degrees, `gap` points apart, cut off at the box. */
function slanted(box: Box, gap: number, way: 1 | -1): Shape[] {
  const height = box.bottom - box.top;
  const shapes: Shape[] = [];
  for (let foot = box.left - height + gap / 2; foot < box.right; foot += gap) {
    const start = Math.max(foot, box.left);
    const end = Math.min(foot + height, box.right);
    if (end - start < 0.5) continue;
    const rise = (x: number) => (way === 1 ? box.bottom - (x - foot) : box.top + (x - foot));
    shapes.push(
      stroke([
        [start, rise(start)],
        [end, rise(end)],
      ]),
    );
  }
  return shapes;
}

function level(box: Box, parts: readonly number[], dash: boolean): Shape[] {
  return parts.map((part) => {
    const y = box.top + (box.bottom - box.top) * part;
    return {
      ...stroke([
        [box.left, y],
        [box.right, y],
      ]),
      dash,
    };
  });
}

function upright(box: Box): Shape[] {
  const shapes: Shape[] = [];
  for (let x = box.left + 4; x < box.right; x += 6) {
    shapes.push(
      stroke([
        [x, box.top],
        [x, box.bottom],
      ]),
    );
  }
  return shapes;
}

function dotted(box: Box): Shape[] {
  const shapes: Shape[] = [];
  const third = (box.bottom - box.top) / 3;
  let odd = false;
  for (let x = box.left + 3; x < box.right - 1; x += 5) {
    const y = box.top + third * (odd ? 2 : 1);
    shapes.push({
      ...stroke([
        [x - 0.5, y],
        [x + 0.5, y],
      ]),
      width: 1.1,
    });
    odd = !odd;
  }
  return shapes;
}

function zigzag(box: Box): Shape[] {
  const height = box.bottom - box.top;
  const points: Point[] = [];
  let up = true;
  for (let x = box.left; x <= box.right; x += 5) {
    points.push([x, box.top + height * (up ? 0.38 : 0.62)]);
    up = !up;
  }
  return points.length > 1 ? [stroke(points)] : [];
}

function stroke(points: readonly Point[]): Extract<Shape, { kind: "line" }> {
  return { kind: "line", points, width: 0.45, tone: "soft", dash: false };
}
