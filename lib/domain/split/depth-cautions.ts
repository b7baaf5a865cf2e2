import { type TrenchNeed, trenchNeeds } from "../capacity/trench.ts";
import type { LineFile } from "../file/line-file.ts";
import { type Cft, formatFeet } from "../line/station.ts";

export interface DepthCaution {
  /** How deep the pipe lies where it lies deepest, or that nobody noted it. */
  readonly sentence: string;
  /** What a trench of that depth needs, and has to be priced. */
  readonly needs: readonly TrenchNeed[];
}

/**
 * What the depth of the pipe means for the dig and its price, by the deepest point that is noted.
 * Where no depth is noted at all, says so: that is a caution too.
 */
export function depthCaution(file: Pick<LineFile, "points">): DepthCaution {
  const deepest = deepestPoint(file);
  if (deepest === null) {
    return {
      sentence:
        "No depth is noted at any point of the line. Note it at a cleanout, or locate it, before you price a dig: from 5 ft on the walls of a trench need protection.",
      needs: [],
    };
  }
  return {
    sentence: `The pipe lies ${formatFeet(deepest.depth)} deep at ${formatFeet(deepest.station)}, the deepest point that is noted. A trench there needs, and the price has to hold:`,
    needs: trenchNeeds(deepest.depth),
  };
}

function deepestPoint(
  file: Pick<LineFile, "points">,
): { readonly depth: Cft; readonly station: Cft } | null {
  let deepest: { depth: Cft; station: Cft } | null = null;
  for (const { depth, station } of file.points) {
    if (depth === null) continue;
    if (deepest === null || depth > deepest.depth) deepest = { depth, station };
  }
  return deepest;
}
