import type { Cft } from "../line/station.ts";
import type { StripDrawing, StripMark } from "./drawing.ts";

export type StripSize = "small" | "large";

/** How much paper there is. All lengths from here on are in units of the drawing, say pixels. */
export interface StripFrame {
  readonly width: number;
  readonly size: StripSize;
  /** 1 fits the whole line into the width. */
  readonly zoom: number;
}

/** A mark with its words: a pole from the pipe to its lane, the words to the right of the pole. */
export interface Flag {
  readonly mark: StripMark;
  /** Where the mark meets the pipe. */
  readonly x: number;
  readonly poleX: number;
  /** 0 is nearest to the pipe; -1: marked, not named. */
  readonly lane: number;
  /** How far its lane begins and ends from the first lane's near edge. */
  readonly near: number;
  readonly far: number;
  readonly width: number;
  readonly label: string;
  readonly detail: string;
}

interface BandCell {
  readonly x: number;
  readonly width: number;
  /** The words, cut into lines that fit; or the letter under which they stand in the notes. */
  readonly lines: readonly string[];
  readonly words: string;
  readonly loud: boolean;
  readonly hatch: "none" | "sparse" | "dense" | "cross";
}

export interface BandRow {
  readonly title: string;
  readonly top: number;
  readonly height: number;
  readonly cells: readonly BandCell[];
}

export interface StripLayout {
  readonly width: number;
  readonly height: number;
  /** x of station 0, and of the end of the drawing. */
  readonly left: number;
  readonly right: number;
  /** Between the pipe and the first lane. */
  readonly pole: number;
  readonly pipeTop: number;
  readonly pipeBottom: number;
  readonly points: readonly Flag[];
  readonly above: readonly Flag[];
  readonly below: readonly Flag[];
  readonly rulerY: number;
  readonly ticks: readonly { readonly station: Cft; readonly x: number }[];
  readonly bands: readonly BandRow[];
  /** Words that did not fit into their cell, by letter. */
  readonly notes: readonly { readonly letter: string; readonly words: string }[];
}

interface Measures {
  readonly label: number;
  readonly detail: number;
  readonly pipe: number;
  readonly marginLeft: number;
  readonly pole: number;
  readonly ruler: number;
}

const MEASURES: Record<StripSize, Measures> = {
  large: { label: 15, detail: 13, pipe: 18, marginLeft: 104, pole: 22, ruler: 30 },
  small: { label: 13, detail: 0, pipe: 12, marginLeft: 56, pole: 14, ruler: 24 },
};

/** Mean width of a letter against the size of the type; generous, so that words never touch. */
const LETTER = 0.54;
/** How far a branch leans upstream before it turns into its pole. */
export const WYE_REACH: Record<StripSize, number> = { large: 15, small: 10 };
/** How far the public main is drawn on each side of the pipe. */
export const MAIN_REACH: Record<StripSize, number> = { large: 34, small: 20 };
const GAP = 8;
const BAND_LINE = 16;

/** The x of a station. */
export function xOf(
  layout: Pick<StripLayout, "left" | "right">,
  extent: Cft,
  station: Cft,
): number {
  return layout.left + (station / extent) * (layout.right - layout.left);
}

/**
 * Lays a strip out: flags on as many lanes as they need so that no words touch and no pole runs
 * through words, then the ruler and the bands. Pure arithmetic; whoever draws it scales nothing.
 */
export function layStrip(drawing: StripDrawing, frame: StripFrame): StripLayout {
  const measures = MEASURES[frame.size];
  const axis = axisOf(drawing, frame, measures);
  const x = (station: Cft) => xOf(axis, drawing.extent, station);
  const place = { x, size: frame.size, measures };
  const onPipe = drawing.onPipe.filter((mark) => mark.kind === "fault" || mark.kind === "water");
  const above = inLanes(
    drawing.above.map((mark) => flagOf(mark, place)),
    measures,
  );
  const below = inLanes(
    [
      ...drawing.below.map((mark) => flagOf(mark, place)),
      ...withoutEchoes(
        onPipe.map((mark) => flagOf({ ...mark, detail: "" }, place)),
        frame.size,
      ),
    ],
    measures,
  );
  const points = inLanes(
    drawing.onPipe
      .filter((mark) => mark.kind === "point" || mark.kind === "upper-end")
      .map((mark) => flagOf({ ...mark, detail: "" }, place)),
    measures,
  );
  const pipeTop = Math.max(
    6 + depthOf(points) + depthOf(above) + measures.pole,
    MAIN_REACH[frame.size] + 8,
  );
  const pipeBottom = pipeTop + measures.pipe;
  const rulerY = pipeBottom + Math.max(measures.pole + depthOf(below), MAIN_REACH[frame.size]) + 14;
  const laid = bandsOf(drawing, { x, top: rulerY + measures.ruler, size: frame.size });
  return {
    ...axis,
    height: laid.bottom + 2,
    pole: measures.pole,
    pipeTop,
    pipeBottom,
    points,
    above,
    below,
    rulerY,
    ticks: drawing.ticks.map((station) => ({ station, x: x(station) })),
    bands: laid.bands,
    notes: laid.notes,
  };
}

/** The paper is as wide as the frame, or wider when zoomed; words at the upper end need room. */
function axisOf(drawing: StripDrawing, frame: StripFrame, measures: Measures) {
  const left = measures.marginLeft;
  const marks = [...drawing.above, ...drawing.below, ...drawing.onPipe];
  const inner = Math.max(frame.width - left - 24, 60);
  const overhang = marks.map((mark) => {
    const rest = ((drawing.extent - mark.station) / drawing.extent) * inner;
    return widthOf(mark, measures) + GAP * 2 - rest;
  });
  const marginRight = Math.min(Math.max(28, ...overhang), Math.max(frame.width * 0.3, 28));
  const fit = Math.max(frame.width - left - marginRight, 60);
  const right = left + fit * frame.zoom;
  return { left, right, width: right + marginRight };
}

