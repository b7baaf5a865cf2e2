import type { Cents } from "../money/cents.ts";

/** A rule's mark on a payer's bar. */
export interface PlacedMark {
  /** Which outcome, counted from 0. */
  readonly at: number;
  /** From the left end of the bar. */
  readonly percent: number;
  /** 0 on the bar; marks that would cover each other go down, the one at either end last of all. */
  readonly lane: number;
}

/** How close two marks may come before the second goes a lane down, in percent of the bar. */
const ROOM = 5.2;

/** Places marks along a bar that ends at `top`; nulls have no mark. */
export function placeMarks(amounts: readonly (Cents | null)[], top: Cents): PlacedMark[] {
  const sorted = amounts
    .flatMap((amount, at) =>
      amount === null ? [] : [{ at, percent: top <= 0 ? 0 : (amount / top) * 100 }],
    )
    .sort((one, other) => one.percent - other.percent || one.at - other.at);
  const most = sorted.at(-1);
  const ends: number[] = [];
  return sorted.map((mark) => {
    const free = ends.findIndex((end, lane) => {
      // The line on the bar runs from the least to the most: both stay on it where they can.
      const covers = lane === 0 && mark !== most && (most?.percent ?? 0) - mark.percent < ROOM;
      return mark.percent - end >= ROOM && !covers;
    });
    const lane = free === -1 ? ends.length : free;
    ends[lane] = mark.percent;
    return { ...mark, lane };
  });
}

/** The end of a scale that holds `most`: 1, 2, 4 or 8 times a power of ten dollars, so that quarters are round. */
export function roundScale(most: Cents): Cents {
  let power = 10_000;
  while (power * 8 < most) power *= 10;
  return [1, 2, 4, 8].map((times) => times * power).find((end) => end >= most) ?? power * 8;
}
