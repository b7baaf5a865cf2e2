import type { Cft } from "../length/station.ts";
import { formatDrawingStation } from "../length/station.ts";
import { textWidth } from "../say/text-width.ts";
import type { StripBand, StripDrawing, StripMark } from "./drawing.ts";
import { northArrow } from "./north.ts";
import { flagRow, flagWidth } from "./strip-flags.ts";
import { pipeHatch } from "./strip-hatch.ts";
import { DETAIL, EDGE, LINE, line, PIPE, words } from "./strip-ink.ts";
import type { Point, Shape, StripPlan } from "./strip-shape.ts";
import type { PlacedMark } from "./strip-sign.ts";
import { uprightRow } from "./strip-upright.ts";

/** What is drawn of a strip, and where. */
export interface StripFrame {
  /** Width of the paper that the plan may take, in points. */
  readonly width: number;
  /** Points to a foot; null: as large as the width allows, which is not to scale. */
  readonly scale: number | null;
  readonly from: Cft;
  readonly to: Cft;
  /** Height that it should keep to, where second lines can be spared for it; null: all are drawn. */
  readonly height: number | null;
}

interface Axis {
  readonly x: (station: Cft) => number;
  readonly perHundredth: number;
  readonly left: number;
  readonly right: number;
  readonly from: Cft;
  readonly to: Cft;
  /** At which ends the line goes on outside of the frame. */
  readonly cut: { readonly left: boolean; readonly right: boolean };
}

/** How far words keep from where the drawing is cut. */
const CLEAR = 4;

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

/** The axis: to the given scale, or as wide as the last flags leave room for. */
function axisOf(drawing: StripDrawing, frame: StripFrame, upright: boolean): Axis {
  const left = 6;
  const room = frame.width - left - 6;
  const length = Math.max(frame.to - frame.from, 1);
  const marks = [...drawing.above, ...drawing.below, ...drawing.onPipe].filter(
    (mark) => mark.station > frame.from && mark.station <= frame.to,
  );
  const limits = marks.map(
    (mark) => (room - flagWidth(mark)) / Math.max(mark.station - frame.from, 1),
  );
  const flagged = Math.max(Math.min(room / length, ...limits), (room * 0.75) / length);
  const fit = upright ? (room - 10) / length : flagged;
  const perHundredth = frame.scale === null ? fit : frame.scale / 100;
  const x = (station: Cft) => left + (station - frame.from) * perHundredth;
  const cut = { left: frame.from > 0, right: frame.to < drawing.extent };
  return { x, perHundredth, left, right: x(frame.to), from: frame.from, to: frame.to, cut };
}

function placeAll(marks: readonly StripMark[], axis: Axis): PlacedMark[] {
  return marks.map((mark) => ({
    mark,
    x: axis.x(mark.station),
    whisker: mark.whisker * axis.perHundredth,
  }));
}