function widthOf(mark: StripMark, measures: Measures): number {
  const detail = measures.detail === 0 ? 0 : mark.detail.length * measures.detail * LETTER;
  const shape = mark.loud ? measures.label : 0;
  return Math.max(mark.label.length * measures.label * LETTER + shape, detail) + GAP;
}

interface Placing {
  readonly x: (station: Cft) => number;
  readonly size: StripSize;
  readonly measures: Measures;
}

function flagOf(mark: StripMark, { x, size, measures }: Placing): Flag {
  const at = x(mark.station);
  const middle = mark.toStation === null ? at : (at + x(mark.toStation)) / 2;
  return {
    mark,
    x: at,
    poleX: mark.kind === "tie-in" ? at + WYE_REACH[size] : middle,
    lane: 0,
    near: 0,
    far: 0,
    width: widthOf(mark, measures),
    label: mark.label,
    detail: measures.detail === 0 ? "" : mark.detail,
  };
}

/** The same fault seen by another run, and water, are marked but not named: bands say the latter. */
function withoutEchoes(flags: readonly Flag[], size: StripSize): Flag[] {
  const named: Flag[] = [];
  return flags.map((flag) => {
    const echo =
      size === "small" ||
      flag.mark.kind === "water" ||
      named.some((one) => one.label === flag.label && Math.abs(one.poleX - flag.poleX) < 24);
    if (!echo) named.push(flag);
    return echo ? { ...flag, label: "", detail: "", width: 0 } : flag;
  });
}

/**
 * Lanes from right to left: words reach to the right of their pole, so each flag stands one lane
 * farther out than every flag whose pole they would reach. Then no pole runs through any words.
 */
function inLanes(flags: readonly Flag[], measures: Measures): Flag[] {
  const done: Flag[] = [];
  for (const flag of flags.toSorted((one, other) => other.poleX - one.poleX)) {
    const named = flag.label !== "";
    const reached = done.filter(
      (one) => one.lane >= 0 && one.poleX <= flag.poleX + flag.width + GAP,
    );
    const lane = named ? 1 + Math.max(-1, ...reached.map((one) => one.lane)) : -1;
    done.push({ ...flag, lane });
  }
  return withDepths(done.toReversed(), measures);
}

/** A lane is as deep as its deepest flag: one line of words, or two. */
function withDepths(flags: readonly Flag[], measures: Measures): Flag[] {
  const lanes = 1 + Math.max(-1, ...flags.map((flag) => flag.lane));
  const edges = [0];
  for (let lane = 0; lane < lanes; lane += 1) {
    const here = flags.filter((flag) => flag.lane === lane);
    const two = here.some((flag) => flag.detail !== "");
    const depth = measures.label + 5 + (two ? measures.detail + 4 : 0);
    edges.push((edges[lane] ?? 0) + depth);
  }
  return flags.map((flag) => ({
    ...flag,
    near: edges[flag.lane] ?? 0,
    far: edges[flag.lane + 1] ?? 0,
  }));
}

function depthOf(flags: readonly Flag[]): number {
  return Math.max(0, ...flags.filter((flag) => flag.lane >= 0).map((flag) => flag.far));
}

function bandsOf(
  drawing: StripDrawing,
  { x, top, size }: { x: (station: Cft) => number; top: number; size: StripSize },
) {
  const notes: { letter: string; words: string }[] = [];
  const bands: BandRow[] = [];
  let bottom = top;
  for (const { title, cells } of rowsOf(drawing, size)) {
    const laid = cells.map((cell) => {
      const from = x(cell.from);
      const width = x(cell.to) - from;
      const lines = fitted(cell.words, width, size) ?? [letterFor(notes, cell.words)];
      return { x: from, width, lines, words: cell.words, loud: cell.loud, hatch: cell.hatch };
    });
    const most = Math.max(1, ...laid.map((cell) => cell.lines.length));
    const height = most * BAND_LINE + 8;
    bands.push({ title, top: bottom, height, cells: laid });
    bottom += height;
  }
  return { bands, notes, bottom };
}

/** The pipe's own words come first; a small strip shows one band and no more. */
function rowsOf(drawing: StripDrawing, size: StripSize): StripDrawing["bands"] {
  if (size === "small") return drawing.bands.length > 2 ? [] : drawing.bands.slice(0, 1);
  const pipe = drawing.pipes.map(({ from, to, words }) => ({
    from,
    to,
    words,
    loud: false,
    hatch: "none" as const,
  }));
  return [{ title: "Pipe", cells: pipe }, ...drawing.bands];
}

/** The words on one to three lines that fit the width, or null. */
function fitted(words: string, width: number, size: StripSize): string[] | null {
  const room = (width - 8) / (13 * LETTER);
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const last = lines.at(-1);
    if (word.length > room) return null;
    if (last !== undefined && last.length + 1 + word.length <= room) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines.length <= (size === "small" ? 1 : 3) ? lines : null;
}

function letterFor(notes: { letter: string; words: string }[], words: string): string {
  const known = notes.find((note) => note.words === words);
  if (known !== undefined) return known.letter;
  const at = notes.length;
  const letter = String.fromCharCode(97 + (at % 26)).repeat(1 + Math.floor(at / 26));
  notes.push({ letter, words });
  return letter;
}
