import type { Alignment, ProposedPairing } from "../file/report.ts";
import { sidesAgree } from "../run/sighting.ts";
import {
  type AlignResult,
  type Fit,
  type FitScore,
  judgeFit,
  type MayPair,
  PLAIN,
} from "./align.ts";
import { type AlignmentDecision, acceptedAlignment } from "./alignment-decision.ts";
import { alignmentSentence } from "./alignment-sentence.ts";
import type { ReconcileInput } from "./reconcile-input.ts";

interface Found {
  readonly search: AlignResult;
  readonly decision: AlignmentDecision | null;
  readonly overall: Fit;
  readonly own: ReadonlyMap<string, Fit>;
  readonly mayPair: MayPair;
  readonly proposals: readonly ProposedPairing[];
  /** Another fit, nearly as good, that pairs otherwise. */
  readonly rival: FitScore | null;
}

/** How the records lie on the camera's axis, what each way of taking them explains, and in words. */
export function alignmentOf(input: ReconcileInput, found: Found): Alignment {
  const { entries, tieIns, recordNames, alignments } = input;
  const { search, decision, overall, own, mayPair } = found;
  const records = [...new Set(entries.map((entry) => entry.recordId))];
  const explainedBy = (recordId: string, fit: Fit) => {
    const marks = entries.filter((entry) => entry.recordId === recordId);
    return judgeFit(marks, tieIns, { fit, mayPair }).explained;
  };
  const explainedUnder = (fitOf: (recordId: string) => Fit) =>
    records.reduce((sum, recordId) => sum + explainedBy(recordId, fitOf(recordId)), 0);
  const explained = explainedUnder((recordId) => own.get(recordId) ?? overall);
  const common = { explained, of: entries.length, plain: explainedUnder(() => PLAIN) };
  const { best } = search;
  return {
    shift: overall.shift,
    scale: overall.scale,
    ...common,
    decision,
    proposed: { shift: best.shift, scale: best.scale, explained: explainedUnder(() => best) },
    own: [...own].map(([recordId, fit]) => ({
      recordId,
      shift: fit.shift,
      scale: fit.scale,
      explained: explainedBy(recordId, fit),
      of: entries.filter((entry) => entry.recordId === recordId).length,
      decision: acceptedAlignment(alignments, recordId),
    })),
    sentence: alignmentSentence({
      ...common,
      fit: overall,
      acceptedBy: decision?.decidedBy ?? null,
      rival: found.rival,
      mirrored: mirroredCount(input, found.proposals),
      own: [...own].map(([recordId, fit]) => ({ name: recordNames.get(recordId) ?? "", fit })),
      names: records.map((recordId) => recordNames.get(recordId) ?? ""),
    }),
  };
}

/** How many pairs lie within the tolerance, and how many of those on opposite sides. */
function mirroredCount(
  { entries, tieIns, pairings }: ReconcileInput,
  proposals: readonly ProposedPairing[],
): { sides: number; of: number } {
  const entrySide = new Map(entries.map((entry) => [entry.entryId, entry.side]));
  const tieInSide = new Map(tieIns.map((tieIn) => [tieIn.tieInId, tieIn.side]));
  const near = proposals.filter(({ distance, tolerance }) => Math.abs(distance) <= tolerance);
  const accepted = pairings.filter((pairing) => pairing.state === "accepted");
  const opposite = [...near, ...accepted].filter(
    ({ entryId, tieInId }) =>
      !sidesAgree(entrySide.get(entryId) ?? "unknown", tieInSide.get(tieInId) ?? "unknown"),
  );
  return { sides: opposite.length, of: near.length + accepted.length };
}
