import type { Spot } from "../facts/plan.ts";
import type { Cft } from "../length/station.ts";
import { textWidth } from "../say/text-width.ts";
import type { Label } from "./plan-labels.ts";
import { type Frame, MARGIN, type Tiling, toPoints } from "./plan-scale.ts";
import { ends, NAME } from "./plan-sheet.ts";
import type { Point, Shape } from "./strip-shape.ts";

// A plan view that needs several sheets at its scale is cut into cells, one to a sheet.

/** The ground that a plan view shows. */
export interface Bounds {
  readonly west: Cft;
  readonly east: Cft;
  readonly south: Cft;
  readonly north: Cft;
}

export function sizeOf({ west, east, south, north }: Bounds) {
  return { east: east - west, north: north - south };
}

/** What a sheet shows of the drawing, in its points. */
export interface Window {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** One sheet of a plan view. */
export interface PlanCell {
  readonly column: number;
  readonly row: number;
  readonly height: number;
  readonly to: (spot: Spot) => Point;
  /** Up to its match lines; where there is none, to the edge of the sheet. */
  readonly window: Window;
  /** Where its neighbors begin, if there were any. */
  readonly cuts: Window;
}

/** The sheets row by row from the northwest, each with an even part of the drawing. */
export function cellsOf(bounds: Bounds, frame: Frame, tiling: Tiling): PlanCell[] {
  const { feetPerInch, columns, rows } = tiling;
  const size = sizeOf(bounds);
  const width = toPoints(size.east, feetPerInch) / columns;
  const deep = toPoints(size.north, feetPerInch) / rows;
  const height = Math.min(frame.height, deep + 2 * MARGIN);
  const left = (frame.width - width) / 2;
  const cuts = { left, right: left + width, top: MARGIN, bottom: MARGIN + deep };
  return Array.from({ length: columns * rows }, (_, at) => {
    const column = at % columns;
    const row = Math.floor(at / columns);
    return {
      column,
      row,
      height,
      cuts,
      to: ({ east, north }: Spot): Point => [
        left + toPoints(east - bounds.west, feetPerInch) - column * width,
        MARGIN + toPoints(bounds.north - north, feetPerInch) - row * deep,
      ],
      window: {
        left: column === 0 ? 0 : cuts.left,
        right: column === columns - 1 ? frame.width : cuts.right,
        top: row === 0 ? 0 : cuts.top,
        bottom: row === rows - 1 ? height : cuts.bottom,
      },
    };
  });
}

/** Signs up to this size stand whole on the sheet that has their middle. */
const SIGN = 20;

/** What of a shape lies in the window. */
export function clip(shape: Shape, window: Window): Shape[] {
  if (shape.kind === "words") return isIn(shape.at, window) ? [shape] : [];
  if (shape.points.length === 0) return [];
  if (shape.points.every((point) => isIn(point, window))) return [shape];
  const [left, right] = ends(shape.points.map(([x]) => x));
  const [top, bottom] = ends(shape.points.map(([, y]) => y));
  if (shape.kind === "area") {
    const isSign = right - left <= SIGN && bottom - top <= SIGN;
    if (isSign) return isIn([(left + right) / 2, (top + bottom) / 2], window) ? [shape] : [];
    const { tone, width, points } = shape;
    const [first] = points;
    const around = first === undefined ? points : [...points, first];
    return clipPath(around, window).map((piece) => ({
      kind: "line",
      points: piece,
      tone,
      width,
      dash: false,
    }));
  }
  return clipPath(shape.points, window).map((points) => ({ ...shape, points }));
}

/** Words stand on the sheet that has their place, or the first of those where they may stand as well. */
export function labelIn(label: Label, window: Window): Label[] {
  const [at, ...or] = [label.at, ...(label.or ?? [])].filter((point) => isIn(point, window));
  if (at === undefined || (label.toward !== null && !isIn(label.at, window))) return [];
  return [{ ...label, at, or }];
}

function isIn([x, y]: Point, { left, right, top, bottom }: Window): boolean {
  return x >= left && x <= right && y >= top && y <= bottom;
}

/** The pieces of a path inside of the window. */
function clipPath(points: readonly Point[], window: Window): Point[][] {
  const pieces: Point[][] = [];
  for (const [at, to] of points.slice(1).entries()) {
    const from = points[at];
    const inside = from === undefined ? null : clipLine(from, to, window);
    if (inside === null) continue;
    const last = pieces.at(-1);
    const end = last?.at(-1);
    if (end !== undefined && end[0] === inside[0][0] && end[1] === inside[0][1])
      last?.push(inside[1]);
    else pieces.push([...inside]);
  }
  return pieces;
}

/** The part of a straight line inside of the window, after Liang and Barsky; null: none. */
function clipLine(from: Point, to: Point, window: Window): [Point, Point] | null {
  const [x, y] = from;
  const [dx, dy] = [to[0] - x, to[1] - y];
  const sides = [
    [-dx, x - window.left],
    [dx, window.right - x],
    [-dy, y - window.top],
    [dy, window.bottom - y],
  ] as const;
  if (sides.some(([way, room]) => way === 0 && room < 0)) return null;
  const enter = Math.max(0, ...sides.flatMap(([way, room]) => (way < 0 ? [room / way] : [])));
  const leave = Math.min(1, ...sides.flatMap(([way, room]) => (way > 0 ? [room / way] : [])));
  if (enter >= leave) return null;
  const at = (part: number): Point => [x + part * dx, y + part * dy];
  // An end that lies inside stays just as it is, so that the pieces of a path join.
  return [enter === 0 ? from : at(enter), leave === 1 ? to : at(leave)];
}

/** The match lines of a sheet with the number of the sheet that goes on there, and what they take up. */
export function cutsOf(
  { column, row, cuts }: PlanCell,
  cells: readonly PlanCell[],
): { readonly shapes: readonly Shape[]; readonly boxes: readonly Window[] } {
  const { left, right, top, bottom } = cuts;
  const sides: readonly (readonly [number, number, Point, Point])[] = [
    [-1, 0, [left, top], [left, bottom]],
    [1, 0, [right, top], [right, bottom]],
    [0, -1, [left, top], [right, top]],
    [0, 1, [left, bottom], [right, bottom]],
  ];
  const drawn = sides.flatMap(([across, down, from, to]) => {
    const next = cells.findIndex(
      (cell) => cell.column === column + across && cell.row === row + down,
    );
    return next < 0 ? [] : [matchLine(from, to, { across, down, number: next + 1 })];
  });
  return {
    shapes: drawn.flatMap(({ shapes }) => shapes),
    boxes: drawn.flatMap(({ boxes }) => boxes),
  };
}

function matchLine(
  from: Point,
  to: Point,
  { across, down, number }: { across: number; down: number; number: number },
) {
  const text = `match line: see sheet ${number}`;
  const long = textWidth(text, NAME, true) / 2;
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  // Beyond the line, where the other sheet goes on; turned words stand left of their point.
  const at: Point =
    across === 0
      ? [middle[0], middle[1] + (down < 0 ? -5 : 11)]
      : [middle[0] + (across < 0 ? -5 : 11), middle[1]];
  const [wide, high] = across === 0 ? [long, NAME] : [NAME, long];
  const shapes: Shape[] = [
    { kind: "line", points: [from, to], width: 0.8, tone: "ink", dash: true },
    {
      kind: "words",
      at,
      text,
      size: NAME,
      strong: true,
      tone: "ink",
      anchor: "middle",
      upright: across !== 0,
    },
  ];
  const boxes = [
    around(from, to, 2),
    around([at[0] - wide, at[1] - high], [at[0] + wide, at[1] + high], 2),
  ];
  return { shapes, boxes };
}

function around([x1, y1]: Point, [x2, y2]: Point, by: number): Window {
  return { left: x1 - by, right: x2 + by, top: y1 - by, bottom: y2 + by };
}
