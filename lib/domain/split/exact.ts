import { formatCents } from "../money/format-cents.ts";
import { type Ratio, roundDiv } from "../money/ratio.ts";

/** Beyond this a fraction of a cent says less than its decimals do. */
const LARGEST_READABLE = 360n;

/**
 * An exact amount, `numerator/denominator` cents in lowest terms, as a person writes it: `100000/3` →
 * `$333.33 + 1/3 ¢`. Fractions that nobody would write out come as
 * decimals of a cent, cut after the fourth and marked `…`.
 */
export function formatExactCents(exact: string): string {
  const [top = "0", bottom = "1"] = exact.split("/");
  const numerator = BigInt(top);
  const denominator = BigInt(bottom);
  const size = numerator < 0n ? -numerator : numerator;
  const whole = formatCents(Number(size / denominator));
  const rest = size % denominator;
  if (rest === 0n) return numerator < 0n ? `-${whole}` : whole;
  const sum = `${whole} + ${partOfCent(rest, denominator)} ¢`;
  return numerator < 0n ? `-(${sum})` : sum;
}

function partOfCent(rest: bigint, denominator: bigint): string {
  if (denominator <= LARGEST_READABLE) return `${rest}/${denominator}`;
  return `0.${String((rest * 10_000n) / denominator).padStart(4, "0")}…`;
}

/** `7/18` where it is short enough to work with, else a percentage to six decimals. */
export function sayPart({ n, d }: Ratio): string {
  if (n === d) return "1";
  if (d < 10_000n) return `${n}/${d}`;
  const millionths = roundDiv(n * 100_000_000n, d);
  return `${(Number(millionths) / 1_000_000).toFixed(6)}%`;
}
