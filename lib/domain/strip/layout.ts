import { multiplesIn, roundStep } from "../length/round-steps.ts";
import type { Cft } from "../length/station.ts";
import { type BandRow, bandRows, isCrowded, type RunRow, runRowsAt } from "./band-rows.ts";
import type { FileDrawing, StripMark } from "./drawing.ts";
import { depthOf, type Flag, type FlagRules, flagsOf } from "./flags.ts";
import { type JoinLine, joinLines } from "./join-lines.ts";
import { GAP, MEASURES, type Measures, type StripSize, wide } from "./measures.ts";
import { type StripAxis, xOn } from "./places.ts";

/** How much paper there is. All lengths from here on are in units of the drawing, say pixels. */
export interface StripFrame {
  readonly width: number;
  readonly size: StripSize;
  /** 1 fits the whole line into the width. */
  readonly zoom: number;
  /** Record, pipe and camera alone, to be set above another strip. */
  readonly bare?: boolean;
}

/** A row of marks with their names beside them: faults, work. */
export interface MarkRow {
  readonly title: string;
  readonly top: number;
  readonly height: number;
  readonly flags: readonly Flag[];
}

export interface StripLayout extends StripAxis {
  readonly size: StripSize;
  readonly width: number;
  readonly height: number;
  /** Where the titles of the rows end. */
  readonly gutter: number;
  readonly holdsY: number;
  readonly holds: readonly Flag[];
  readonly pointsY: number;
  readonly points: readonly Flag[];
  /** The line of the record, on which its entries stand. */
  readonly recordY: number;
  readonly above: readonly Flag[];
  readonly joins: readonly JoinLine[];
  readonly pipeTop: number;
  readonly pipeBottom: number;
  /** Near edge of the first lane below. */
  readonly belowY: number;
  readonly below: readonly Flag[];
  readonly rulerY: number;
  readonly ticks: readonly { readonly station: Cft; readonly x: number }[];
  readonly rows: readonly MarkRow[];
  readonly runs: readonly RunRow[];
  readonly bands: readonly BandRow[];
  /** Words that did not fit into their cell, by letter. */
  readonly notes: readonly { readonly letter: string; readonly words: string }[];
}

/**
 * Lays a strip out: names on a few lanes so that no words touch and no pole runs through words,
 * what is too close counted together, then the ruler, the rows and the bands. Pure arithmetic;
 * whoever draws it scales nothing.
 */
export function layStrip(drawing: FileDrawing, frame: StripFrame): StripLayout {
  const { size, bare = false } = frame;
  const measures = MEASURES[size];
  const axis = axisOf(drawing, frame, measures);
  const x = (station: Cft) => xOn(axis, station);
  const upper = upperPart(drawing, { axis, measures, bare, size, edge: axis.width });
  const pipeBottom = upper.pipeTop + measures.pipe;
  const belowY = pipeBottom + measures.wye + 4;
  const below = flagsOf(drawing.below, {
    ...{ x, measures, lanes: measures.lanes.below, noun: "tie-ins" },
    lean: measures.wye,
    edge: axis.width,
  });
  const slim = size === "slim";
  const rulerY = Math.max(belowY + depthOf(below), pipeBottom + measures.main) + (slim ? 7 : 12);
  const top = rulerY + (slim ? 20 : 26);
  const lower = lowerPart(drawing, { axis, measures, size, top, bare: bare || slim });
  return {
    size,
    ...axis,
    gutter: measures.gutter,
    ...upper,
    pipeBottom,
    belowY,
    below,
    rulerY,
    ticks: ticksIn(axis).map((station) => ({ station, x: x(station) })),
    ...lower,
  };
}

interface Place {
  readonly axis: StripAxis;
  readonly measures: Measures;
  readonly bare: boolean;
}

/** Holds, boundaries and the record, down to the pipe. */
function upperPart(
  drawing: FileDrawing,
  { axis, measures, bare, size, edge }: Place & { readonly size: StripSize; readonly edge: number },
) {
  const small = measures.detail === 0;
  // A slim strip draws boundaries and cleanouts, and leaves their names to whoever points at them.
  const pointMeasures = size === "slim" ? { ...measures, label: 0 } : measures;
  const rules = { x: (station: Cft) => xOn(axis, station), measures, lean: 0, edge };
  const flags = (
    marks: readonly StripMark[],
    more: Partial<FlagRules> & Pick<FlagRules, "lanes" | "noun">,
  ) => flagsOf(bare ? [] : marks, { ...rules, ...more });
  const holds = flags(drawing.holds, { lanes: 1, noun: "holds" });
  const points = flags(
    drawing.onPipe
      .filter((mark) => mark.kind === "point" || mark.kind === "upper-end")
      .map((mark) => ({ ...mark, detail: "" })),
    { lanes: measures.lanes.points, noun: "points", measures: pointMeasures },
  );
  const above = flagsOf(drawing.above, {
    ...rules,
    ...{ lanes: measures.lanes.above, noun: "entries" },
  });
  const holdsY = 2;
  const pointsY = holdsY + depthOf(holds) + (holds.length === 0 ? 0 : 8);
  const recordY = Math.max(
    pointsY + depthOf(points) + depthOf(above) + 10,
    measures.main + 8 - measures.between,
  );
  const joins = joinLines(drawing, axis, { worded: !small });
  return {
    holds,
    holdsY,
    points,
    pointsY,
    above,
    recordY,
    joins,
    pipeTop: recordY + measures.between,
  };
}

