import { acceptedAlignment } from "../facts/alignment-decision.ts";
import type { Alignment, ProposedPairing } from "../findings/report.ts";
import { sidesAgree } from "../run/sighting.ts";
import { judgeFit } from "./align.ts";
import { alignmentSentence } from "./alignment-sentence.ts";
import type { OfferedWay } from "./alternatives.ts";
import type { MayPair } from "./field.ts";
import { type Fit, PLAIN } from "./fit.ts";
import type { Fits } from "./fits.ts";
import type { ReconcileInput } from "./reconcile-input.ts";

interface Found {
  readonly fits: Fits;
  readonly mayPair: MayPair;
  readonly proposals: readonly ProposedPairing[];
  /** Entries that lie where a run looked, or are paired. */
  readonly inView: number;
  /** Entries of which a person said what became of them, and that no tie-in answers to. */
  readonly gone: number;
  /** Another fit for all records that pairs otherwise, the best. */
  readonly rival: OfferedWay | null;
}

/** How the records lie on the camera's axis, what each way of taking them explains, and in words. */
export function alignmentOf(input: ReconcileInput, found: Found): Alignment {
  const { entries, tieIns, recordNames, alignments } = input;
  const { fits, mayPair } = found;
  const { search, decision, overall, own, fitOf, readings } = fits;
  const records = [...new Set(entries.map((entry) => entry.recordId))];
  const told = new Map<string, number>();
  const explainedBy = (recordId: string, fit: Fit) => {
    const key = `${fit.shift} ${fit.scale} ${fit.mirrored} ${recordId}`;
    const marks = () => entries.filter((entry) => entry.recordId === recordId);
    const sum = told.get(key) ?? judgeFit({ entries: marks(), tieIns, mayPair }, fit).explained;
    told.set(key, sum);
    return sum;
  };
  const explainedUnder = (fitFor: (recordId: string) => Fit) =>
    records.reduce((sum, recordId) => sum + explainedBy(recordId, fitFor(recordId)), 0);
  const explained = explainedUnder(fitOf);
  const common = { explained, of: entries.length, plain: explainedUnder(() => PLAIN) };
  const { best } = search;
  const nameOf = (recordId: string) => recordNames.get(recordId) ?? "";
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
      inView: found.inView,
      gone: found.gone,
      fit: overall,
      acceptedBy: decision?.decidedBy ?? null,
      rival: found.rival && rivalFacts(found.rival, found.inView),
      mirrored: mirroredCount(input, found.proposals),
      own: [...own].map(([recordId, fit]) => ({ name: nameOf(recordId), fit })),
      names: records.map(nameOf),
      readings: readings
        .filter(({ fit, now, recordId }) => fit.agreeing > now && !fits.isDecided(recordId))
        .map((reading) => ({
          ...reading,
          used: fitOf(reading.recordId),
          name: nameOf(reading.recordId),
          fromUpperEnd: input.fromUpperEnd.has(reading.recordId),
        })),
    }),
  };
}

/** More than enough entries, and half of those in view, tell a shift from chance. */
function rivalFacts({ way, alternative }: OfferedWay, inView: number) {
  const { explained } = alternative;
  return { ...way.fit, explained, few: explained < 3 || explained * 2 < inView };
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
