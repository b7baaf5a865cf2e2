import type { Cft } from "../length/station.ts";

/** Something that the federal rules ask for where people work. */
export interface SafetyRule {
  readonly key: string;
  /** Short, for a crew. */
  readonly words: string;
  /** Where it is written; empty where it is common practice. */
  readonly citation: string;
}

/** Something that the federal excavation rules ask for from a depth on. */
interface TrenchNeed extends SafetyRule {
  readonly key: "way-out" | "air-test" | "protection" | "competent-person" | "engineer";
  /** Depth in hundredths of a foot from which it holds. */
  readonly from: Cft;
  /** Only strictly deeper than `from`. */
  readonly beyond: boolean;
}

/*
 * 29 CFR 1926 Subpart P, read in public copies of 1926.651(b), (c)(2), (g)(1), (h), (j)(2), (k) and
 * 1926.652(a), (b)(1); OSHA's letter of January 9, 1991 on (k). That beyond 20 ft an engineer designs
 * is read as a summary of the subpart, so no paragraph is named. A state plan may ask for more.
 */
const TRENCH_NEEDS: readonly TrenchNeed[] = [
  {
    key: "way-out",
    words: "A ladder, stairway or ramp within 25 ft of every worker in the trench.",
    citation: "29 CFR 1926.651(c)(2)",
    from: 400,
    beyond: false,
  },
  {
    key: "air-test",
    words:
      "Test the air before anyone goes in: a hazardous atmosphere could exist near a sewer. Less than 19.5% oxygen: no one goes in.",
    citation: "29 CFR 1926.651(g)(1)",
    from: 400,
    beyond: true,
  },
  {
    key: "protection",
    words: "Slope, shore or shield the walls, unless the trench is wholly in stable rock.",
    citation: "29 CFR 1926.652(a)(1)",
    from: 500,
    beyond: false,
  },
  {
    key: "engineer",
    words: "A registered professional engineer designs the protection.",
    citation: "29 CFR 1926 Subpart P",
    from: 2000,
    beyond: true,
  },
];

/** Depth from which the walls of a trench need protection. */
export const PROTECTED_FROM: Cft = TRENCH_NEEDS.find(({ key }) => key === "protection")?.from ?? 0;

const LOOK_FIRST: TrenchNeed = {
  key: "competent-person",
  words:
    "Less than 5 ft: a competent person looks for any sign of a cave-in; where there is one, the walls are protected anyway.",
  citation: "29 CFR 1926.652(a)(1)(ii)",
  from: 0,
  beyond: false,
};

/** What a trench of a depth (hundredths of a foot) needs. */
export function trenchNeeds(depth: Cft): TrenchNeed[] {
  const needs = TRENCH_NEEDS.filter(
    (need) => depth > need.from || (!need.beyond && depth === need.from),
  );
  return depth < PROTECTED_FROM ? [LOOK_FIRST, ...needs] : needs;
}

/** Below the invert the trench goes on for the pipe's wall and its bedding: half a foot, assumed. */
const BELOW_INVERT: Cft = 50;

/** How deep the trench is where the invert lies so deep. */
export function trenchDepth(invert: Cft): Cft {
  return invert + BELOW_INVERT;
}

/**
 * Width at the top (hundredths of a foot) of a trench that is sloped on both sides, at one and a half
 * across to one up: the steepest for soil that nobody has classified (29 CFR 1926.652(b)(1)(i)). Null
 * deeper than 20 ft, where an engineer says.
 */
export function slopedTopWidth({
  depth,
  bottomWidth,
}: {
  readonly depth: Cft;
  readonly bottomWidth: Cft;
}): Cft | null {
  return depth > 2000 ? null : bottomWidth + 3 * depth;
}

/** What every excavation needs, however deep. */
export const EVERY_EXCAVATION: readonly SafetyRule[] = [
  {
    key: "utilities",
    words:
      "No digging before the utilities are located. Near a mark, find the line by hand or by vacuum; hold it up while the trench is open.",
    citation: "29 CFR 1926.651(b)",
  },
  {
    key: "inspection",
    words:
      "A competent person inspects the trench each day before work, as needed through the shift and after rain. Signs of danger: everyone out.",
    citation: "29 CFR 1926.651(k)(1)",
  },
  {
    key: "spoil",
    words: "Spoil, pipe and tools at least 2 ft back from the edge.",
    citation: "29 CFR 1926.651(j)(2)",
  },
  {
    key: "water",
    words:
      "No one works in a trench where water stands or rises without protection; a competent person watches the pump.",
    citation: "29 CFR 1926.651(h)",
  },
];
