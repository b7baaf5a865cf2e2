import type { Spot } from "../facts/plan.ts";
import { type Cft, plainFeet } from "../length/station.ts";

/**
 * The corners of a shape as people write them: feet east and north of the main connection, each pair
 * with a comma, pairs parted by semicolons or spaces: `12, 4; 52, 4; 52, 32`. West and south are below
 * zero. At most two decimals.
 */
export const OUTLINE =
  /^\s*-?\d{1,5}(\.\d{1,2})?\s*,\s*-?\d{1,5}(\.\d{1,2})?((\s*;\s*|\s+)-?\d{1,5}(\.\d{1,2})?\s*,\s*-?\d{1,5}(\.\d{1,2})?)+\s*;?\s*$/;

export const OUTLINE_WORDS =
  "Enter at least two corners, each in feet east and north of the main connection, e.g. 12,4; 52,4; 52,32 (west and south are negative)";

/** The corners of an outline in hundredths of a foot; none where it is no outline. */
export function cornersOf(outline: string): Spot[] {
  if (!OUTLINE.test(outline)) return [];
  const numbers = [...outline.matchAll(/-?\d+(?:\.\d+)?/g)].map(([text]) => hundredths(text));
  const corners: Spot[] = [];
  for (let at = 0; at + 1 < numbers.length; at += 2)
    corners.push({ east: numbers[at] ?? 0, north: numbers[at + 1] ?? 0 });
  return corners;
}

/** Corners as an outline, to the tenth of a foot that a plan can be traced to. */
export function outlineOf(corners: readonly Spot[]): string {
  return corners
    .map(({ east, north }) => `${plainFeet(tenth(east))},${plainFeet(tenth(north))}`)
    .join("; ");
}

function hundredths(text: string): Cft {
  return Math.round(Number(text) * 100) + 0;
}

function tenth(length: Cft): Cft {
  return Math.round(length / 10) * 10 + 0;
}
