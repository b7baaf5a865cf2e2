import type { LineFile } from "../facts/line-file.ts";
import type { Spot } from "../facts/plan.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { Report } from "../findings/report.ts";
import type { Course } from "../plan/course.ts";
import type { Label } from "./plan-labels.ts";
import type { Point, Shape } from "./strip-shape.ts";

export const LABEL = 8;

export const NAME = 7.5;

export type PlanFile = Pick<
  LineFile,
  | "line"
  | "bends"
  | "points"
  | "fixedPoints"
  | "ties"
  | "planShapes"
  | "properties"
  | "scope"
  | "options"
  | "changeOrders"
> & {
  /** What is drawn as the work; left out: the work in force. */
  readonly work?: readonly Pick<ScopeItem, "id" | "title" | "place" | "from" | "to">[];
};

export type PlanFacts = Pick<Report, "tieIns" | "ties" | "extent">;

/** A drawing's way from the ground to the sheet. */
export interface Sheet {
  readonly course: Course;
  readonly to: (spot: Spot) => Point;
  readonly width: number;
  readonly height: number;
}

export interface Drawn {
  readonly shapes: readonly Shape[];
  readonly labels: readonly Label[];
}

export function ends(values: readonly number[]): [number, number] {
  return [Math.min(...values), Math.max(...values)];
}

export function middleOf(points: readonly Point[]): Point {
  const [left, right] = ends(points.map(([x]) => x));
  const [top, bottom] = ends(points.map(([, y]) => y));
  return [(left + right) / 2, (top + bottom) / 2];
}

export function between(from: Point, to: Point, part: number): Point {
  return [from[0] + (to[0] - from[0]) * part, from[1] + (to[1] - from[1]) * part];
}
