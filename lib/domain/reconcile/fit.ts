import type { Side } from "../facts/line.ts";
import { type Cft, toTenth } from "../length/station.ts";

/** What is done to a record's stations: first stretched, then moved. */
export interface Move {
  readonly shift: Cft;
  /** Parts per million on top of 1; a record in meters, or measured from the other end, goes far. */
  readonly scale: number;
}

/** Record → line: its stations moved, and its sides taken the other way round where mirrored. */
export interface Fit extends Move {
  readonly mirrored: boolean;
}

/** How a record is read, when it may not be as it says of itself. */
export interface Reading {
  /** Its numbers are meters. */
  readonly meters: boolean;
  /** It measures from the other end than it says. */
  readonly reversed: boolean;
  /** Left is right: it was drawn by somebody who looks downstream. */
  readonly mirrored: boolean;
}

export const AS_WRITTEN: Reading = { meters: false, reversed: false, mirrored: false };

export const PLAIN: Fit = { shift: 0, scale: 0, mirrored: false };

/** Feet in a meter: 1 / 0.3048, the international foot. */
const FEET_IN_A_METER = 1 / 0.3048;

/** Where the record's station lies on the line. */
export function fitted(station: Cft, { shift, scale }: Move): Cft {
  return scale === 0 ? station + shift : toTenth(station * (1 + scale / 1_000_000) + shift);
}

/** What a reading alone multiplies a record's stations by. */
export function factorOf({ meters, reversed }: Pick<Reading, "meters" | "reversed">): number {
  return (meters ? FEET_IN_A_METER : 1) * (reversed ? -1 : 1);
}

/** The reading that a move amounts to. */
export function readingOf({ scale }: Pick<Move, "scale">): Pick<Reading, "meters" | "reversed"> {
  const factor = 1 + scale / 1_000_000;
  return { meters: Math.abs(factor) > 2, reversed: factor < 0 };
}

/** A reading's factor and a stretch on top of it, as one scale. */
export function scaleOf(factor: number, stretch = 0): number {
  return Math.round((factor * (1 + stretch) - 1) * 1_000_000);
}

/** How much a move stretches beyond its reading, in parts per million. */
export function stretchOf(move: Pick<Move, "scale">): number {
  const factor = factorOf(readingOf(move));
  if (factor === 1) return move.scale;
  const stretch = ((1 + move.scale / 1_000_000) / factor - 1) * 1_000_000;
  return Math.abs(stretch) < 50 ? 0 : Math.round(stretch);
}

/** True where it is no more than another zero or a counter error: in feet, from the end it says. */
export function isAsWritten(move: Pick<Move, "scale">): boolean {
  return factorOf(readingOf(move)) === 1;
}

/** Beyond these a move is no other zero and no counter error, but a slip of the pen. */
const MOST = { shift: 10_000, turned: 1_000_000, stretch: 200_000 };

/** The farthest that a person may move a record; from the other end its zero is the line's length. */
export function isShiftInBounds({ shift, scale }: Move): boolean {
  const most = readingOf({ scale }).reversed ? MOST.turned : MOST.shift;
  return Number.isSafeInteger(shift) && Math.abs(shift) <= most;
}

/** The most that a person may stretch a record, on top of reading it in meters or from the other end. */
export function isScaleInBounds(scale: number): boolean {
  return Number.isSafeInteger(scale) && Math.abs(stretchOf({ scale })) <= MOST.stretch;
}

/** A side as a reading takes it. */
export function sideAs(side: Side, { mirrored }: Pick<Reading, "mirrored">): Side {
  if (!mirrored) return side;
  if (side === "left") return "right";
  return side === "right" ? "left" : side;
}
