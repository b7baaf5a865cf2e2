import type { SlopeName } from "../facts/plumbing-code.ts";
import type { Cft } from "../length/station.ts";
import { type Ratio, ratio } from "../money/ratio.ts";

/** Fall over run, both in the same unit: exact, so that 2% and 1/4 in per foot stay two things. */
export type Slope = Ratio;

export interface SlopeMinimum {
  readonly slope: Slope;
  readonly words: string;
}

/**
 * Codes write "1/4 inch per foot or two percent" as if they were one; 1/4 in in 12 in is 1/48, or
 * 2.0833%. Which of the two is tested must be said.
 */
export const SLOPES: Record<SlopeName, SlopeMinimum> = {
  "half-inch": { slope: ratio(1n, 24n), words: "1/2 in per foot (4.1667%)" },
  "quarter-inch": { slope: ratio(1n, 48n), words: "1/4 in per foot (2.0833%)" },
  "two-percent": { slope: ratio(1n, 50n), words: "2%" },
  "eighth-inch": { slope: ratio(1n, 96n), words: "1/8 in per foot (1.0417%)" },
  "one-percent": { slope: ratio(1n, 100n), words: "1%" },
  "sixteenth-inch": { slope: ratio(1n, 192n), words: "1/16 in per foot (0.5208%)" },
};

/** Level of the invert from the level of the ground and the depth measured down to the invert. */
export function invertLevel(ground: Cft, depth: Cft): Cft {
  return ground - depth;
}

export function meetsSlope(slope: Slope, minimum: Slope): boolean {
  return slope.n * minimum.d >= minimum.n * slope.d;
}

const TWINS: Partial<Record<SlopeName, SlopeName>> = {
  "quarter-inch": "two-percent",
  "two-percent": "quarter-inch",
  "eighth-inch": "one-percent",
  "one-percent": "eighth-inch",
};

/** The other way in which codes write the same minimum; null where there is none. */
export function twinOf(name: SlopeName): SlopeName | null {
  return TWINS[name] ?? null;
}
