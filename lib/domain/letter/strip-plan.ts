import type { Cft } from "../line/station.ts";
import { formatDrawingStation } from "../line/station.ts";
import type { StripBand, StripDrawing, StripMark } from "../strip/drawing.ts";
import { pipeHatch } from "./strip-hatch.ts";
import type { Point, Shape, StripPlan, Tone } from "./strip-shape.ts";
import { textWidth } from "./text-width.ts";

/** What is drawn of a strip, and where. */
export interface StripFrame {
  /** Width of the paper that the plan may take, in points. */
  readonly width: number;
  /** Points to a foot; null: as large as the width allows, which is not to scale. */
  readonly scale: number | null;
  readonly from: Cft;
  readonly to: Cft;
}

const LABEL = 8;
const DETAIL = 7.5;
const LINE = 9.5;
const PIPE = 10;
const EDGE = 12;

interface Flag {
  readonly mark: StripMark;
  readonly x: number;
  readonly width: number;
  readonly height: number;
  level: number;
}

interface Axis {
  readonly x: (station: Cft) => number;
  readonly left: number;
  readonly right: number;
  readonly from: Cft;
  readonly to: Cft;
}

/**
 * Lays a strip out on paper: flags above and below the pipe on as many levels as they need,
 * a ruler, the bands, and a list of the words that did not fit into their cells. Nothing is cut off.
 */
export function planStrip(drawing: StripDrawing, frame: StripFrame): StripPlan {
  const axis = axisOf(drawing, frame);
  const seen = (mark: StripMark) => mark.station >= frame.from && mark.station <= frame.to;
  const points = drawing.onPipe.filter((mark) => mark.kind === "point" && seen(mark));
  const pipeMarks = drawing.onPipe.filter((mark) => mark.kind !== "point" && seen(mark));
  const above = flagsOf([...drawing.above.filter(seen), ...points], axis);
  const below = flagsOf([...drawing.below.filter(seen), ...pipeMarks], axis);
  const shapes: Shape[] = [];
  const pipeTop = levelsHeight(above) + EDGE;
  const pipeBottom = pipeTop + PIPE;
  drawPipe(shapes, drawing, axis, pipeTop);
  drawJoins(shapes, drawing, axis, pipeTop);
  drawStretches(shapes, drawing, axis, pipeTop);
  drawFlags(shapes, above, { edge: pipeTop, way: -1 });
  drawFlags(shapes, below, { edge: pipeBottom, way: 1 });
  const rulerAt = pipeBottom + levelsHeight(below) + EDGE + 2;
  drawRuler(shapes, drawing, axis, rulerAt);
  const height = drawBands(shapes, drawing.bands, axis, { top: rulerAt + 20, width: frame.width });
  return { width: frame.width, height, shapes };
}

/** The axis: to the given scale, or as wide as the last flags leave room for. */
function axisOf(drawing: StripDrawing, frame: StripFrame): Axis {
  const left = 6;
  const room = frame.width - left - 6;
  const length = Math.max(frame.to - frame.from, 1);
  const marks = [...drawing.above, ...drawing.below, ...drawing.onPipe].filter(
    (mark) => mark.station > frame.from && mark.station <= frame.to,
  );
  const limits = marks.map(
    (mark) => (room - flagWidth(mark)) / Math.max(mark.station - frame.from, 1),
  );
  const fit = Math.max(Math.min(room / length, ...limits), (room * 0.4) / length);
  const perHundredth = frame.scale === null ? fit : frame.scale / 100;
  const x = (station: Cft) => left + (station - frame.from) * perHundredth;
  return { x, left, right: x(frame.to), from: frame.from, to: frame.to };
}

function flagWidth(mark: StripMark): number {
  const label = textWidth(mark.label, LABEL, true);
  return Math.max(label, textWidth(mark.detail, DETAIL, false)) + 8;
}

/**
 * Flags point to the right. Going from the right end leftwards, each flag lies one level
 * further out than every flag that starts within its width: so no leader ever crosses words.
 */
function flagsOf(marks: readonly StripMark[], axis: Axis): Flag[] {
  const flags = marks
    .map((mark) => ({
      mark,
      x: axis.x(mark.station),
      width: flagWidth(mark),
      height: (mark.detail === "" ? 1 : 2) * LINE + 3,
      level: 0,
    }))
    .sort((a, b) => b.x - a.x);
  for (const [index, flag] of flags.entries()) {
    const within = flags.slice(0, index).filter((other) => other.x < flag.x + flag.width);
    flag.level = within.reduce((most, other) => Math.max(most, other.level + 1), 0);
  }
  return flags;
}

function levelHeights(flags: readonly Flag[]): number[] {
  const heights: number[] = [];
  for (const flag of flags) {
    heights[flag.level] = Math.max(heights[flag.level] ?? 0, flag.height);
  }
  return heights;
}

function levelsHeight(flags: readonly Flag[]): number {
  return levelHeights(flags).reduce((sum, height) => sum + height, 0);
}

