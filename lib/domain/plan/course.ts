import type { Side } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Spot } from "../facts/plan.ts";
import type { Cft } from "../length/station.ts";
import { type CompassPoint, compassOf, sideBearing, turned } from "./compass.ts";

/** A straight part of the trunk: where it begins, and on which bearing it goes on upstream. */
interface Leg extends Spot {
  readonly from: Cft;
  readonly bearing: number;
}

/** How the trunk lies: straight parts from the main upstream. */
export type Course = readonly Leg[];

export type CourseFile = Pick<LineFile, "bends"> & {
  readonly line: Pick<LineFile["line"], "bearing">;
};

/**
 * The trunk on the ground, from the bearing looking upstream at the main connection and its bends, as
 * if it were level: what it rises is lost in the width of a line. Null while no bearing is entered.
 */
export function courseOf({ line, bends }: CourseFile): Course | null {
  if (line.bearing === null) return null;
  const legs: Leg[] = [{ from: 0, east: 0, north: 0, bearing: turned(line.bearing) }];
  for (const { station, turn, degrees } of bends.toSorted((a, b) => a.station - b.station)) {
    const last = legs.at(-1);
    if (last === undefined) break;
    const bearing = turned(last.bearing + (turn === "right" ? degrees : -degrees));
    legs.push({ from: station, ...along(last, station), bearing });
  }
  return legs;
}

/** Where a station of the trunk lies, in hundredths of a foot from the main connection. */
export function spotAt(course: Course, station: Cft): Spot {
  return along(legAt(course, station), station);
}

/** The bearing looking upstream at a station; at a bend, that of the pipe above it. */
export function bearingAt(course: Course, station: Cft): number {
  return legAt(course, station).bearing;
}

/** Corners of the trunk between two stations, both ends among them. */
export function pathBetween(course: Course, from: Cft, to: Cft): Spot[] {
  const bends = course.filter((leg) => leg.from > from && leg.from < to);
  return [
    spotAt(course, from),
    ...bends.map(({ east, north }) => ({ east, north })),
    spotAt(course, to),
  ];
}

/** The wind that a side faces at a station; null where there is no bearing, place or side. */
export function compassAt(
  course: Course | null,
  station: Cft | null,
  side: Side,
): CompassPoint | null {
  if (course === null || station === null) return null;
  const facing = sideBearing(bearingAt(course, station), side);
  return facing === null ? null : compassOf(facing);
}

/** So far from a spot on a bearing. */
export function offset({ east, north }: Spot, bearing: number, distance: number): Spot {
  const angle = (bearing * Math.PI) / 180;
  return { east: east + distance * Math.sin(angle), north: north + distance * Math.cos(angle) };
}

function along(leg: Leg, station: Cft): Spot {
  return offset(leg, leg.bearing, station - leg.from);
}

function legAt(course: Course, station: Cft): Leg {
  const leg = course.findLast(({ from }) => from <= station) ?? course[0];
  return leg ?? { from: 0, east: 0, north: 0, bearing: 0 };
}
