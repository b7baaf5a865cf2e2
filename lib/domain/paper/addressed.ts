import type { LineFile } from "../facts/line-file.ts";
import type { PartyRole } from "../facts/party.ts";
import { LOT_ROLES } from "../facts/party.ts";
import type { Report } from "../findings/report.ts";
import type { Addressee } from "../notices/audience.ts";
import { latestSplit } from "../split/latest-split.ts";
import { candidatesFor } from "../tiein/candidates.ts";
import { isUnproven } from "../tiein/open-question.ts";

/** Somebody to whom a kind of letter is due, and what it is about. */
export interface Recipient {
  readonly partyId: string;
  /** Null: the letter is about the line and no property, as to an authority. */
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly splitId: string | null;
  /** The statutory paper that it gives; left out by every other kind. */
  readonly paperId?: string;
}

export interface About {
  readonly propertyId: string;
  readonly tieInId: string | null;
  readonly splitId: string | null;
}

export const EVERYBODY: readonly PartyRole[] = [...LOT_ROLES, "occupant", "manager"];

export function aboutProperty(property: { readonly id: string }): About {
  return { propertyId: property.id, tieInId: null, splitId: null };
}

/** The parties with one of these roles at each stop, each once. */
export function atEvery(
  file: LineFile,
  stops: readonly About[],
  roles: readonly PartyRole[],
): Recipient[] {
  return once(stops.flatMap((about) => withRoles(file, about, roles)));
}

function withRoles(file: LineFile, about: About, roles: readonly PartyRole[]): Recipient[] {
  return file.roles
    .filter((role) => role.propertyId === about.propertyId && roles.includes(role.role))
    .flatMap((role) => {
      const party = file.parties.find((each) => each.id === role.partyId);
      return party ? [{ partyId: party.id, ...about }] : [];
    });
}

/** One letter to each party for each property and tie-in, however many roles it has there. */
function once(recipients: readonly Recipient[]): Recipient[] {
  const seen = new Set<string>();
  return recipients.filter(({ partyId, propertyId, tieInId }) => {
    const key = JSON.stringify([partyId, propertyId, tieInId]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Those whom a clock waits for. */
export function toAll(audience: readonly Addressee[]): Recipient[] {
  return audience.map(({ partyId, propertyId }) => ({
    partyId,
    propertyId,
    tieInId: null,
    splitId: null,
  }));
}

export function publicBodies(file: LineFile): Recipient[] {
  return file.parties
    .filter((party) => party.kind === "public-body")
    .map((party) => ({
      partyId: party.id,
      propertyId: null,
      tieInId: null,
      splitId: null,
    }));
}

export function shareHolders(file: LineFile): About[] {
  const split = latestSplit(file);
  if (split === null) return [];
  return split.shares.flatMap(({ propertyId }) =>
    propertyId === null ? [] : [{ propertyId, tieInId: null, splitId: split.id }],
  );
}

/** The addresses that an undocumented tie-in may lead to, while nothing bears a demand on its owner. */
export function candidateStops(file: LineFile, report: Report): About[] {
  return report.tieIns.filter(isUnproven).flatMap((finding) =>
    candidatesFor(file, report, finding)
      .filter((candidate) => candidate.weight > 0)
      .map(({ propertyId }) => ({ propertyId, tieInId: finding.tieIn.id, splitId: null })),
  );
}
