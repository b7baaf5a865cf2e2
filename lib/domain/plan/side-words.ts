import type { Side } from "../facts/line.ts";
import { SIDE_WORDS } from "../facts/line-words.ts";
import type { CompassPoint } from "./compass.ts";

/** A side as the office reads it: `right`, and `right, north side` where the line's bearing tells. */
export function sideWords(side: Side, compass: CompassPoint | null): string {
  return compass === null ? SIDE_WORDS[side] : `${SIDE_WORDS[side]}, ${compass} side`;
}
