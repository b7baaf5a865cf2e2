import type { Pairing } from "../facts/pairing.ts";
import type { ProposedPairing } from "../findings/report.ts";

/** What ties an entry to a tie-in: a person's word, or the program's proposal. */
export interface Link {
  readonly entryId: string;
  readonly tieInId: string;
  readonly accepted: Pairing | null;
  readonly proposal: ProposedPairing | null;
}

export interface Links {
  readonly byEntry: ReadonlyMap<string, Link>;
  /** The link to tell of: accepted before proposed, nearest first. */
  readonly byTieIn: ReadonlyMap<string, Link>;
  /** Proposals that somebody must explain first; they tie nothing together. */
  readonly conflicts: readonly ProposedPairing[];
}

/**
 * What ties entries and tie-ins together: accepted pairings, then proposals within the tolerance
 * or likely. A proposal in conflict ties nothing until a person accepts it.
 */
export function linksOf(
  pairings: readonly Pairing[],
  proposals: readonly ProposedPairing[],
): Links {
  const byEntry = new Map<string, Link>();
  for (const accepted of pairings) {
    if (accepted.state !== "accepted") continue;
    const { entryId, tieInId } = accepted;
    byEntry.set(entryId, { entryId, tieInId, accepted, proposal: null });
  }
  for (const proposal of proposals) {
    const { entryId, tieInId, band } = proposal;
    if (band === "conflict" || byEntry.has(entryId)) continue;
    byEntry.set(entryId, { entryId, tieInId, accepted: null, proposal });
  }
  const byTieIn = new Map<string, Link>();
  for (const link of [...byEntry.values()].sort((a, b) => rank(a) - rank(b)))
    if (!byTieIn.has(link.tieInId)) byTieIn.set(link.tieInId, link);
  return {
    byEntry,
    byTieIn,
    conflicts: proposals.filter((proposal) => proposal.band === "conflict"),
  };
}

function rank({ accepted, proposal }: Link): number {
  return accepted ? -1 : Math.abs(proposal?.distance ?? 0);
}
