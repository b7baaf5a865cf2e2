import type { Point, Shape, Tone } from "./strip-shape.ts";

/** Sizes of words and parts of a strip, in points. */
export const LABEL = 8;
export const DETAIL = 7.5;
export const LINE = 9.5;
export const PIPE = 10;
export const EDGE = 12;

export function line(points: readonly Point[], width: number, tone: Tone): Shape {
  return { kind: "line", points, width, tone, dash: false };
}

export function words(
  text: string,
  at: Point,
  size: number,
  style: {
    readonly strong?: boolean;
    readonly tone?: Tone;
    readonly anchor?: "start" | "middle" | "end";
    readonly upright?: boolean;
  },
): Shape {
  const { strong = false, tone = "ink", anchor = "start", upright = false } = style;
  return { kind: "words", at, text, size, strong, tone, anchor, upright };
}