/** What stands under the ruler. */
function lowerPart(
  drawing: FileDrawing,
  { axis, measures, size, top, bare }: Place & { size: StripSize; top: number },
) {
  if (bare) return { rows: [], runs: [], bands: [], notes: [], height: top };
  const x = (station: Cft) => xOn(axis, station);
  const rows: MarkRow[] = [];
  let bottom = top;
  for (const { title, marks, noun, lanes } of markRows(drawing, size)) {
    const quiet = { ...measures, label: 13, detail: 0 };
    const flags = flagsOf(marks, { x, measures: quiet, lanes, noun, lean: 0 });
    if (flags.length === 0) continue;
    const height = depthOf(flags) + 6;
    rows.push({ title, top: bottom, height, flags });
    bottom += height;
  }
  const shown = size === "small" ? drawing.bands.some((band) => band.title === "Camera") : true;
  const few = size === "small" && isCrowded(drawing);
  const told = shown && !few ? drawing : { ...drawing, runs: [] };
  const ran = runRowsAt(told, bottom, { axis, size, height: size === "small" ? 18 : 22 });
  const laid = bandRows(drawing, ran.bottom, { axis, size });
  const { bands, notes } = laid;
  return { rows, runs: ran.runs, bands, notes, height: laid.bottom + 2 };
}

function markRows(drawing: FileDrawing, size: StripSize) {
  const lanes = size === "small" ? 1 : 3;
  const work = { title: "Work", marks: drawing.work, noun: "items", lanes };
  if (size === "small") return [work];
  const faults = drawing.onPipe.filter((mark) => mark.kind === "fault");
  return [{ title: "Defects", marks: withoutEchoes(faults), noun: "defects", lanes: 2 }, work];
}

/** The same fault seen by another run is drawn on the pipe but not named again. */
function withoutEchoes(faults: readonly StripMark[]): StripMark[] {
  const named: StripMark[] = [];
  for (const mark of faults) {
    const echo = named.some(
      (one) => one.label === mark.label && Math.abs(one.station - mark.station) <= 200,
    );
    if (!echo) named.push({ ...mark, detail: "" });
  }
  return named;
}

/** The paper is as wide as the frame, or wider when zoomed; words at the upper end need room. */
function axisOf(drawing: FileDrawing, frame: StripFrame, measures: Measures) {
  const { left } = measures;
  const ends = drawing.onPipe.filter((mark) => mark.kind === "upper-end" || mark.kind === "point");
  const inner = Math.max(frame.width - left - 24, 60);
  const overhang = [...drawing.above, ...drawing.below, ...ends].map((mark) => {
    const rest = ((drawing.extent - mark.station) / drawing.extent) * inner;
    const shape = mark.loud ? measures.label : 0;
    const small = measures.detail === 0;
    const detail = small ? "" : (mark.brief ?? mark.detail);
    const name = small && mark.loud ? `${mark.label} ${mark.brief ?? ""}` : mark.label;
    const words = Math.max(wide(name, measures.label, true), wide(detail, measures.detail));
    return words + shape + measures.wye + GAP * 2 - rest;
  });
  const marginRight = Math.min(Math.max(28, ...overhang), Math.max(frame.width * 0.2, WORD));
  const fit = Math.max(frame.width - left - marginRight, 60);
  const perHundredth = (fit * frame.zoom) / drawing.extent;
  const right = left + drawing.extent * perHundredth;
  return { left, right, from: 0, to: drawing.extent, perHundredth, width: right + marginRight };
}

/** Room for one name at the upper end, also on a phone. */
const WORD = 118;

const LEAST_TICK = 60;

/** Round stations, so far apart that their numbers do not touch. */
function ticksIn({ from, to, perHundredth }: StripAxis): Cft[] {
  return multiplesIn(from, to, roundStep(Math.max(100, LEAST_TICK / perHundredth)));
}
