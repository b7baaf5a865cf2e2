import type { Fit } from "./align.ts";
import type { Decisions } from "./decisions.ts";
import type { RecordMark, SeenMark } from "./likeness.ts";
import { fitEntries, otherPlacings, type Placed, type Placing, place } from "./place.ts";

/** One whole way to pair record and camera, and the fit that it rests on. */
export interface Way {
  readonly fit: Fit;
  readonly placed: readonly Placed[];
}

/** Fits beyond these bring nothing new: they vary the ones before. */
const MOST_FITS = 12;

/** Everything laid out under the best of other fits, the best first. */
export function waysByOtherFits(
  rivals: readonly Fit[],
  {
    entries,
    tieIns,
    decisions,
    own,
  }: {
    readonly entries: readonly RecordMark[];
    readonly tieIns: readonly SeenMark[];
    readonly decisions: Decisions;
    readonly own: ReadonlyMap<string, Fit>;
  },
): Way[] {
  return rivals.slice(0, MOST_FITS).map((fit) => {
    const placing = place(fitEntries(entries, { overall: fit, own }), tieIns, decisions);
    return { fit, placed: [...placing.fixed, ...placing.near] };
  });
}

/** Other choices of pairs under the fit that was chosen, hardly worse. */
export function waysUnder(fit: Fit, chosen: Placing): Way[] {
  return otherPlacings(chosen, "near").map((placed) => ({ fit, placed }));
}
