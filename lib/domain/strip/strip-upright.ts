import { textWidth } from "../say/text-width.ts";
import { EDGE, LABEL, PIPE, words } from "./strip-ink.ts";
import type { Shape, Tone } from "./strip-shape.ts";
import { drawSign, type MarkRow, type PipeEdge, type PlacedMark } from "./strip-sign.ts";

const APART = 10.5;
const BEND = 9;

/**
 * Labels that read upwards, side by side, for lines where too much stands close together: each
 * leader bends to where there is room. Second lines are not drawn.
 */
export function uprightRow(placed: readonly PlacedMark[], right: number): MarkRow {
  const sorted = placed.toSorted((a, b) => a.x - b.x);
  const spots = spotsFor(
    sorted.map(({ x }) => x),
    right,
  );
  const longest = Math.max(0, ...sorted.map(({ mark }) => textWidth(mark.label, LABEL, true)));
  return {
    height: sorted.length === 0 ? 0 : longest + BEND,
    draw: (shapes, at) => {
      for (const [index, each] of sorted.entries()) {
        drawUpright(shapes, each, { ...at, spot: spots[index] ?? each.x });
      }
    },
  };
}

/** Places at least `APART` from each other, as near to their own as can be, none beyond `right`. */
function spotsFor(wanted: readonly number[], right: number): number[] {
  const spots: number[] = [];
  for (const x of wanted)
    spots.push(Math.max(x, (spots.at(-1) ?? Number.NEGATIVE_INFINITY) + APART));
  let limit = right;
  for (let index = spots.length - 1; index >= 0; index -= 1) {
    const spot = Math.min(spots[index] ?? limit, limit);
    spots[index] = spot;
    limit = spot - APART;
  }
  return spots;
}

function drawUpright(
  shapes: Shape[],
  placed: PlacedMark,
  { edge, way, spot }: PipeEdge & { readonly spot: number },
): void {
  const { mark, x } = placed;
  const near = edge + way * (EDGE - 4);
  const far = near + way * BEND;
  const tone: Tone = mark.loud ? "loud" : "ink";
  const boundary = mark.kind === "point";
  shapes.push({
    kind: "line",
    points: [
      [x, boundary ? edge - way * PIPE : edge],
      [x, near],
      [spot, far],
    ],
    width: 0.5,
    tone: mark.loud ? "loud" : "soft",
    dash: boundary,
  });
  drawSign(shapes, placed, { edge, way });
  shapes.push(
    words(mark.label, [spot + LABEL * 0.33, far + way * 2], LABEL, {
      strong: true,
      tone,
      upright: true,
      anchor: way === 1 ? "end" : "start",
    }),
  );
}
