import type { Report, TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";

/** Nothing is waited for less long than this: common practice, no published figure. */
export const LEAST_WAIT = 15;

/**
 * Assumed for lack of measurements (common practice, no published figure, so on the careful side; the
 * sentence says "assumed"): dye goes 1 to 2 ft a second in a part-full pipe, here 1; fixture, trap and house drain take
 * 5 minutes; the branch is 100 ft; and twice the travel is allowed for.
 */
const ASSUMED = { feetAMinute: 60, fixtureMinutes: 5, branch: 10_000 as Cft, allowance: 2 };

export interface DyeWait {
  readonly minutes: number;
  /** How it was worked out, in one sentence. */
  readonly sentence: string;
}

/**
 * How long to watch for dye, in minutes, rounded up to 5 and never under 15: the fixture's own time,
 * then branch and trunk down to the main at an assumed pace, doubled where water stands in the pipe.
 */
export function dyeWait(
  { tieIn, station }: Pick<TieInFinding, "tieIn" | "station">,
  { coverage, extent }: Pick<Report, "coverage" | "extent">,
): DyeWait {
  const trunk = station ?? extent;
  const feet = Math.round((ASSUMED.branch + trunk) / 100);
  const standing = coverage.some(({ from, state }) => state === "under-water" && from < trunk);
  const travel = (ASSUMED.allowance * feet) / ASSUMED.feetAMinute;
  const plain = ASSUMED.fixtureMinutes + travel * (standing ? 2 : 1);
  const minutes = Math.max(LEAST_WAIT, Math.ceil(plain / 5) * 5);
  const slow = standing ? ", doubled again for standing water" : "";
  return {
    minutes,
    sentence: `${tieIn.label}: watch for ${minutes} minutes: 5 min for fixture and trap, plus ${feet} ft of pipe at an assumed 1 ft/s, doubled${slow}; minimum ${LEAST_WAIT} min.`,
  };
}
