import type { LineFile } from "../facts/line-file.ts";
import type { Alternative, ProposedPairing, Report } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { isContradicted } from "../run/sighting.ts";

/**
 * Proposals within the tolerance, without a rival and of tie-ins whose sightings agree: those that may
 * be accepted in one go.
 */
export function sureProposals({
  proposals,
  tieIns,
}: Pick<Report, "proposals" | "tieIns">): ProposedPairing[] {
  const open = new Set(
    tieIns.filter(({ sightings }) => isContradicted(sightings)).map(({ tieIn }) => tieIn.id),
  );
  return proposals.filter(
    ({ band, nearTie, tieInId }) => band === "same" && !nearTie && !open.has(tieInId),
  );
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
