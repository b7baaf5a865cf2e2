import type { Side } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { PlanShape, Spot } from "../facts/plan.ts";
import type { Cft } from "../length/station.ts";
import { sideBearing } from "./compass.ts";
import { bearingAt, type CourseFile, courseOf, offset, spotAt } from "./course.ts";
import { cornersOf } from "./outline.ts";

/** Nothing farther from the line than this is named: 150 ft. */
const FAR = 15_000;

/**
 * The building that somebody meets first who walks from the line square to its side at a station;
 * null where bearing, side or plan do not tell, or nothing stands within 150 ft.
 */
export function buildingToward(
  file: CourseFile & Pick<LineFile, "planShapes">,
  station: Cft | null,
  side: Side,
): PlanShape | null {
  const course = courseOf(file);
  if (course === null || station === null) return null;
  const facing = sideBearing(bearingAt(course, station), side);
  if (facing === null) return null;
  const from = spotAt(course, station);
  const to = offset(from, facing, FAR);
  let nearest: { readonly shape: PlanShape; readonly at: number } | null = null;
  for (const shape of file.planShapes.filter(({ kind }) => kind === "building")) {
    const at = firstMeeting([from, to], cornersOf(shape.outline));
    if (at !== null && (nearest === null || at < nearest.at)) nearest = { shape, at };
  }
  return nearest?.shape ?? null;
}

/** How far along the way, from 0 to 1, a closed outline is met first. */
function firstMeeting(way: readonly [Spot, Spot], corners: readonly Spot[]): number | null {
  const meetings = corners.flatMap((corner, at) => {
    const next = corners[(at + 1) % corners.length];
    const met = next === undefined ? null : meeting(way, [corner, next]);
    return met === null ? [] : [met];
  });
  return meetings.length === 0 ? null : Math.min(...meetings);
}

/** Where two straight pieces cross, as a part of the first; null where they do not. */
function meeting([a, b]: readonly [Spot, Spot], [c, d]: readonly [Spot, Spot]): number | null {
  const [ax, ay] = [b.east - a.east, b.north - a.north];
  const [cx, cy] = [d.east - c.east, d.north - c.north];
  const cross = ax * cy - ay * cx;
  if (cross === 0) return null;
  const along = ((c.east - a.east) * cy - (c.north - a.north) * cx) / cross;
  const across = ((c.east - a.east) * ay - (c.north - a.north) * ax) / cross;
  return along >= 0 && along <= 1 && across >= 0 && across <= 1 ? along : null;
}
