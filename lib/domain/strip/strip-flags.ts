import { textWidth } from "../say/text-width.ts";
import type { StripMark } from "./drawing.ts";
import { DETAIL, EDGE, LABEL, LINE, PIPE, words } from "./strip-ink.ts";
import type { Shape, Tone } from "./strip-shape.ts";
import { drawSign, type MarkRow, type PipeEdge, type PlacedMark } from "./strip-sign.ts";

interface Flag extends PlacedMark {
  readonly width: number;
  readonly height: number;
  /** 1: its words stand to the right of its leader; -1: to the left. */
  facing: 1 | -1;
  level: number;
}

/** Between where words may stand. */
export interface FlagRoom {
  readonly left: number;
  readonly right: number;
}

/** How much room a mark's words need to its right. */
export function flagWidth(mark: StripMark): number {
  const label = textWidth(mark.label, LABEL, true);
  return Math.max(label, textWidth(mark.detail, DETAIL, false)) + 8;
}

/**
 * Flags point to the right; those whose words would leave the room on the right point to the left, and
 * so does a flag that would stand across one of these. Each lies further out than every flag whose leader
 * begins beneath its words: so no leader ever crosses words, and no words lie on others.
 */
export function flagRow(placed: readonly PlacedMark[], room: FlagRoom): MarkRow {
  const flags = placed
    .map((each) => ({
      ...each,
      width: flagWidth(each.mark),
      height: (each.mark.detail === "" ? 1 : 2) * LINE + 3,
      facing: 1 as 1 | -1,
      level: 0,
    }))
    .sort((a, b) => b.x - a.x);
  turnFlags(flags, room);
  setLevels(flags);
  const heights = levelHeights(flags);
  return {
    height: heights.reduce((sum, height) => sum + height, 0),
    draw: (shapes, at) => {
      for (const flag of flags) drawFlag(shapes, flag, { ...at, heights });
    },
  };
}

/** From the right end leftwards, so that whatever stands across a turned flag turns with it. */
function turnFlags(flags: readonly Flag[], { left, right }: FlagRoom): void {
  for (const [index, flag] of flags.entries()) {
    if (flag.x - flag.width < left) continue;
    const isOut = flag.x + flag.width > right;
    const isAcross = flags
      .slice(0, index)
      .some((other) => other.facing === -1 && isUnder(flag, other) && isUnder(other, flag));
    if (isOut || isAcross) flag.facing = -1;
  }
}

/** True where the first flag's leader begins beneath the other's words. */
function isUnder(one: Flag, other: Flag): boolean {
  const [from, to] = span(other);
  return one.x >= from && one.x <= to;
}

function span({ x, width, facing }: Flag): readonly [from: number, to: number] {
  return facing === 1 ? [x, x + width] : [x - width, x];
}

/** True where the first flag has to lie further out than the other. */
function isOver(one: Flag, other: Flag): boolean {
  if (one.facing === other.facing)
    return one.facing * (other.x - one.x) >= 0 && isUnder(other, one);
  if (isUnder(other, one)) return !isUnder(one, other) || one.facing === 1;
  if (isUnder(one, other)) return false;
  const [from, to] = span(one);
  const [otherFrom, otherTo] = span(other);
  return one.facing === 1 && from < otherTo && otherFrom < to;
}

/** The lowest levels at which each lies over what it has to; `flags` come from the right. */
function setLevels(flags: readonly Flag[]): void {
  const waiting = flags.map((flag, index) => ({
    flag,
    over: flags.filter((other, at) => {
      if (other === flag || !isOver(flag, other)) return false;
      return !isOver(other, flag) || at < index;
    }),
  }));
  const set = new Set<Flag>();
  while (set.size < flags.length) {
    const ready = waiting.filter(
      ({ flag, over }) => !set.has(flag) && over.every((other) => set.has(other)),
    );
    const next =
      ready.length > 0 ? ready : waiting.filter(({ flag }) => !set.has(flag)).slice(0, 1);
    for (const { flag, over } of next) {
      const beneath = over.filter((other) => set.has(other)).map(({ level }) => level + 1);
      flag.level = Math.max(0, ...beneath);
      set.add(flag);
    }
  }
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
  const x = flag.x + 4 * flag.facing;
  const anchor = flag.facing === 1 ? "start" : "end";
  shapes.push(words(flag.mark.label, [x, first], LABEL, { strong: true, tone, anchor }));
  if (flag.mark.detail === "") return;
  shapes.push(words(flag.mark.detail, [x, first + LINE], DETAIL, { tone: "soft", anchor }));
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
