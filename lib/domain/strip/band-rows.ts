import { isOfCapacity } from "./capacity-band.ts";
import type { FileDrawing, StripBand, StripRun } from "./drawing.ts";
import { type StripSize, wide } from "./measures.ts";
import { pipeBand } from "./pipes.ts";
import { type StripAxis, xOn } from "./places.ts";

export interface BandCell {
  readonly id: string | null;
  readonly x: number;
  readonly width: number;
  /** The words, cut into lines that fit; or the letter under which they stand in the notes. */
  readonly lines: readonly string[];
  readonly words: string;
  readonly loud: boolean;
  readonly hatch: "none" | "sparse" | "dense" | "cross";
  /** The words stand to the right of the cell, which is too narrow for them. */
  readonly outside?: boolean;
  /** Land that the pipe only crosses. */
  readonly lot?: boolean;
}

export interface BandRow {
  readonly title: string;
  readonly top: number;
  readonly height: number;
  readonly cells: readonly BandCell[];
}

/** One run as a thin row: a line where it saw, a hatched box where it did not. */
export interface RunRow {
  readonly run: StripRun;
  readonly top: number;
  readonly height: number;
  readonly cells: readonly BandCell[];
  readonly fromX: number | null;
  readonly toX: number | null;
}

interface Place {
  readonly axis: StripAxis;
  readonly size: StripSize;
}

const LINE = 16;
const TYPE = 13;
/** More notes than this tell nobody anything: a closer look shows the words in their cells. */
const MOST_NOTES = 8;
const LONGEST_NOTE = 70;

/** The bands that a strip of this size shows, below `top`, with the words that found no room. */
export function bandRows(drawing: FileDrawing, top: number, place: Place) {
  const notes: { letter: string; words: string }[] = [];
  const bands: BandRow[] = [];
  let bottom = top;
  for (const { title, cells } of shownBands(drawing, place.size)) {
    const laid = cells.map((cell) => cellOf(cell, place, notes));
    const most = Math.max(1, ...laid.map((cell) => cell.lines.length));
    const height = most * LINE + 8;
    bands.push({ title, top: bottom, height, cells: laid });
    bottom += height;
  }
  return { bands, notes, bottom };
}

/** The runs of a strip, one thin row each, below `top`. */
export function runRowsAt(drawing: FileDrawing, top: number, place: Place & { height: number }) {
  const runs = drawing.runs.map((run, at): RunRow => {
    const cells = run.cells.map((cell) => cellOf(cell, { ...place, size: "small" }, null));
    const blind = cells.filter((cell) => cell.hatch !== "none");
    return {
      run,
      top: top + at * place.height,
      height: place.height,
      cells: cells.map((cell) => besideCell(cell, blind, place.axis.right)),
      fromX: run.from === null ? null : xOn(place.axis, run.from),
      toX: run.to === null ? null : xOn(place.axis, run.to),
    };
  });
  return { runs, bottom: top + runs.length * place.height };
}

/** A stretch that a run could not see keeps its word, beside it where it is narrow and there is room. */
function besideCell(cell: BandCell, blind: readonly BandCell[], right: number): BandCell {
  if (cell.hatch === "none" || cell.lines.length > 0) return cell;
  const end = cell.x + cell.width;
  const next = Math.min(right, ...blind.map((one) => one.x).filter((x) => x >= end));
  const fits = wide(cell.words, TYPE) + 12 < next - end;
  return fits ? { ...cell, lines: [cell.words], outside: true } : cell;
}

/** Whether a small strip has no room for the bands of its page. Slope and load come on top of them. */
export function isCrowded({ bands }: Pick<FileDrawing, "bands">): boolean {
  return bands.filter((band) => !isOfCapacity(band)).length > 2;
}

/** The pipe's own words come first; a small strip shows one band, and the lots that are crossed. */
function shownBands(drawing: FileDrawing, size: StripSize): FileDrawing["bands"] {
  const told = drawing.bands.filter((band) => band.title !== "Camera" || drawing.runs.length === 0);
  if (size === "small") {
    const isLots = ({ cells }: FileDrawing["bands"][number]) =>
      cells.some(({ lot }) => lot === true);
    return isCrowded(drawing) ? [] : told.filter((band, at) => at === 0 || isLots(band));
  }
  return [pipeBand(drawing.pipes), ...told];
}

type Notes = { letter: string; words: string }[] | null;

function cellOf(cell: StripBand["cells"][number], { axis, size }: Place, notes: Notes): BandCell {
  const x = xOn(axis, cell.from);
  const width = xOn(axis, cell.to) - x;
  const lines =
    fitted(cell.words, width, size) ??
    (cell.brief === undefined ? null : fitted(cell.brief, width, "small")) ??
    lettered(cell.words, width, notes);
  const { words, loud, hatch, lot = false } = cell;
  return { id: cell.id ?? null, x, width, lines, words, loud, hatch, lot };
}

/** The words on one or two lines that fit the width, or null. */
function fitted(words: string, width: number, size: StripSize): string[] | null {
  const room = width - 8;
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const last = lines.at(-1);
    if (wide(word, TYPE) > room) return null;
    if (last !== undefined && wide(`${last} ${word}`, TYPE) <= room) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines.length <= (size === "small" ? 1 : 2) ? lines : null;
}

function lettered(words: string, width: number, notes: Notes): string[] {
  if (notes === null || width < 10 || words.length > LONGEST_NOTE) return [];
  const known = notes.find((note) => note.words === words);
  if (known !== undefined) return [known.letter];
  if (notes.length >= MOST_NOTES) return [];
  const letter = String.fromCharCode(97 + notes.length);
  notes.push({ letter, words });
  return [letter];
}
