import type { Boundary, ResponsibilityRule } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { BOUNDARY_WORDS, type Part } from "./patterns.ts";

/** The place on this line at which a rule divides it. */
export interface BoundaryPlace {
  /** Null: no such point is entered. */
  readonly station: Cft | null;
  readonly words: string;
}

/** The point nearest the main that is of the boundary's kind; several of them are said. */
export function boundaryPlace(
  file: Pick<LineFile, "points">,
  { boundary }: Pick<ResponsibilityRule, "boundary">,
): BoundaryPlace {
  const noun = BOUNDARY_WORDS[boundary];
  const stations = stationsOf(file, boundary);
  if (stations.length === 0) return { station: null, words: `the ${noun}` };
  const station = Math.min(...stations);
  const which = stations.length === 1 ? `the ${noun}` : `the ${noun} nearest the main`;
  return { station, words: `${which} at ${formatFeet(station)}` };
}

/** On which side of the boundary a reach lies. */
export function partOf(reach: { readonly to: Cft }, { station }: BoundaryPlace): Part {
  if (station === null) return "unknown";
  return reach.to <= station ? "lower" : "upper";
}

function stationsOf(file: Pick<LineFile, "points">, boundary: Boundary): Cft[] {
  if (boundary === "main-connection") return [0];
  return file.points.filter((point) => point.kind === boundary).map((point) => point.station);
}
