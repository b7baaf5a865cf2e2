import { textWidth } from "../say/text-width.ts";
import type { StripBand } from "./drawing.ts";
import { across } from "./places.ts";
import { type Axis, CLEAR } from "./plan-axis.ts";
import { pipeHatch } from "./strip-hatch.ts";
import { DETAIL, LINE, line, words } from "./strip-ink.ts";
import type { Point, Shape } from "./strip-shape.ts";

/** Draws the bands; says where they end, and where the notes below them do. */
export function drawBands(
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
    const shown = across(axis, cell);
    if (shown === null) continue;
    const { left, right } = shown;
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