function drawPipe(shapes: Shape[], drawing: StripDrawing, axis: Axis, top: number): void {
  for (const pipe of drawing.pipes) {
    const from = Math.max(pipe.from, axis.from);
    const to = Math.min(pipe.to, axis.to);
    if (to <= from) continue;
    const box = { left: axis.x(from), right: axis.x(to), top, bottom: top + PIPE };
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
  const inside = (station: Cft) => station >= axis.from && station <= axis.to;
  for (const join of drawing.joins) {
    const entry = drawing.above.find((mark) => mark.id === join.entryId);
    const tieIn = drawing.below.find((mark) => mark.id === join.tieInId);
    if (!entry || !tieIn || !inside(entry.station) || !inside(tieIn.station)) continue;
    shapes.push({
      kind: "line",
      points: [
        [axis.x(entry.station), top - 3],
        [axis.x(tieIn.station), top + PIPE + 3],
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
    const from = Math.max(mark.station, axis.from);
    const to = Math.min(mark.toStation, axis.to);
    if (to <= from) continue;
    const y = top + PIPE / 2;
    shapes.push({
      kind: "line",
      points: [
        [axis.x(from), y],
        [axis.x(to), y],
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
    const x = axis.x(tick);
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

/** Draws the bands; says where they end, and where the notes below them do. */
function drawBands(
  shapes: Shape[],
  bands: readonly StripBand[],
  axis: Axis,
  { top, width }: { top: number; width: number },
): { foot: number; height: number } {
  const notes: string[] = [];
  const title = axis.left + (axis.cut.left ? CLEAR : 0);
  let y = top + 4;
  for (const band of bands) {
    shapes.push(words(band.title, [title, y + 8], DETAIL, { strong: true, tone: "soft" }));
    drawBandCells(shapes, band, axis, { y: y + 12, notes });
    y += 28;
  }
  const foot = y;
  for (const row of packNotes(notes, width - 12)) {
    shapes.push(words(row, [axis.left, y + 8], DETAIL, {}));
    y += LINE + 1;
  }
  return { foot, height: y + 4 };
}

function drawBandCells(
  shapes: Shape[],
  band: StripBand,
  axis: Axis,
  { y, notes }: { y: number; notes: string[] },
): void {
  for (const cell of band.cells) {
    const from = Math.max(cell.from, axis.from);
    const to = Math.min(cell.to, axis.to);
    if (to <= from) continue;
    const left = axis.x(from);
    const right = axis.x(to);
    const box = { left, right, top: y, bottom: y + 14 };
    shapes.push(...bandHatch(cell.hatch, box));
    shapes.push(
      line(
        [
          [left, y],
          [right, y],
        ],
        0.5,
        cell.loud ? "loud" : "ink",
      ),
    );
    shapes.push(
      line(
        [
          [left, y + 14],
          [right, y + 14],
        ],
        0.5,
        cell.loud ? "loud" : "ink",
      ),
    );
    shapes.push(
      line(
        [
          [left, y],
          [left, y + 14],
        ],
        0.5,
        "ink",
      ),
    );
    shapes.push(
      line(
        [
          [right, y],
          [right, y + 14],
        ],
        0.5,
        "ink",
      ),
    );
    const fits = textWidth(cell.words, DETAIL, cell.loud) <= right - left - 6;
    const text = fits ? cell.words : noteFor(notes, cell.words);
    if (text === "") continue;
    drawOnPatch(shapes, text, [(left + right) / 2, y + 10], cell.loud);
  }
}

/** Words over a hatch stand on a patch of paper. */
function drawOnPatch(shapes: Shape[], text: string, at: Point, loud: boolean): void {
  const half = textWidth(text, DETAIL, loud) / 2 + 2;
  const [x, y] = at;
  shapes.push({
    kind: "area",
    points: [
      [x - half, y - 7.5],
      [x + half, y - 7.5],
      [x + half, y + 2.5],
      [x - half, y + 2.5],
    ],
    fill: "paper",
    tone: "paper",
    width: 0,
  });
  shapes.push(
    words(text, at, DETAIL, { anchor: "middle", strong: loud, tone: loud ? "loud" : "ink" }),
  );
}

function noteFor(notes: string[], text: string): string {
  const known = notes.indexOf(text);
  if (known >= 0) return noteSign(known);
  notes.push(text);
  return noteSign(notes.length - 1);
}

function noteSign(index: number): string {
  return String.fromCharCode(97 + (index % 26)).repeat(1 + Math.floor(index / 26));
}

/** `a …` notes on as few rows as the width allows. */
function packNotes(notes: readonly string[], width: number): string[] {
  const rows: string[] = [];
  for (const [index, note] of notes.entries()) {
    const text = `${noteSign(index)}  ${note}`;
    const last = rows.at(-1);
    const joined = last === undefined ? text : `${last}     ${text}`;
    if (last !== undefined && textWidth(joined, DETAIL, false) <= width)
      rows[rows.length - 1] = joined;
    else rows.push(text);
  }
  return rows;
}

function bandHatch(
  hatch: "none" | "sparse" | "dense" | "cross",
  box: { left: number; right: number; top: number; bottom: number },
): Shape[] {
  if (hatch === "none") return [];
  if (hatch === "cross") return pipeHatch("bituminous-fibre", box);
  return pipeHatch(hatch === "sparse" ? "vitrified-clay" : "cast-iron", box);
}
