import type { StripMark } from "../strip/drawing.ts";
import { DETAIL, EDGE, LABEL, LINE, PIPE, words } from "./strip-ink.ts";
import type { Shape, Tone } from "./strip-shape.ts";
import { drawSign, type MarkRow, type PipeEdge, type PlacedMark } from "./strip-sign.ts";
import { textWidth } from "./text-width.ts";

interface Flag extends PlacedMark {
  readonly width: number;
  readonly height: number;
  level: number;
}

/** How much room a mark's words need to its right. */
export function flagWidth(mark: StripMark): number {
  const label = textWidth(mark.label, LABEL, true);
  return Math.max(label, textWidth(mark.detail, DETAIL, false)) + 8;
}

/**
 * Flags point to the right. Going from the right end leftwards, each flag lies one level
 * further out than every flag that starts within its width: so no leader ever crosses words.
 */
export function flagRow(placed: readonly PlacedMark[]): MarkRow {
  const flags = placed
    .map((each) => ({
      ...each,
      width: flagWidth(each.mark),
      height: (each.mark.detail === "" ? 1 : 2) * LINE + 3,
      level: 0,
    }))
    .sort((a, b) => b.x - a.x);
  for (const [index, flag] of flags.entries()) {
    const within = flags.slice(0, index).filter((other) => other.x < flag.x + flag.width);
    flag.level = within.reduce((most, other) => Math.max(most, other.level + 1), 0);
  }
  const heights = levelHeights(flags);
  return {
    height: heights.reduce((sum, height) => sum + height, 0),
    draw: (shapes, at) => {
      for (const flag of flags) drawFlag(shapes, flag, { ...at, heights });
    },
  };
}

function levelHeights(flags: readonly Flag[]): number[] {
  const heights: number[] = [];
  for (const flag of flags) {
    heights[flag.level] = Math.max(heights[flag.level] ?? 0, flag.height);
  }
  return heights;
}

function drawFlag(
  shapes: Shape[],
  flag: Flag,
  { edge, way, heights }: PipeEdge & { readonly heights: readonly number[] },
): void {
  const inner = heights.slice(0, flag.level).reduce((sum, height) => sum + height, 0);
  const near = edge + way * (EDGE - 4 + inner);
  const outer = near + way * flag.height;
  const tone: Tone = flag.mark.loud ? "loud" : "ink";
  drawLeader(shapes, flag, { edge, way, outer });
  drawSign(shapes, flag, { edge, way });
  const first = Math.min(near, outer) + LINE - 1;
  shapes.push(words(flag.mark.label, [flag.x + 4, first], LABEL, { strong: true, tone }));
  if (flag.mark.detail === "") return;
  shapes.push(words(flag.mark.detail, [flag.x + 4, first + LINE], DETAIL, { tone: "soft" }));
}

function drawLeader(
  shapes: Shape[],
  { x, mark }: PlacedMark,
  { edge, way, outer }: PipeEdge & { readonly outer: number },
): void {
  const boundary = mark.kind === "point";
  shapes.push({
    kind: "line",
    points: [
      [x, boundary ? edge - way * PIPE : edge],
      [x, outer],
    ],
    width: boundary ? 0.7 : 0.5,
    tone: mark.loud ? "loud" : "soft",
    dash: boundary,
  });
}
