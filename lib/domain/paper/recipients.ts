import { workOnLot } from "../consent/lots-worked.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { LetterKind } from "../facts/notice.ts";
import type { PartyRole } from "../facts/party.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import { heldAt, openAt } from "../ledger/owed.ts";
import { type Addressee, pauseAudience, startAudience, tenantsAt } from "../notices/audience.ts";
import { latestSplit } from "../split/latest-split.ts";
import { visitDays } from "../testing/visit.ts";
import { candidatesFor } from "../tiein/candidates.ts";
import { bearsDemand } from "../tiein/evidence.ts";
import { mayBeDemanded } from "../tiein/may-be-demanded.ts";

/** Somebody to whom a kind of letter is due, and what it is about. */
export interface Recipient {
  readonly partyId: string;
  /** Null: the letter is about the line and no property, as to an authority. */
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly splitId: string | null;
}

interface About {
  readonly propertyId: string;
  readonly tieInId: string | null;
  readonly splitId: string | null;
}

const OWNERS: readonly PartyRole[] = ["owner", "contract-purchaser", "association"];
const LOT_OWNERS: readonly PartyRole[] = [...OWNERS, "crossed-lot-owner"];
const OCCUPANTS: readonly PartyRole[] = ["occupant"];
const EVERYBODY: readonly PartyRole[] = [...LOT_OWNERS, "occupant", "manager"];

type Finder = (file: LineFile, report: Report) => Recipient[];

const FINDERS: Record<LetterKind, Finder> = {
  finding: (file) => atEvery(file, file.properties.map(aboutProperty), LOT_OWNERS),
  "tie-in-inquiry": inquiries,
  "test-visit": (file, report) =>
    atEvery(file, visitStops(file, report), [...OWNERS, ...OCCUPANTS, "manager"]),
  "proposed-split": (file) => atEvery(file, shareHolders(file), OWNERS),
  "entry-consent": (file, report) => atEvery(file, lotsToEnter(file, report), LOT_OWNERS),
  "joint-agreement": (file, report) =>
    atEvery(file, [...connected(report), ...crossed(file)], LOT_OWNERS),
  "work-start": (file) => written(startAudience(file)),
  "drain-pause": (file) => written(pauseAudience(file)),
  spill: (file) => [
    ...atEvery(file, file.properties.map(aboutProperty), EVERYBODY),
    ...publicBodies(file),
  ],
  "share-demand": (file, report) => atEvery(file, demandable(file, report), OWNERS),
  "authority-response": (file) => publicBodies(file),
  "close-out": (file) => atEvery(file, withShareId(file), LOT_OWNERS),
  "drains-back": (file) => written(backAudience(file)),
  meeting: (file) => atEvery(file, file.properties.map(aboutProperty), LOT_OWNERS),
  "landlord-entry": (file) => written(tenants(file)),
  "street-parking": (file) => written(startAudience(file)),
  "change-order": (file) => atEvery(file, shareHolders(file), OWNERS),
  "invoice-cover": (file) =>
    atEvery(
      file,
      shareHolders(file).filter(({ propertyId }) => (openAt(file, propertyId) ?? 0) > 0),
      OWNERS,
    ),
};

/**
 * Who gets a kind of letter, each party once for each property it is about: a finding goes to every
 * owner and to owners of crossed lots; an inquiry to owners and occupants of the addresses that an
 * undocumented tie-in may lead to; a proposed split to owners, never to tenants; a demand only where
 * the tie-in is on record, shown by tests (level 5 or more) or accepted by its owner.
 */
export function recipientsOf(file: LineFile, report: Report, kind: LetterKind): Recipient[] {
  return FINDERS[kind](file, report);
}

function aboutProperty(property: { readonly id: string }): About {
  return { propertyId: property.id, tieInId: null, splitId: null };
}

/**
 * The parties with one of these roles at each stop. Where a property has none of them, the parties
 * with one of the `instead` roles.
 */
