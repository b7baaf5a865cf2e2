import type { SlopeName } from "../facts/plumbing-code.ts";
import type { Cft } from "../length/station.ts";
import { type Ratio, ratio } from "../money/ratio.ts";

/** Fall over run, both in the same unit: exact, so that 2% and 1/4 in per foot stay two things. */
export type Slope = Ratio;

/** A place on the pipe with the level of its invert above any one datum, hundredths of a foot. */
export interface InvertPoint {
  readonly station: Cft;
  readonly invert: Cft;
}

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

/** Slope between two points, rising upstream; below zero is a back-fall. Null at the same station. */
export function slopeBetween(one: InvertPoint, other: InvertPoint): Slope | null {
  const run = other.station - one.station;
  return run === 0 ? null : ratio(BigInt(other.invert - one.invert), BigInt(run));
}

/** `1/60` → `1.6667%`. */
export function formatSlope({ n, d }: Slope): string {
  const percent = (Number(n) / Number(d)) * 100;
  return `${percent.toFixed(4).replace(/\.?0+$/, "")}%`;
}

export function meetsSlope(slope: Slope, minimum: Slope): boolean {
  return slope.n * minimum.d >= minimum.n * slope.d;
}

export interface SlopeCheck {
  readonly passes: boolean;
  readonly sentence: string;
}

/** Holds a slope against one stated minimum; where the other reading would differ, says so. */
export function checkSlope(slope: Slope, against: SlopeName): SlopeCheck {
  const { slope: minimum, words } = SLOPES[against];
  const passes = meetsSlope(slope, minimum);
  const verb = passes ? "meets" : "is less than";
  return {
    passes,
    sentence: `${formatSlope(slope)} ${verb} the minimum tested here, ${words}.${otherReading(slope, against, passes)}`,
  };
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

function otherReading(slope: Slope, against: SlopeName, passes: boolean): string {
  const twin = twinOf(against);
  if (twin === null) return "";
  const twinPasses = meetsSlope(slope, SLOPES[twin].slope);
  if (twinPasses === passes) return "";
  return ` Read as ${SLOPES[twin].words}, it would ${twinPasses ? "pass" : "fail"}: ask the authority which one it tests.`;
}
