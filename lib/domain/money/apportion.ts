import type { Cents } from "./cents.ts";
import { floorDiv } from "./ratio.ts";

/**
 * Splits `total` over `weights` so that the shares add up to `total` exactly, by the largest
 * remainder (Hamilton, 1792; Hare–Niemeyer).
 *
 * Every share is rounded down; the cents left over go one each to the shares that lost the most.
 * Among shares that lost the same, the one with the lowest number in `tieOrder` comes first
 * (without it, the earliest). Refuses, by throwing, weights that are negative or all zero.
 */
export function apportion(
  total: Cents,
  weights: readonly bigint[],
  tieOrder?: readonly number[],
): Cents[] {
  const negative = weights.find((weight) => weight < 0n);
  if (negative !== undefined) {
    throw new RangeError(`Cannot apportion: weights must be >= 0, got ${negative}`);
  }
  const sum = weights.reduce((all, weight) => all + weight, 0n);
  if (sum === 0n) throw new RangeError("Cannot apportion: the weights add up to 0");
  return roundShares(
    weights.map((weight) => BigInt(total) * weight),
    sum,
    tieOrder ?? weights.map((_, index) => index),
  );
}

/**
 * Rounds exact shares (`numerators` over one `denominator`) to whole cents that add up to the
 * exact sum, itself rounded to the nearest cent where it is not whole. Same rule as `apportion()`;
 * shares below zero (credits) are rounded down as well.
 */
export function roundShares(
  numerators: readonly bigint[],
  denominator: bigint,
  tieOrder: readonly number[],
): Cents[] {
  const floors = numerators.map((numerator) => floorDiv(numerator, denominator));
  const shares = [...floors];
  for (const index of oddCentReceivers(numerators, denominator, tieOrder)) {
    shares[index] = (shares[index] ?? 0n) + 1n;
  }
  return shares.map(toCents);
}

/** Who gets the cents left over by rounding down, one each: indices, first receiver first. */
export function oddCentReceivers(
  numerators: readonly bigint[],
  denominator: bigint,
  tieOrder: readonly number[],
): number[] {
  const lost = numerators.map(
    (numerator) => numerator - floorDiv(numerator, denominator) * denominator,
  );
  const left = lost.reduce((sum, each) => sum + each, 0n);
  const spare = Number(floorDiv(2n * left + denominator, 2n * denominator));
  if (spare === 0) return [];
  return lost
    .map((_, index) => index)
    .sort((a, b) => byLoss(lost, a, b) || (tieOrder[a] ?? a) - (tieOrder[b] ?? b))
    .slice(0, spare);
}

function byLoss(lost: readonly bigint[], a: number, b: number): number {
  const [first = 0n, second = 0n] = [lost[a], lost[b]];
  if (first === second) return 0;
  return first > second ? -1 : 1;
}

/** Whole cents as a plain number. Throws where the number could not hold them exactly. */
export function toCents(amount: bigint): Cents {
  const cents = Number(amount);
  if (!Number.isSafeInteger(cents)) {
    throw new RangeError(`Cannot hold an amount of ${amount} cents exactly`);
  }
  return cents;
}
