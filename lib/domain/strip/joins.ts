import type { Alternative, Report } from "../findings/report.ts";
import type { StripChoice, StripJoin } from "./drawing.ts";

/**
 * The pairings as lines from entry to tie-in: the ones that hold or are proposed, and those that
 * are nearly as good. The distance is between the two as drawn, so it is what the eye sees.
 */
export function joinsOf(report: Report): StripJoin[] {
  const chosen = chosenJoins(report);
  const rivals = report.proposals
    .filter((proposal) => proposal.nearTie)
    .filter(
      ({ entryId, tieInId }) =>
        !chosen.some((join) => join.entryId === entryId && join.tieInId === tieInId),
    )
    .map(({ entryId, tieInId }) => joinOf(report, { entryId, tieInId, state: "alternative" }));
  return [...chosen, ...rivals];
}

/** The alternatives of a report, each pair marked where it differs from what is proposed now. */
export function choicesOf(report: Report): StripChoice[] {
  const chosen = chosenJoins(report);
  return report.alternatives.map((alternative) => ({
    key: alternative.key,
    joins: joinsOfChoice(report, alternative, chosen),
    sentence: alternative.sentence,
  }));
}

function joinsOfChoice(
  report: Report,
  { pairs }: Alternative,
  chosen: readonly StripJoin[],
): StripJoin[] {
  return pairs.map(({ entryId, tieInId }) => ({
    ...joinOf(report, { entryId, tieInId, state: "alternative" }),
    differs: !chosen.some((join) => join.entryId === entryId && join.tieInId === tieInId),
  }));
}

function chosenJoins(report: Report): StripJoin[] {
  return report.entries.flatMap(({ entryId, tieInId, decided }): StripJoin[] =>
    tieInId === null
      ? []
      : [joinOf(report, { entryId, tieInId, state: decided ? "accepted" : "proposed" })],
  );
}

function joinOf(report: Report, join: StripJoin): StripJoin {
  const entry = report.entries.find((one) => one.entryId === join.entryId);
  const tieIn = report.tieIns.find((one) => one.tieIn.id === join.tieInId);
  const from = entry?.recordStation ?? entry?.station ?? null;
  const to = tieIn?.station ?? null;
  return from === null || to === null ? join : { ...join, distance: to - from };
}
