import type { Report } from "../findings/report.ts";
import { formatFeet } from "../length/station.ts";
import { formatBearing } from "../plan/compass.ts";
import type { CourseFile } from "../plan/course.ts";
import { sayCount } from "../say/count.ts";
import type { PlanFacts, PlanFile } from "./plan-sheet.ts";

/** The whole drawing in one sentence. */
export function planSentence(
  { line, bends, planShapes }: PlanFile,
  { tieIns, extent }: PlanFacts,
): string {
  const way = line.bearing === null ? "on an unknown bearing" : formatBearing(line.bearing);
  const sides = tieIns
    .filter(({ compass }) => compass !== null)
    .map(
      ({ tieIn, station, compass }) =>
        `${tieIn.label} at ${formatFeet(station ?? 0)} on the ${compass} side`,
    );
  const turns =
    bends.length === 0 ? "" : `, with ${bends.length === 1 ? "1 bend" : `${bends.length} bends`}`;
  const ground = planShapes.length === 0 ? " No buildings, lot lines or streets are drawn." : "";
  return `Plan view, north up: the line leaves the main ${way} and runs ${formatFeet(extent)}${turns}.${sides.length === 0 ? "" : ` ${sides.join("; ")}.`}${ground}`;
}

/** Where the line lies, in one sentence for the head of its page. */
export function planAnswer({ line, bends }: CourseFile, { ties }: Pick<Report, "ties">): string {
  if (line.bearing === null) return "No bearing is entered, so no one knows which side is north";
  const turns = bends.length === 0 ? "straight" : sayCount(bends.length, "bend");
  const closed = ties.filter(({ state }) => state === "closes").length;
  const held =
    ties.length === 0 ? "no ties" : `${closed} of ${sayCount(ties.length, "tie")} closed`;
  return `${formatBearing(line.bearing)} from the main, ${turns}; ${held}`;
}
