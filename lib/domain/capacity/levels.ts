import type { Level, LevelMethod } from "../facts/capacity.ts";
import type { LevelFinding } from "../findings/capacity.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { invertLevel } from "./slope.ts";

/** How far a level may be off, either way, where nobody typed it. */
interface UsualUncertainty {
  readonly least: Cft;
  /** Of the depth; the larger of the two holds. */
  readonly percent: number;
  readonly words: string;
}

/**
 * Assumed, from common practice: no published figure was found, and the makers' manuals that were read
 * give none. The screen says so, and whatever is typed with a level outranks it.
 */
export const USUAL_UNCERTAINTY: Record<LevelMethod, UsualUncertainty> = {
  locator: { least: 50, percent: 5, words: "0.5 ft or 5% of the depth, whichever is more" },
  level: { least: 2, percent: 0, words: "0.02 ft" },
  "cleanout-drop": { least: 10, percent: 0, words: "0.1 ft" },
  pothole: { least: 10, percent: 0, words: "0.1 ft" },
  "as-built": { least: 50, percent: 0, words: "0.5 ft" },
  other: { least: 50, percent: 0, words: "0.5 ft" },
};

/** How far a level may be off (hundredths of a foot): as typed, else the usual of its method. */
export function uncertaintyOf(
  level: Pick<Level, "method" | "uncertainty">,
  depth: Cft | null,
): Cft {
  if (level.uncertainty !== null) return level.uncertainty;
  const { least, percent } = USUAL_UNCERTAINTY[level.method];
  return Math.max(least, Math.ceil((Math.max(depth ?? 0, 0) * percent) / 100));
}

/**
 * Every level with its invert and uncertainty, from the main upstream. Of two at one station the
 * surer one is used; an invert that was measured itself comes before ground less depth.
 */
export function levelFindings(levels: readonly Level[]): LevelFinding[] {
  const found = levels.map(findingOf).sort((a, b) => a.station - b.station);
  return found.map((level) => besideOthers(level, found));
}

function findingOf(level: Level): LevelFinding {
  const { id: levelId, station, ground, method } = level;
  const reckoned =
    ground === null || level.depth === null ? null : invertLevel(ground, level.depth);
  const invert = level.invert ?? reckoned;
  const depth = level.depth ?? (ground === null || invert === null ? null : ground - invert);
  const uncertainty = uncertaintyOf(level, depth);
  const used = invert !== null;
  const caution = cautionOf(level, { reckoned, uncertainty });
  return { levelId, station, ground, depth, invert, method, uncertainty, used, caution };
}

function cautionOf(
  { station, ground, depth, invert }: Level,
  { reckoned, uncertainty }: { reckoned: Cft | null; uncertainty: Cft },
): string {
  const at = `At ${formatFeet(station)}`;
  if (invert !== null && reckoned !== null && Math.abs(invert - reckoned) > uncertainty)
    return `${at} ground minus depth gives ${formatFeet(reckoned)}, but the invert is entered as ${formatFeet(invert)}. The invert is used; check both.`;
  if (invert !== null || reckoned !== null) return "";
  if (depth !== null)
    return `${at} only the depth is known. A slope needs the ground level there too.`;
  return ground === null
    ? `${at} nothing is measured yet.`
    : `${at} only the ground is known. A slope needs the depth or the invert too.`;
}

function besideOthers(level: LevelFinding, all: readonly LevelFinding[]): LevelFinding {
  if (!level.used) return level;
  const here = all.filter((each) => each.used && each.station === level.station);
  const surest = here.reduce((best, each) => (each.uncertainty < best.uncertainty ? each : best));
  if (surest === level) return level;
  const apart = Math.abs((level.invert ?? 0) - (surest.invert ?? 0));
  const clash =
    apart > level.uncertainty + surest.uncertainty
      ? ` The two differ by ${formatFeet(apart)}, more than their uncertainties: one of them is wrong.`
      : "";
  const caution = `A more accurate level at ${formatFeet(level.station)} is used instead.${clash}`;
  return { ...level, used: false, caution };
}
