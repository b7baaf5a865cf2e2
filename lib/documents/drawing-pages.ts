import { planStrip } from "#lib/domain/letter/strip-plan.ts";
import type { Shape, StripPlan } from "#lib/domain/letter/strip-shape.ts";
import type { Cft } from "#lib/domain/line/station.ts";
import type { StripDrawing } from "#lib/domain/strip/drawing.ts";

/** One landscape page of the line drawing. */
export interface DrawingPage {
  readonly plan: StripPlan;
  readonly from: Cft;
  readonly to: Cft;
  readonly first: boolean;
  readonly last: boolean;
}

export interface DrawingPages {
  /** Feet to an inch. */
  readonly feetPerInch: 10 | 20;
  readonly pages: readonly DrawingPage[];
}

/** Width of a landscape Letter page between its margins, and height left for the plan. */
export const PLAN_WIDTH = 704;
const PLAN_HEIGHT = 424;
/** Where a plan's axis begins. */
const PLAN_LEFT = 6;
/** Room at the right end for the last flags' words. */
const FLAG_ROOM = 128;

/**
 * Cuts a line drawing into landscape pages at 1 in = 10 ft, or 20 ft where that saves more than two
 * pages. Where much stands close together, pages get shorter stretches so that all fits in height.
 */
export function drawingPages(drawing: StripDrawing): DrawingPages {
  const extent = Math.max(drawing.extent, 1_000);
  const feetPerInch = extent <= 2 * stretchOf(10) ? 10 : 20;
  const scale = 72 / feetPerInch;
  for (let stretch = stretchOf(feetPerInch); stretch >= 1_000; stretch = half(stretch)) {
    const pages = cut(drawing, { extent, stretch, scale });
    const fits = pages.every(({ plan }) => plan.height <= PLAN_HEIGHT);
    if (fits || half(stretch) < 1_000) return { feetPerInch, pages };
  }
  return { feetPerInch, pages: cut(drawing, { extent, stretch: 1_000, scale }) };
}

/** Length of line that one page shows, in whole tens of feet. */
function stretchOf(feetPerInch: 10 | 20): Cft {
  const feet = ((PLAN_WIDTH - FLAG_ROOM) / 72) * feetPerInch;
  return Math.floor(feet / 10) * 1_000;
}

function half(stretch: Cft): Cft {
  return Math.floor(stretch / 2_000) * 1_000;
}

function cut(
  drawing: StripDrawing,
  { extent, stretch, scale }: { extent: Cft; stretch: Cft; scale: number },
): DrawingPage[] {
  const pages = Math.ceil(extent / stretch);
  const even = Math.ceil(extent / pages / 1_000) * 1_000;
  const count = Math.ceil(extent / even);
  return Array.from({ length: count }, (_, index) => {
    const from = index * even;
    const to = Math.min(from + even, extent);
    const plan = planStrip(drawing, { width: PLAN_WIDTH, scale, from, to, height: null });
    const first = index === 0;
    const last = index === count - 1;
    const ends = [
      ...(first ? [] : [PLAN_LEFT]),
      ...(last ? [] : [PLAN_LEFT + ((to - from) * scale) / 100]),
    ];
    const shapes = [...plan.shapes, ...ends.map((x) => matchLine(x, plan.height))];
    return { plan: { ...plan, shapes }, from, to, first, last };
  });
}

/** Where a sheet is cut the next one begins: a dashed line through the whole drawing on both. */
function matchLine(x: number, height: number): Shape {
  return {
    kind: "line",
    points: [
      [x, 0],
      [x, height],
    ],
    width: 0.8,
    tone: "ink",
    dash: true,
  };
}
