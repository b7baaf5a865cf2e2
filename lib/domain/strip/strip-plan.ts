import { formatDrawingStation } from "../length/station.ts";
import { textWidth } from "../say/text-width.ts";
import type { StripDrawing, StripMark } from "./drawing.ts";
import { northArrow } from "./north.ts";
import { across, joinsOn, xOn } from "./places.ts";
import { type Axis, axisOf, CLEAR, placeAll, type StripFrame } from "./plan-axis.ts";
import { drawBands } from "./plan-bands.ts";
import { flagRow } from "./strip-flags.ts";
import { pipeHatch } from "./strip-hatch.ts";
import { DETAIL, EDGE, LINE, line, PIPE, words } from "./strip-ink.ts";
import type { Point, Shape, StripPlan } from "./strip-shape.ts";
import { uprightRow } from "./strip-upright.ts";

/**
 * Lays a strip out on paper: flags above and below the pipe on as many levels as they need,
 * a ruler, the bands, and a list of the words that did not fit into their cells. Where the line goes on
 * beyond the frame no words of the drawing stand across the cut. Where much stands
 * close together and a height is given, second lines are left out: first those of the record, then
 * those of quiet tie-ins, then all; then the first lines are set upright, where that is lower. None of
 * those is left out.
 */
export function planStrip(drawing: StripDrawing, frame: StripFrame): StripPlan {
  const full = layOut(drawing, frame);
  const { height } = frame;
  if (height === null || full.height <= height) return full;
  const spared = SPARED.map((spare) => layOut(spareDetails(drawing, spare), frame));
  const upright = layOut(drawing, frame, true);
  const lowest = spared.find((plan) => plan.height < upright.height);
  return spared.find((plan) => plan.height <= height) ?? lowest ?? upright;
}

const SPARED: readonly ((mark: StripMark) => boolean)[] = [
  (mark) => mark.kind !== "tie-in",
  (mark) => !mark.loud,
  () => true,
];

function spareDetails(drawing: StripDrawing, spare: (mark: StripMark) => boolean): StripDrawing {
  const bare = (marks: readonly StripMark[]) =>
    marks.map((mark) => (spare(mark) ? { ...mark, detail: "" } : mark));
  return {
    ...drawing,
    above: bare(drawing.above),
    below: bare(drawing.below),
    onPipe: bare(drawing.onPipe),
  };
}

function layOut(drawing: StripDrawing, frame: StripFrame, upright = false): StripPlan {
  const axis = axisOf(drawing, frame, upright);
  const seen = (mark: StripMark) => mark.station >= frame.from && mark.station <= frame.to;
  const points = drawing.onPipe.filter((mark) => mark.kind === "point" && seen(mark));
  const pipeMarks = drawing.onPipe.filter((mark) => mark.kind !== "point" && seen(mark));
  const row = (marks: readonly StripMark[]) =>
    upright
      ? uprightRow(placeAll(marks, axis), frame.width - 8)
      : flagRow(placeAll(marks, axis), {
          left: axis.left,
          right: axis.cut.right ? axis.right : frame.width,
        });
  const above = row([...drawing.above.filter(seen), ...points]);
  const below = row([...drawing.below.filter(seen), ...pipeMarks]);
  const shapes: Shape[] = [];
  const pipeTop = above.height + EDGE;
  const pipeBottom = pipeTop + PIPE;
  drawPipe(shapes, drawing, axis, pipeTop);
  drawJoins(shapes, drawing, axis, pipeTop);
  drawStretches(shapes, drawing, axis, pipeTop);
  above.draw(shapes, { edge: pipeTop, way: -1 });
  below.draw(shapes, { edge: pipeBottom, way: 1 });
  const rulerAt = pipeBottom + below.height + EDGE + 2;
  drawRuler(shapes, drawing, axis, rulerAt);
  const northAt = rulerAt + 20;
  const top = northAt + drawNorth(shapes, drawing, axis, { top: northAt, width: frame.width });
  const ends = drawBands(shapes, drawing.bands, axis, { top, width: frame.width });
  return { width: frame.width, ...ends, shapes };
}

