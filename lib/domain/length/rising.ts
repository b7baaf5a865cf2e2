import type { Cft } from "./station.ts";

/** Place of the first of `rising` that is at or above `station`; its length where there is none. */
export function firstAtOrAbove(rising: readonly Cft[], station: Cft): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] ?? 0) >= station) high = middle;
    else low = middle + 1;
  }
  return low;
}
