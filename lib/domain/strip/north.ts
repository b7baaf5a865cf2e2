import { formatBearing, turned } from "../plan/compass.ts";
import type { StripNorth } from "./drawing.ts";
import type { Point } from "./strip-shape.ts";

/** Upstream is drawn to the right. */
const RIGHT = 90;

const NOTE = "Above and below the pipe stand record and camera, not sides of the line.";

const WAYS = [
  "up",
  "up and to the right",
  "to the right",
  "down and to the right",
  "down",
  "down and to the left",
  "to the left",
  "up and to the left",
] as const;

/**
 * Where north is on a strip, by the bearing looking upstream at the main connection; null where that is
 * not known. Beyond a bend it may be elsewhere: a strip is drawn straight.
 */
export function northOf(bearing: number | null): StripNorth | null {
  if (bearing === null) return null;
  const turn = turned(RIGHT - bearing);
  const way = WAYS[Math.round(turn / 45) % WAYS.length] ?? "up";
  const said = formatBearing(bearing);
  return {
    turn,
    words: `Line at the main, looking upstream: ${said}`,
    note: NOTE,
    sentence: `North points ${way} on this drawing: at the main connection the line runs ${said} upstream, which is drawn to the right. ${NOTE}`,
  };
}

/** An arrow about a middle, so long to each side of it: its ends, its head, and where the N stands. */
export function northArrow(turn: number, [x, y]: Point, reach: number) {
  const angle = (turn * Math.PI) / 180;
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const at = (ahead: number, aside: number): Point => [
    x + sin * ahead + cos * aside,
    y - cos * ahead + sin * aside,
  ];
  const neck = reach * 0.2;
  const wing = reach * 0.36;
  return {
    tip: at(reach, 0),
    tail: at(-reach, 0),
    head: [at(reach, 0), at(neck, -wing), at(neck, wing)],
    letter: at(reach + 5, 0),
  };
}
