import type { Cft } from "../length/station.ts";
import type { StripDrawing, StripJoin } from "./drawing.ts";

// From what a strip tells to where it stands: the one geometry of screen, letter and packet. Each
// lays its names out by rules of its own, since paper shows everything and a screen can look closer.

/** The axis of a strip: main at the left, stations rising to the right; a sheet may show part of it. */
export interface StripAxis {
  /** x of the first station shown, and of the last. */
  readonly left: number;
  readonly right: number;
  readonly from: Cft;
  readonly to: Cft;
  readonly perHundredth: number;
}

/** The x of a station. */
export function xOn({ left, from, perHundredth }: StripAxis, station: Cft): number {
  return left + (station - from) * perHundredth;
}

/** A stretch as far as the axis shows it; null: it shows nothing of it. */
export function across(
  axis: StripAxis,
  stretch: { readonly from: Cft; readonly to: Cft },
): { readonly left: number; readonly right: number } | null {
  const from = Math.max(stretch.from, axis.from);
  const to = Math.min(stretch.to, axis.to);
  return to <= from ? null : { left: xOn(axis, from), right: xOn(axis, to) };
}

/** A pairing from its entry on the record to its tie-in on the pipe. */
export interface PlacedJoin {
  readonly join: StripJoin;
  readonly fromX: number;
  readonly toX: number;
}

/** The pairings of which both ends are drawn and on the axis. */
export function joinsOn(
  axis: StripAxis,
  { above, below, joins }: Pick<StripDrawing, "above" | "below" | "joins">,
): PlacedJoin[] {
  const stations = (marks: StripDrawing["above"]) =>
    new Map(
      marks.flatMap(({ id, station }) =>
        station >= axis.from && station <= axis.to ? [[id, station] as const] : [],
      ),
    );
  const entries = stations(above);
  const tieIns = stations(below);
  return joins.flatMap((join) => {
    const from = entries.get(join.entryId);
    const to = tieIns.get(join.tieInId);
    if (from === undefined || to === undefined) return [];
    return [{ join, fromX: xOn(axis, from), toX: xOn(axis, to) }];
  });
}
