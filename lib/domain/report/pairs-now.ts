import type { LineFile } from "../facts/line-file.ts";
import type { Alternative, ProposedPairing, Report } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";

/** Proposals within the tolerance and without a rival: those that may be accepted in one go. */
export function sureProposals({ proposals }: Pick<Report, "proposals">): ProposedPairing[] {
  return proposals.filter((proposal) => proposal.band === "same" && !proposal.nearTie);
}

/** Pairs as they stand: accepted ones, and proposals that are not in conflict. */
export function pairsNow(
  file: Pick<LineFile, "pairings">,
  report: Pick<Report, "entries" | "tieIns" | "proposals">,
): Alternative["pairs"] {
  const accepted = file.pairings
    .filter((pairing) => pairing.state === "accepted")
    .map(({ entryId, tieInId }) => ({
      entryId,
      tieInId,
      distance: distanceOf(report, { entryId, tieInId }) ?? 0,
    }));
  const proposed = report.proposals
    .filter(({ band }) => band !== "conflict")
    .map(({ entryId, tieInId, distance }) => ({ entryId, tieInId, distance }));
  return [...accepted, ...proposed];
}

/** Tie-in minus entry, after shift and scale; null where one of them has no station. */
export function distanceOf(
  report: Pick<Report, "entries" | "tieIns">,
  { entryId, tieInId }: { readonly entryId: string; readonly tieInId: string },
): Cft | null {
  const entry = report.entries.find((each) => each.entryId === entryId)?.station ?? null;
  const tieIn = report.tieIns.find((each) => each.tieIn.id === tieInId)?.station ?? null;
  return entry === null || tieIn === null ? null : tieIn - entry;
}
