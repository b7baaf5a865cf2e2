/** An exact fraction in lowest terms; the denominator is above zero. */
export interface Ratio {
  readonly n: bigint;
  readonly d: bigint;
}

export const ZERO: Ratio = { n: 0n, d: 1n };

/** `n / d` in lowest terms. Throws on a denominator of zero. */
export function ratio(n: bigint, d = 1n): Ratio {
  if (d === 0n) throw new RangeError(`Cannot make a fraction: denominator is 0 (numerator ${n})`);
  const common = gcd(n, d);
  const sign = d < 0n ? -1n : 1n;
  return { n: (sign * n) / common, d: (sign * d) / common };
}

export function addRatios(a: Ratio, b: Ratio): Ratio {
  return ratio(a.n * b.d + b.n * a.d, a.d * b.d);
}

/** `a × b`; cheap where one of them is small, however long the other. */
export function multiplyRatios(a: Ratio, b: Ratio): Ratio {
  const [across, back] = [gcd(a.n, b.d), gcd(b.n, a.d)];
  return { n: (a.n / across) * (b.n / back), d: (a.d / back) * (b.d / across) };
}

/** The greatest common divisor, always above zero (1 for two zeros). */
export function gcd(a: bigint, b: bigint): bigint {
  let larger = a < 0n ? -a : a;
  let smaller = b < 0n ? -b : b;
  while (smaller > LARGEST_EXACT) [larger, smaller] = [smaller, larger % smaller];
  if (smaller === 0n) return larger === 0n ? 1n : larger;
  return BigInt(plainGcd(Number(smaller), Number(larger % smaller)));
}

const LARGEST_EXACT = BigInt(Number.MAX_SAFE_INTEGER);

function plainGcd(a: number, b: number): number {
  let [larger, smaller] = [a, b];
  while (smaller !== 0) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}

/** The least common multiple of two numbers above zero. */
export function lcm(a: bigint, b: bigint): bigint {
  return (a / gcd(a, b)) * b;
}

/** The largest whole number that is not above `n / d`; `d` is above zero. */
export function floorDiv(n: bigint, d: bigint): bigint {
  const quotient = n / d;
  return n % d < 0n ? quotient - 1n : quotient;
}

/** `n / d` to the nearest whole number, a half away from zero; `d` is above zero. */
export function roundDiv(n: bigint, d: bigint): bigint {
  const doubled = 2n * (n < 0n ? -n : n) + d;
  const size = doubled / (2n * d);
  return n < 0n ? -size : size;
}

/** `7/18`; whole numbers as `5/1`. */
export function formatRatio({ n, d }: Ratio): string {
  return `${n}/${d}`;
}
