import type { Cft } from "./station.ts";

/** `41 to 47 ft`, `0 to 88.5 ft`. */
export function saySpan(from: Cft, to: Cft): string {
  return `${shortFeet(from)} to ${shortFeet(to)} ft`;
}

/** Feet without needless zeros: `88`, `88.5`. */
function shortFeet(length: Cft): string {
  return String(length / 100);
}
