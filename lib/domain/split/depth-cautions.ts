import type { LineFile } from "../file/line-file.ts";
import { type Cft, formatFeet } from "../line/station.ts";

export interface DepthCaution {
  readonly title: string;
  readonly text: string;
  readonly citation: string;
}

interface DepthRule {
  readonly from: Cft;
  readonly title: string;
  readonly text: string;
  readonly citation: string;
}

/** Thresholds of the federal excavation rules; a state's own plan may ask for more. */
const RULES: readonly DepthRule[] = [
  {
    from: 400,
    title: "A way out within 25 ft",
    text: "At 4 ft and deeper the trench needs a ladder or ramp within 25 ft of everybody in it, and its air tested where bad air is likely, as it is beside an open sewer.",
    citation: "29 CFR 1926.651(c)(2) and (g)(1)",
  },
  {
    from: 500,
    title: "Walls sloped, shored or shielded",
    text: "At 5 ft and deeper the walls must be sloped, shored or shielded unless the trench is wholly in stable rock; a competent person looks at it before each shift and after rain. Price it.",
    citation: "29 CFR 1926.652(a)(1) and 1926.651(k)",
  },
  {
    from: 2000,
    title: "An engineer’s design",
    text: "Deeper than 20 ft the protection must be designed by a registered professional engineer. Price it, and the time that it takes.",
    citation: "29 CFR 1926.652(b) and (c), appendix F",
  },
];

/**
 * What the depth of the pipe means for the dig and its price: the thresholds that the deepest noted
 * point reaches. Where no depth is noted at all, says so: that is a caution too.
 */
export function depthCautions(file: Pick<LineFile, "points">): DepthCaution[] {
  const deepest = deepestPoint(file);
  if (deepest === null) {
    return [
      {
        title: "Depth unknown",
        text: "No depth is noted at any point of the line. Note it at a cleanout or by locating before you price a dig: from 5 ft on the walls need protection.",
        citation: "29 CFR 1926.652(a)(1)",
      },
    ];
  }
  const where = `The pipe lies ${formatFeet(deepest.depth)} deep at ${formatFeet(deepest.station)}.`;
  return RULES.filter((rule) => reaches(deepest.depth, rule.from)).map((rule) => ({
    title: rule.title,
    text: `${where} ${rule.text}`,
    citation: rule.citation,
  }));
}

function reaches(depth: Cft, from: Cft): boolean {
  return from === 2000 ? depth > from : depth >= from;
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
