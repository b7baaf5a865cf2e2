import { type Cft, plainFeet, toTenth } from "../length/station.ts";
import type { StripDrawing } from "./drawing.ts";
import { wide } from "./measures.ts";
import { joinsOn, type PlacedJoin, type StripAxis } from "./places.ts";

/** A pairing as a line from the record down to the pipe, with the distance where it has room. */
export interface JoinLine extends PlacedJoin {
  /** Empty where entry and tie-in stand at one station, or where there is no room. */
  readonly words: string;
  readonly wordsX: number;
  readonly width: number;
}

const TYPE = 12;
/** The words stand beside the middle of their line; their height takes this part of its length. */
const PART = 0.22;
/** Half a tenth of a foot: what a drawing calls nil. */
const NIL: Cft = 5;

/** The joins between what is drawn; words only where they touch no other line and no other words. */
export function joinLines(
  drawing: StripDrawing,
  axis: StripAxis,
  { worded }: { readonly worded: boolean },
): JoinLine[] {
  const lines = joinsOn(axis, drawing).map(
    (placed): JoinLine => ({
      ...placed,
      ...{ words: "", wordsX: 0, width: 0 },
    }),
  );
  if (!worded) return lines;
  const taken: { from: number; to: number }[] = [];
  return lines.map((line) => {
    const worded = withWords(line);
    if (worded.words === "" || !isClear(worded, lines, taken)) return line;
    taken.push({ from: worded.wordsX, to: worded.wordsX + worded.width });
    return worded;
  });
}

function withWords(line: JoinLine): JoinLine {
  const distance = line.join.distance ?? 0;
  if (Math.abs(distance) < NIL) return line;
  const words = `${distance < 0 ? "−" : "+"}${plainFeet(toTenth(Math.abs(distance)))} ft`;
  const slant = Math.abs(line.toX - line.fromX) * PART;
  const wordsX = (line.fromX + line.toX) / 2 + slant / 2 + 5;
  return { ...line, words, wordsX, width: wide(words, TYPE) };
}

function isClear(
  { join, wordsX, width }: JoinLine,
  lines: readonly JoinLine[],
  taken: readonly { from: number; to: number }[],
): boolean {
  const from = wordsX - 2;
  const to = wordsX + width + 2;
  const hits = lines.some((other) => {
    if (other.join === join) return false;
    const middle = (other.fromX + other.toX) / 2;
    const half = (Math.abs(other.toX - other.fromX) * PART) / 2;
    return middle - half < to && middle + half > from;
  });
  return !hits && taken.every((one) => one.to < from || one.from > to);
}
