import type { Cft } from "#lib/domain/length/station.ts";
import { textWidth } from "#lib/domain/say/text-width.ts";
import type { StripDrawing } from "#lib/domain/strip/drawing.ts";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import type { Shape, StripPlan } from "#lib/domain/strip/strip-shape.ts";

/** One landscape page of the line drawing. */
export interface DrawingPage {
  readonly plan: StripPlan;
  readonly from: Cft;
  readonly to: Cft;
  readonly first: boolean;
  readonly last: boolean;
}

/** Scales of an engineer’s ruler, feet to an inch. */
const SCALES = [10, 20, 30, 40];

export interface DrawingPages {
  /** Feet to an inch at full size. */
  readonly feetPerInch: number;
  readonly pages: readonly DrawingPage[];
}

/** Width of a landscape Letter page between its margins, and height left for the plan. */
export const PLAN_WIDTH = 704;
export const PLAN_HEIGHT = 424;
/** Where a plan's axis begins. */
const PLAN_LEFT = 6;
/** A cut keeps so far from all that is marked, in points, where it can. */
const CLEAR = 14;
/** The shortest stretch that gets a page; cuts stand at whole fives of feet. */
const LEAST = 1_000;
const STEP = 500;

type Words = Extract<Shape, { kind: "words" }>;

/** A page with where on it the line is cut, in points; null: there it ends. */
interface CutPage extends DrawingPage {
  readonly left: number | null;
  readonly right: number | null;
}

interface Cutting {
  readonly count: number;
  readonly feetPerInch: number;
}

/**
 * Cuts a line drawing into as few landscape pages as hold all of it at a scale that the authority allows
 * (none said: 1 in = 10, 20, 30 or 40 ft), at the largest of them that takes no more pages. A cut stands
 * where nothing is marked nearby. Where much stands close together pages get shorter stretches, so that
 * all fits in height and no words lie across a cut; where even that does not help, second lines are left
 * out. No other scale is ever taken.
 */
export function drawingPages(drawing: StripDrawing, allowed: readonly number[] = []): DrawingPages {
  const scales = allowed.length === 0 ? SCALES : allowed;
  const extent = Math.max(drawing.extent, LEAST);
  const most = Math.ceil(extent / LEAST);
  for (let count = Math.ceil(extent / roomAt(Math.max(...scales))); count <= most; count += 1) {
    for (const feetPerInch of scales) {
      if (extent > count * roomAt(feetPerInch)) continue;
      const pages = cut(drawing, { count, feetPerInch }, null);
      if (pages.every(isWhole)) return { feetPerInch, pages };
    }
  }
  const feetPerInch = scales.find((scale) => roomAt(scale) >= LEAST) ?? Math.max(...scales);
  const count = Math.ceil(extent / roomAt(feetPerInch));
  return { feetPerInch, pages: cut(drawing, { count, feetPerInch }, PLAN_HEIGHT) };
}

/** Length of line that one page has room for at most. */
function roomAt(feetPerInch: number): Cft {
  return Math.floor(((PLAN_WIDTH - 2 * PLAN_LEFT) * feetPerInch * 100) / 72);
}

function cut(drawing: StripDrawing, cutting: Cutting, height: number | null): CutPage[] {
  const cuts = cutsOf(drawing, cutting);
  const scale = 72 / cutting.feetPerInch;
  return cuts.slice(1).map((to, index) => {
    const from = cuts[index] ?? 0;
    const plan = planStrip(drawing, { width: PLAN_WIDTH, scale, from, to, height });
    const first = index === 0;
    const last = index === cuts.length - 2;
    const left = first ? null : PLAN_LEFT;
    const right = last ? null : PLAN_LEFT + ((to - from) * scale) / 100;
    const ends = [left, right].filter((x) => x !== null);
    const shapes = [...plan.shapes, ...ends.map((x) => matchLine(x, plan.foot))];
    return { plan: { ...plan, shapes }, from, to, first, last, left, right };
  });
}

/** From 0 to the end: near to even stretches, each cut as clear of marks as its neighborhood lets it. */
function cutsOf(drawing: StripDrawing, { count, feetPerInch }: Cutting): Cft[] {
  const extent = Math.max(drawing.extent, LEAST);
  const room = roomAt(feetPerInch);
  const even = Math.min(Math.ceil(extent / count / LEAST) * LEAST, Math.floor(room / STEP) * STEP);
  const marked = markedOn(drawing);
  const clear = (CLEAR * feetPerInch * 100) / 72;
  const freeAt = (station: Cft) =>
    Math.min(clear, ...marked.map((mark) => Math.abs(mark - station)));
  const cuts: Cft[] = [0];
  for (let left = count - 1; left > 0; left -= 1) {
    const from = cuts.at(-1) ?? 0;
    const wanted = Math.min(even * cuts.length, extent - LEAST);
    const spots = stepsAround(wanted, Math.round(even / 5))
      .filter((spot) => spot - from >= LEAST && spot - from <= room)
      .filter((spot) => extent - spot >= LEAST * left && extent - spot <= room * left);
    const free = Math.max(0, ...spots.map(freeAt));
    const best = spots.find((spot) => freeAt(spot) === free);
    cuts.push(best ?? Math.round(from + (extent - from) / (left + 1)));
  }
  return [...cuts, extent];
}

/** Whole fives of feet about a place, the nearest first. */
function stepsAround(wanted: Cft, within: Cft): Cft[] {
  const base = Math.round(wanted / STEP) * STEP;
  const reach = Math.floor(within / STEP);
  return Array.from({ length: 2 * reach + 1 }, (_, at) => {
    const step = Math.ceil(at / 2) * (at % 2 === 0 ? 1 : -1);
    return base + step * STEP;
  });
}

/** Stations where a sign stands or a cell of a band begins. */
function markedOn({ above, below, onPipe, bands }: StripDrawing): Cft[] {
  return [
    ...[...above, ...below, ...onPipe].map(({ station }) => station),
    ...bands.flatMap(({ cells }) => cells.map(({ from }) => from)),
  ];
}

/** All of it on the paper, and no words of the drawing across a cut. */
function isWhole({ plan, left, right }: CutPage): boolean {
  if (plan.height > PLAN_HEIGHT) return false;
  return plan.shapes.every((shape) => {
    if (shape.kind !== "words" || shape.at[1] > plan.foot) return true;
    const [from, to] = spanOf(shape);
    return from >= (left ?? 0) && to <= (right ?? PLAN_WIDTH);
  });
}

function spanOf({ at: [x], text, size, strong, anchor }: Words): readonly [number, number] {
  const width = textWidth(text, size, strong);
  const from = x - { start: 0, middle: width / 2, end: width }[anchor];
  return [from, from + width];
}

/** Where a sheet is cut the next one begins: a dashed line through the whole drawing on both. */
function matchLine(x: number, foot: number): Shape {
  return {
    kind: "line",
    points: [
      [x, 0],
      [x, foot],
    ],
    width: 0.8,
    tone: "ink",
    dash: true,
  };
}
