import type { FitScore } from "./align.ts";
import type { Decisions } from "./decisions.ts";
import type { Fit } from "./fit.ts";
import type { RecordMark, SeenMark } from "./likeness.ts";
import { fitEntries, otherPlacings, type Placed, type Placing, place } from "./place.ts";
import type { OtherReading } from "./readings.ts";

/** One whole way to pair record and camera, and the fit that it rests on. */
export interface Way {
  readonly fit: Fit;
  /** The one record that is fitted otherwise; null: all of them, or none. */
  readonly recordId: string | null;
  /** A reading of that record that explains more entries than the one in use. */
  readonly explainsMore: boolean;
  readonly placed: readonly Placed[];
}

/** Fits beyond these bring nothing new: they vary the ones before. */
const MOST_FITS = 12;

interface Laid {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  readonly decisions: Decisions;
  readonly overall: Fit;
  readonly own: ReadonlyMap<string, Fit>;
}

/** Everything laid out under the best of other fits for all records, the best first. */
export function waysByOtherFits(rivals: readonly FitScore[], laid: Laid): Way[] {
  return rivals
    .slice(0, MOST_FITS)
    .map((fit) => wayOf({ fit, recordId: null, explainsMore: false }, { ...laid, overall: fit }));
}

/** Everything laid out with one record read otherwise than it says of itself. */
export function waysByReadings(readings: readonly OtherReading[], laid: Laid): Way[] {
  return readings.map(({ fit, recordId, now }) =>
    wayOf(
      { fit, recordId, explainsMore: fit.agreeing > now },
      { ...laid, own: new Map([...laid.own, [recordId, fit]]) },
    ),
  );
}

/** Other choices of pairs under the fit that was chosen, hardly worse. */
export function waysUnder(fit: Fit, chosen: Placing, which: "near" | "far" = "near"): Way[] {
  return otherPlacings(chosen, which).map((placed) => ({
    fit,
    recordId: null,
    explainsMore: false,
    placed,
  }));
}

function wayOf(of: Omit<Way, "placed">, { entries, tieIns, decisions, overall, own }: Laid): Way {
  const placing = place(fitEntries(entries, { overall, own }), tieIns, decisions);
  return { ...of, placed: [...placing.fixed, ...placing.near] };
}
