import type { StripMark } from "./drawing.ts";
import { line, PIPE } from "./strip-ink.ts";
import type { Point, Shape, Tone } from "./strip-shape.ts";

/** A mark with its place along the pipe and the half width of its whisker, in points. */
export interface PlacedMark {
  readonly mark: StripMark;
  readonly x: number;
  readonly whisker: number;
}

/** The edge of the pipe at which marks stand, and which way is out. */
export interface PipeEdge {
  readonly edge: number;
  readonly way: 1 | -1;
}

/** Words with leaders on one side of the pipe. */
export interface MarkRow {
  readonly height: number;
  readonly draw: (shapes: Shape[], at: PipeEdge) => void;
}

/** The sign at the pipe: square for the record, round for seen, diamond for loud, cross for a fault. */
export function drawSign(shapes: Shape[], placed: PlacedMark, { edge, way }: PipeEdge): void {
  const { mark, x } = placed;
  const tone: Tone = mark.loud ? "loud" : "ink";
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
  drawWhisker(shapes, placed, y);
}

function drawWhisker(shapes: Shape[], { x, whisker: half }: PlacedMark, y: number): void {
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
