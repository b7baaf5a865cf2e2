import {
  type AlignmentDecision,
  acceptedAlignment,
  refusedAlignments,
} from "../facts/alignment-decision.ts";
import { type AlignGiven, type AlignResult, align, judgeFit } from "./align.ts";
import { type Fit, type Move, PLAIN } from "./fit.ts";
import { type OtherReading, otherReadings } from "./readings.ts";
import type { ReconcileInput } from "./reconcile-input.ts";

/** The fits that the proposals rest on, a person's or the search's, and what rivals them. */
export interface Fits {
  readonly search: AlignResult;
  readonly decision: AlignmentDecision | null;
  readonly overall: Fit;
  /** Of records that are fitted by themselves. */
  readonly own: ReadonlyMap<string, Fit>;
  readonly fitOf: (recordId: string) => Fit;
  /** Records that explain as much read otherwise. */
  readonly readings: readonly OtherReading[];
  /** True where a person decided how this record lies, by itself or with all. */
  readonly isDecided: (recordId: string) => boolean;
}

/** Searches the fits, or takes those that a person accepted. */
export function fitsOf(input: ReconcileInput, given: Omit<AlignGiven, "refused">): Fits {
  const { alignments } = input;
  const search = align({ ...given, refused: refusedAlignments(alignments, null) });
  const decision = acceptedAlignment(alignments, null);
  const overall = decision ? sided(decision, given) : search.best;
  const own = ownFits(input, { given, overall, isSettled: decision !== null });
  const fitOf = (recordId: string) => own.get(recordId) ?? overall;
  const refused = alignments.filter(({ state }) => state === "refused");
  const isDecided = (recordId: string) =>
    decision !== null || acceptedAlignment(alignments, recordId) !== null;
  return {
    search,
    decision,
    overall,
    own,
    fitOf,
    readings: otherReadings({ ...given, refused }, fitOf),
    isDecided,
  };
}

/**
 * Records with a fit of their own: a person accepted it, or it explains at least two of their
 * entries more and no person accepted one for all records.
 */
function ownFits(
  { entries, alignments }: ReconcileInput,
  {
    given,
    overall,
    isSettled,
  }: { given: Omit<AlignGiven, "refused">; overall: Fit; isSettled: boolean },
): Map<string, Fit> {
  const recordIds = [...new Set(entries.map((entry) => entry.recordId))];
  const own = new Map<string, Fit>();
  for (const recordId of recordIds) {
    const marks = { ...given, entries: entries.filter((entry) => entry.recordId === recordId) };
    const accepted = acceptedAlignment(alignments, recordId);
    if (accepted) own.set(recordId, sided(accepted, marks));
    if (accepted || isSettled || recordIds.length < 2) continue;
    const { best } = align({ ...marks, refused: refusedAlignments(alignments, recordId) });
    const shared = judgeFit(marks, overall);
    if (best.explained >= shared.explained + 2) own.set(recordId, best);
  }
  return own;
}

/** A person's word on shift and scale, with the sides the way round that explains clearly more. */
function sided({ shift, scale }: Move, given: Omit<AlignGiven, "refused">): Fit {
  const drawn = judgeFit(given, { ...PLAIN, shift, scale });
  const mirrored = judgeFit(given, { shift, scale, mirrored: true });
  return { shift, scale, mirrored: mirrored.explained >= 3 && mirrored.score > drawn.score };
}
