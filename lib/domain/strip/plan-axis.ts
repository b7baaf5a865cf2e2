import type { Cft } from "../length/station.ts";
import type { StripDrawing, StripMark } from "./drawing.ts";
import { type StripAxis, xOn } from "./places.ts";
import { flagWidth } from "./strip-flags.ts";
import type { PlacedMark } from "./strip-sign.ts";

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

export interface Axis extends StripAxis {
  /** At which ends the line goes on outside of the frame. */
  readonly cut: { readonly left: boolean; readonly right: boolean };
}

/** How far words keep from where the drawing is cut. */
export const CLEAR = 4;

/** The axis: to the given scale, or as wide as the last flags leave room for. */
export function axisOf(drawing: StripDrawing, frame: StripFrame, upright: boolean): Axis {
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
  const cut = { left: frame.from > 0, right: frame.to < drawing.extent };
  const right = left + (frame.to - frame.from) * perHundredth;
  return { perHundredth, left, right, from: frame.from, to: frame.to, cut };
}

export function placeAll(marks: readonly StripMark[], axis: Axis): PlacedMark[] {
  return marks.map((mark) => ({
    mark,
    x: xOn(axis, mark.station),
    whisker: mark.whisker * axis.perHundredth,
  }));
}