function drawFlags(
  shapes: Shape[],
  flags: readonly Flag[],
  { edge, way }: { edge: number; way: 1 | -1 },
): void {
  const heights = levelHeights(flags);
  for (const flag of flags) {
    const inner = heights.slice(0, flag.level).reduce((sum, height) => sum + height, 0);
    const near = edge + way * (EDGE - 4 + inner);
    const outer = near + way * flag.height;
    const top = Math.min(near, outer);
    const tone: Tone = flag.mark.loud ? "loud" : "ink";
    drawFlagLeader(shapes, flag, { edge, way, outer });
    drawSign(shapes, flag, { edge, way, tone });
    const first = top + LINE - 1;
    shapes.push(words(flag.mark.label, [flag.x + 4, first], LABEL, { strong: true, tone }));
    if (flag.mark.detail !== "") {
      shapes.push(words(flag.mark.detail, [flag.x + 4, first + LINE], DETAIL, { tone: "soft" }));
    }
  }
}

function drawFlagLeader(
  shapes: Shape[],
  flag: Flag,
  { edge, way, outer }: { edge: number; way: 1 | -1; outer: number },
): void {
  const boundary = flag.mark.kind === "point";
  const start = boundary ? edge - way * PIPE : edge;
  shapes.push({
    kind: "line",
    points: [
      [flag.x, start],
      [flag.x, outer],
    ],
    width: boundary ? 0.7 : 0.5,
    tone: flag.mark.loud ? "loud" : "soft",
    dash: boundary,
  });
}

/** The sign at the pipe: square for the record, round for seen, diamond for loud, cross for a fault. */
function drawSign(
  shapes: Shape[],
  flag: Flag,
  { edge, way, tone }: { edge: number; way: 1 | -1; tone: Tone },
): void {
  const { mark, x } = flag;
  const y = edge + way * 3;
  if (mark.kind === "fault") {
    const middle = edge - way * (PIPE / 2);
    shapes.push(
      line(
        [
          [x - 3, middle - 4],
          [x + 3, middle + 4],
        ],
        1.2,
        tone,
      ),
    );
    shapes.push(
      line(
        [
          [x - 3, middle + 4],
          [x + 3, middle - 4],
        ],
        1.2,
        tone,
      ),
    );
    return;
  }
  if (mark.kind === "point" || mark.kind === "water") return;
  if (mark.kind === "main" || mark.kind === "upper-end") {
    const middle = edge - way * (PIPE / 2);
    const half = mark.kind === "main" ? 9 : 7;
    shapes.push(
      line(
        [
          [x, middle - half],
          [x, middle + half],
        ],
        2,
        "ink",
      ),
    );
    return;
  }
  const size = mark.loud ? 4 : 2.8;
  const fill: Tone = mark.kind === "entry" ? "paper" : tone;
  const square = mark.kind === "entry" && !mark.loud;
  const points = square ? squareAt(x, y, size) : diamondOrRound(x, y, size, mark.loud);
  shapes.push({ kind: "area", points, fill, tone, width: 0.9 });
  drawWhisker(shapes, mark, flag.x, y);
}

function drawWhisker(shapes: Shape[], mark: StripMark, x: number, y: number): void {
  if (mark.whisker === 0 || mark.station === 0) return;
  const half = mark.whisker * ((x - 6) / mark.station);
  if (half < 3) return;
  shapes.push(
    line(
      [
        [x - half, y],
        [x + half, y],
      ],
      0.5,
      "soft",
    ),
  );
  shapes.push(
    line(
      [
        [x - half, y - 2],
        [x - half, y + 2],
      ],
      0.5,
      "soft",
    ),
  );
  shapes.push(
    line(
      [
        [x + half, y - 2],
        [x + half, y + 2],
      ],
      0.5,
      "soft",
    ),
  );
}

function squareAt(x: number, y: number, half: number): Point[] {
  return [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ];
}

function diamondOrRound(x: number, y: number, size: number, diamond: boolean): Point[] {
  const corners = diamond ? 4 : 12;
  return Array.from({ length: corners }, (_, index) => {
    const turn = (index * 2 * Math.PI) / corners;
    return [x + size * Math.sin(turn), y - size * Math.cos(turn)] as const;
  });
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
    if (x - width / 2 < free) continue;
    const anchor = x - width / 2 < 0 ? "start" : "middle";
    shapes.push(words(text, [anchor === "start" ? x - 4 : x, y + 12], DETAIL, { anchor }));
    free = x + width / 2 + 6;
  }
}

/** Draws the bands and returns the y below everything. */
function drawBands(
  shapes: Shape[],
  bands: readonly StripBand[],
  axis: Axis,
  { top, width }: { top: number; width: number },
): number {
  const notes: string[] = [];
  let y = top + 4;
  for (const band of bands) {
    shapes.push(words(band.title, [axis.left, y + 8], DETAIL, { strong: true, tone: "soft" }));
    drawBandCells(shapes, band, axis, { y: y + 12, notes });
    y += 31;
  }
  for (const row of packNotes(notes, width - 12)) {
    shapes.push(words(row, [axis.left, y + 8], DETAIL, {}));
    y += LINE + 1;
  }
  return y + 4;
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

function line(points: readonly Point[], width: number, tone: Tone): Shape {
  return { kind: "line", points, width, tone, dash: false };
}

function words(
  text: string,
  at: Point,
  size: number,
  style: {
    readonly strong?: boolean;
    readonly tone?: Tone;
    readonly anchor?: "start" | "middle" | "end";
  },
): Shape {
  const { strong = false, tone = "ink", anchor = "start" } = style;
  return { kind: "words", at, text, size, strong, tone, anchor };
}