function drawPipe(shapes: Shape[], drawing: StripDrawing, axis: Axis, top: number): void {
  for (const pipe of drawing.pipes) {
    const shown = across(axis, pipe);
    if (shown === null) continue;
    const box = { ...shown, top, bottom: top + PIPE };
    shapes.push(...pipeHatch(pipe.material, box));
    if (pipe.to < axis.to)
      shapes.push(
        line(
          [
            [box.right, top],
            [box.right, box.bottom],
          ],
          0.8,
          "ink",
        ),
      );
  }
  shapes.push(
    line(
      [
        [axis.left, top],
        [axis.right, top],
      ],
      1.1,
      "ink",
    ),
  );
  shapes.push(
    line(
      [
        [axis.left, top + PIPE],
        [axis.right, top + PIPE],
      ],
      1.1,
      "ink",
    ),
  );
}

function drawJoins(shapes: Shape[], drawing: StripDrawing, axis: Axis, top: number): void {
  for (const { join, fromX, toX } of joinsOn(axis, drawing)) {
    shapes.push({
      kind: "line",
      points: [
        [fromX, top - 3],
        [toX, top + PIPE + 3],
      ],
      width: 1,
      tone: "ink",
      dash: join.state !== "accepted",
    });
  }
}

/** Stretches on the pipe: a heavy rule beside it for a fault, a broken one for water. */
function drawStretches(shapes: Shape[], drawing: StripDrawing, axis: Axis, top: number): void {
  for (const mark of drawing.onPipe) {
    if (mark.toStation === null) continue;
    const shown = across(axis, { from: mark.station, to: mark.toStation });
    if (shown === null) continue;
    const y = top + PIPE / 2;
    shapes.push({
      kind: "line",
      points: [
        [shown.left, y],
        [shown.right, y],
      ],
      width: mark.kind === "water" ? 3.5 : 2,
      tone: mark.kind === "water" ? "soft" : "ink",
      dash: mark.kind === "water",
    });
  }
}

function drawRuler(shapes: Shape[], drawing: StripDrawing, axis: Axis, y: number): void {
  shapes.push(
    line(
      [
        [axis.left, y],
        [axis.right, y],
      ],
      0.5,
      "ink",
    ),
  );
  let free = Number.NEGATIVE_INFINITY;
  for (const tick of drawing.ticks) {
    if (tick < axis.from || tick > axis.to) continue;
    const x = xOn(axis, tick);
    const text = formatDrawingStation(tick);
    const width = textWidth(text, DETAIL, false);
    shapes.push(
      line(
        [
          [x, y - 3],
          [x, y + 3],
        ],
        0.5,
        "ink",
      ),
    );
    const spot = tickSpot(axis, { x, width });
    if (spot.left < free) continue;
    const { at, anchor } = spot;
    shapes.push(words(text, [at, y + 12], DETAIL, { anchor }));
    free = spot.left + width + 6;
  }
}

/** A tick's words stand in its middle, but beside it at an end of the drawing. */
function tickSpot({ left, right, cut }: Axis, { x, width }: { x: number; width: number }) {
  const half = width / 2;
  if (x - half < (cut.left ? left : 0)) {
    const at = cut.left ? x + CLEAR : x - CLEAR;
    return { at, left: at, anchor: "start" as const };
  }
  if (cut.right && x + half > right)
    return { at: x - CLEAR, left: x - CLEAR - width, anchor: "end" as const };
  return { at: x, left: x - half, anchor: "middle" as const };
}

const NORTH_ROW = 34;

const NORTH_REACH = 9;

/** North and the bearing, in a row of their own on the page that has the main; says how high it is. */
function drawNorth(
  shapes: Shape[],
  { north }: StripDrawing,
  axis: Axis,
  { top, width }: { top: number; width: number },
): number {
  if (north == null || axis.from > 0) return 0;
  const middle: Point = [axis.left + 16, top + NORTH_ROW / 2];
  const { tip, tail, head, letter } = northArrow(north.turn, middle, NORTH_REACH);
  shapes.push(line([tail, tip], 1, "ink"));
  shapes.push({ kind: "area", points: head, fill: "ink", tone: "ink", width: 0.5 });
  const at: Point = [letter[0], letter[1] + DETAIL * 0.36];
  shapes.push(words("N", at, DETAIL, { anchor: "middle", strong: true }));
  const left = axis.left + 40;
  const end = axis.cut.right ? axis.right - CLEAR : width;
  const said = [north.words, north.note];
  if (said.every((each) => left + textWidth(each, DETAIL, false) <= end))
    for (const [index, each] of said.entries())
      shapes.push(words(each, [left, middle[1] - 2 + index * LINE], DETAIL, { tone: "soft" }));
  return NORTH_ROW;
}