function atEvery(
  file: LineFile,
  stops: readonly About[],
  roles: readonly PartyRole[],
  instead: readonly PartyRole[] = [],
): Recipient[] {
  const recipients = stops.flatMap((about) => {
    const first = withRoles(file, about, roles);
    return first.length > 0 ? first : withRoles(file, about, instead);
  });
  return once(recipients);
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

function isOpenQuestion(finding: TieInFinding): boolean {
  return (
    finding.standing === "undocumented" && !bearsDemand(finding.level, finding.tieIn.ownerAccepted)
  );
}

function candidateStops(file: LineFile, report: Report): About[] {
  return report.tieIns.filter(isOpenQuestion).flatMap((finding) =>
    candidatesFor(file, report, finding)
      .filter((candidate) => candidate.weight > 0)
      .map(({ propertyId }) => ({ propertyId, tieInId: finding.tieIn.id, splitId: null })),
  );
}

/**
 * The addresses of the test days still to come, each once: those that are visited and those that are
 * asked to keep water off. While no day is planned, every candidate.
 */
function visitStops(file: LineFile, report: Report): About[] {
  const planned = file.properties.filter(
    ({ id }) => visitDays(file, report, { propertyId: id, unitId: null }).length > 0,
  );
  return planned.length === 0 ? candidateStops(file, report) : planned.map(aboutProperty);
}

function inquiries(file: LineFile, report: Report): Recipient[] {
  return atEvery(file, candidateStops(file, report), [...LOT_OWNERS, ...OCCUPANTS, "manager"]);
}

/** Who was told not to use drains is told that they may again: by letter, or as they would be now. */
function backAudience(file: LineFile): Addressee[] {
  const told = file.notices.flatMap(({ kind, state, partyId, propertyId }) =>
    kind === "drain-pause" && state === "sent" && propertyId !== null
      ? [{ partyId, propertyId }]
      : [],
  );
  const all = [...told, ...pauseAudience(file)];
  return all.filter(
    (one, at) =>
      all.findIndex(
        ({ partyId, propertyId }) => partyId === one.partyId && propertyId === one.propertyId,
      ) === at,
  );
}

function tenants(file: LineFile): Addressee[] {
  return file.properties.flatMap(({ id }) => tenantsAt(file, id));
}

function shareHolders(file: LineFile): About[] {
  const split = latestSplit(file);
  if (split === null) return [];
  return split.shares.flatMap(({ propertyId }) =>
    propertyId === null ? [] : [{ propertyId, tieInId: null, splitId: split.id }],
  );
}

function withShareId(file: LineFile): About[] {
  const split = latestSplit(file);
  return file.properties.map(({ id }) => ({
    propertyId: id,
    tieInId: null,
    splitId: split?.id ?? null,
  }));
}

function demandable(file: LineFile, report: Report): About[] {
  const owing =
    latestSplit(file)?.shares.filter(
      ({ propertyId, amount }) =>
        propertyId !== null && (openAt(file, propertyId) ?? amount - heldAt(file, propertyId)) > 0,
    ) ?? [];
  const holders = shareHolders(file).filter(({ propertyId }) =>
    owing.some((share) => share.propertyId === propertyId),
  );
  return holders.filter(({ propertyId }) =>
    report.tieIns.some(
      (finding) => finding.propertyId === propertyId && mayBeDemanded(finding, report),
    ),
  );
}

function connected(report: Report): About[] {
  return report.tieIns.flatMap(({ propertyId, live }) =>
    propertyId !== null && live ? [{ propertyId, tieInId: null, splitId: null }] : [],
  );
}

function crossed(file: LineFile): About[] {
  return file.crossings.map(({ propertyId }) => ({ propertyId, tieInId: null, splitId: null }));
}

/** Lots with an area entered, and lots over or on whose branch something is done. */
function lotsToEnter(file: LineFile, { tieIns }: Report): About[] {
  const asked = new Set(file.digAreas.map(({ propertyId }) => propertyId));
  return file.properties
    .filter(({ id }) => asked.has(id) || workOnLot(file, tieIns, id).entered.length > 0)
    .map(aboutProperty);
}

/** Those whom a clock waits for. */
function written(audience: readonly Addressee[]): Recipient[] {
  return audience.map(({ partyId, propertyId }) => ({
    partyId,
    propertyId,
    tieInId: null,
    splitId: null,
  }));
}

function publicBodies(file: LineFile): Recipient[] {
  return file.parties
    .filter((party) => party.kind === "public-body")
    .map((party) => ({
      partyId: party.id,
      propertyId: null,
      tieInId: null,
      splitId: null,
    }));
}
