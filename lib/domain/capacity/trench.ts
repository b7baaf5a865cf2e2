import type { Cft } from "../line/station.ts";

const SOILS = ["stable-rock", "type-a", "type-b", "type-c", "unknown"] as const;
export type Soil = (typeof SOILS)[number];

/** Something that the federal excavation rules ask for from a depth on. */
export interface TrenchNeed {
  readonly key: "way-out" | "air-test" | "protection" | "competent-person" | "engineer";
  readonly words: string;
  readonly citation: string;
  /** Depth in hundredths of a foot from which it holds. */
  readonly from: Cft;
  /** Only strictly deeper than `from`. */
  readonly beyond: boolean;
}

/** 29 CFR 1926 Subpart P; section numbers from memory. A state plan may ask for more. */
const TRENCH_NEEDS: readonly TrenchNeed[] = [
  {
    key: "way-out",
    words: "A ladder, stair or ramp within 25 ft of everybody in the trench.",
    citation: "29 CFR 1926.651(c)(2)",
    from: 400,
    beyond: false,
  },
  {
    key: "air-test",
    words: "Test the air where bad air may be expected: at least 19.5% oxygen.",
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
    citation: "29 CFR 1926.652(b) and (c)",
    from: 2000,
    beyond: true,
  },
];

/** Depth from which the walls of a trench need protection. */
export const PROTECTED_FROM: Cft = TRENCH_NEEDS.find(({ key }) => key === "protection")?.from ?? 0;

const LOOK_FIRST: TrenchNeed = {
  key: "competent-person",
  words:
    "Less than 5 ft: a competent person looks for any sign of a cave-in; where there is one, the walls are protected all the same.",
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

/**
 * Steepest wall as run over rise, in quarters: 29 CFR 1926 Subpart P Appendix B, Table B-1, for
 * trenches up to 20 ft. Soil that nobody has classified counts as type C.
 */
const RUN_IN_QUARTERS: Record<Soil, number> = {
  "stable-rock": 0,
  "type-a": 3,
  "type-b": 4,
  "type-c": 6,
  unknown: 6,
};

/** Width at the top of a sloped trench (hundredths of a foot), both walls alike. Null deeper than 20 ft. */
export function trenchTopWidth(
  { depth, bottomWidth }: { readonly depth: Cft; readonly bottomWidth: Cft },
  soil: Soil,
): Cft | null {
  if (depth > 2000) return null;
  return bottomWidth + Math.ceil((2 * depth * RUN_IN_QUARTERS[soil]) / 4);
}

/** Spoil lies at least 2 ft back from the edge (29 CFR 1926.651(j)(2)). */
export function isSpoilFarEnough(setBack: Cft): boolean {
  return setBack >= 200;
}
