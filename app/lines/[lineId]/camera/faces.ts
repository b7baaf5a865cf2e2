import type { LookedUp } from "#app/_components/grid/column.ts";
import { SIDES, type Side } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { type Course, compassAt, courseOf } from "#lib/domain/plan/course.ts";

/**
 * What each side of a tie-in faces, `north side`, beside left and right as they are typed; what is
 * not typed stands by its sightings. Null where the line has no bearing.
 */
export function facesOf(file: LineFile, tieIns: readonly TieInFinding[]): LookedUp | null {
  const course = courseOf(file);
  if (course === null) return null;
  const words = tieIns.map((finding) => [finding.tieIn.id, facesAt(course, finding)]);
  return { field: "side", words: Object.fromEntries(words) };
}

function facesAt(course: Course, { tieIn, station, compass }: TieInFinding) {
  // On a branch the sides are the branch’s, whose bearing nobody has entered.
  const facing = (side: Side) => {
    if (side === "unknown") return compass;
    return tieIn.parentId === null ? compassAt(course, station, side) : null;
  };
  return Object.fromEntries(
    SIDES.flatMap((side) => {
      const wind = facing(side);
      return wind === null ? [] : [[side, `${wind} side`]];
    }),
  );
}
