import type { Cft } from "./station.ts";

const DIGITS = [1, 2, 5, 10] as const;

/** The smallest length of 1, 2 or 5 times a power of ten that is not below `least`, in hundredths of a foot. */
export function roundStep(least: Cft): Cft {
  const power = 10 ** Math.floor(Math.log10(Math.max(least, 1)));
  const digit = DIGITS.find((each) => each * power >= least) ?? 10;
  return digit * power;
}

/** The multiples of `step` from `from` to `to`, both counted in. */
export function multiplesIn(from: Cft, to: Cft, step: Cft): Cft[] {
  const first = Math.ceil(from / step);
  const count = Math.max(0, Math.floor(to / step) - first + 1);
  return Array.from({ length: count }, (_, at) => (first + at) * step);
}
