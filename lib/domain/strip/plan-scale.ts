import type { Authority } from "../facts/authority.ts";
import type { Cft } from "../length/station.ts";
import { sayAny } from "../say/say-list.ts";

/** What a landscape page holds below its head, in points. */
export const PLAN_FRAME = { width: 704, height: 430 };

/** Room for words and the north arrow around what is drawn. */
export const MARGIN = 48;

/** The scales that an engineer's ruler has, then larger ones. */
const USUAL = [10, 20, 30, 40, 50, 60, 100, 200, 400, 1_000, 4_000];

/** A plan view on more sheets than these is put together by nobody. */
export const MOST_SHEETS = 12;

export interface Frame {
  readonly width: number;
  readonly height: number;
}

/** What is drawn, on the ground. */
interface Ground {
  readonly east: Cft;
  readonly north: Cft;
}

/** To what scale a plan view is drawn, and on how many sheets beside and below each other. */
export interface Tiling {
  readonly feetPerInch: number;
  readonly columns: number;
  readonly rows: number;
  /** No: what the authority allows fits nowhere, so that a usual scale was taken. */
  readonly isAllowed: boolean;
}

/** Feet to an inch that the authority lets a drawing have, the largest drawing first; none: every usual one. */
export function allowedScales(authority: Pick<Authority, "scales"> | null): number[] {
  const scales = (authority?.scales ?? []).map(({ feetPerInch }) => feetPerInch);
  return [...new Set(scales)].filter((scale) => scale > 0).toSorted((a, b) => a - b);
}

/** `1 in = 10 ft or 20 ft` */
export function scaleWords(scales: readonly number[]): string {
  return `1 in = ${sayAny(
    scales.map((scale) => `${scale} ft`),
    20,
  )}`;
}

/**
 * The largest allowed scale at which all of it fits one sheet. Where not even the smallest does, that one
 * over several sheets; where it would take more than twelve, the largest usual scale that fits one sheet,
 * which is then not an allowed one.
 */
export function tilingOf(
  { east, north }: Ground,
  frame: Frame,
  allowed: readonly number[],
): Tiling {
  const room = { width: frame.width - 2 * MARGIN, height: frame.height - 2 * MARGIN };
  const sheets = (feetPerInch: number) => ({
    feetPerInch,
    columns: Math.max(1, Math.ceil(toPoints(east, feetPerInch) / room.width)),
    rows: Math.max(1, Math.ceil(toPoints(north, feetPerInch) / room.height)),
  });
  const onOne = ({ columns, rows }: { columns: number; rows: number }) => columns * rows === 1;
  const fits = allowed.map(sheets).find(onOne);
  if (fits !== undefined) return { ...fits, isAllowed: true };
  const smallest = allowed.at(-1);
  const several = smallest === undefined ? null : sheets(smallest);
  if (several !== null && several.columns * several.rows <= MOST_SHEETS)
    return { ...several, isAllowed: true };
  const usual = USUAL.map(sheets).find(onOne)?.feetPerInch ?? USUAL.at(-1) ?? 4_000;
  return { feetPerInch: usual, columns: 1, rows: 1, isAllowed: allowed.length === 0 };
}

/** Points of 1/72 in for a length on the ground. */
export function toPoints(length: Cft, feetPerInch: number): number {
  return ((length / 100) * 72) / feetPerInch;
}
