import type { LineFile } from "../facts/line-file.ts";
import type { Property } from "../facts/party.ts";
import type { TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";

/**
 * Who takes part: a property with at least one live tie-in, or one live tie-in whose owner is
 * unknown.
 */
export interface Sharer {
  /** The property's id, or the tie-in's where the owner is unknown. */
  readonly key: string;
  readonly propertyId: string | null;
  /** Set for an unknown owner only. */
  readonly tieInId: string | null;
  readonly label: string;
  /** Live tie-ins of this sharer. */
  readonly tieIns: readonly string[];
  /** Where its flow enters the trunk, rising, each once. */
  readonly stations: readonly Cft[];
  /** The farthest upstream of them; null while one of its tie-ins has no station. */
  readonly top: Cft | null;
  /** Labels of its tie-ins that have no station on the trunk yet. */
  readonly unplaced: readonly string[];
  /** A property without unit rows counts as one; so does an unknown owner. */
  readonly units: number;
  readonly unitsAssumed: boolean;
  readonly weight: number | null;
}

type SharersFile = Pick<LineFile, "properties" | "units">;

/**
 * Everyone who takes part, from the main upstream; those without a station last.
 *
 * A tie-in whose owner is unknown and behind which other live tie-ins join is a shared branch: it
 * carries their flow and is not counted as one more owner.
 */
export function sharersOf(file: SharersFile, tieIns: readonly TieInFinding[]): Sharer[] {
  const live = tieIns.filter((finding) => finding.live);
  const parents = ancestorsOfLive(live, tieIns);
  const places = rootStations(tieIns);
  const known = new Map<string, TieInFinding[]>();
  const sharers: Sharer[] = [];
  for (const finding of live) {
    if (finding.propertyId === null) {
      if (!parents.has(finding.tieIn.id)) sharers.push(unknownSharer(finding, places));
      continue;
    }
    const own = known.get(finding.propertyId);
    if (own === undefined) known.set(finding.propertyId, [finding]);
    else own.push(finding);
  }
  const units = countUnits(file);
  const properties = new Map(file.properties.map((property) => [property.id, property]));
  for (const [propertyId, own] of known) {
    const property = properties.get(propertyId) ?? null;
    const counted = units.get(propertyId) ?? 0;
    sharers.push({
      key: propertyId,
      propertyId,
      tieInId: null,
      label: property === null ? propertyId : propertyLabel(property),
      ...placesOf(own, places),
      units: Math.max(counted, 1),
      unitsAssumed: counted === 0,
      weight: property?.weight ?? null,
    });
  }
  return sharers.sort(fromTheMain);
}

/** Where each tie-in's flow enters the trunk: its own station, or that of the branch it joins. */
function rootStations(tieIns: readonly TieInFinding[]): ReadonlyMap<string, Cft | null> {
  const findings = new Map(tieIns.map((finding) => [finding.tieIn.id, finding]));
  return new Map(tieIns.map(({ tieIn }) => [tieIn.id, rootStation(tieIn.id, findings)]));
}

function rootStation(id: string, findings: ReadonlyMap<string, TieInFinding>): Cft | null {
  const path = pathToTrunk(id, findings);
  const root = path.at(-1);
  return root === undefined || root.tieIn.parentId !== null ? null : root.station;
}

/**
 * The tie-in and all whose branches its flow passes, down to the trunk. Where a parent is missing
 * or goes round in a circle, the path ends early, at a tie-in that still names a parent.
 */
export function pathToTrunk(
  id: string,
  findings: ReadonlyMap<string, TieInFinding>,
): TieInFinding[] {
  const path: TieInFinding[] = [];
  const seen = new Set<string>();
  let next: string | null = id;
  while (next !== null && !seen.has(next)) {
    seen.add(next);
    const finding = findings.get(next);
    if (finding === undefined) break;
    path.push(finding);
    next = finding.tieIn.parentId;
  }
  return path;
}

/** Short name of a property for sums and sentences: its street address, with the unit. */
export function propertyLabel(property: Property): string {
  const { street, unit } = property.address;
  const words = [street.trim(), unit.trim()].filter((word) => word !== "").join(", ");
  return words || property.parcel.trim() || property.id;
}

/** What stands for a tie-in whose owner is unknown. */
export function unknownLabel(label: string): string {
  return `${label} (owner unknown)`;
}

function ancestorsOfLive(
  live: readonly TieInFinding[],
  tieIns: readonly TieInFinding[],
): ReadonlySet<string> {
  const findings = new Map(tieIns.map((finding) => [finding.tieIn.id, finding]));
  return new Set(
    live.flatMap(({ tieIn }) =>
      pathToTrunk(tieIn.id, findings)
        .slice(1)
        .map((finding) => finding.tieIn.id),
    ),
  );
}

function unknownSharer(finding: TieInFinding, places: ReadonlyMap<string, Cft | null>): Sharer {
  return {
    key: finding.tieIn.id,
    propertyId: null,
    tieInId: finding.tieIn.id,
    label: unknownLabel(finding.tieIn.label),
    ...placesOf([finding], places),
    units: 1,
    unitsAssumed: true,
    weight: null,
  };
}

function placesOf(own: readonly TieInFinding[], places: ReadonlyMap<string, Cft | null>) {
  const placed = own.flatMap(({ tieIn }) => places.get(tieIn.id) ?? []);
  const stations = [...new Set(placed)].sort((a, b) => a - b);
  const unplaced = own
    .filter(({ tieIn }) => (places.get(tieIn.id) ?? null) === null)
    .map(({ tieIn }) => tieIn.label);
  return {
    tieIns: own.map(({ tieIn }) => tieIn.id),
    stations,
    top: unplaced.length > 0 ? null : (stations.at(-1) ?? null),
    unplaced,
  };
}

function countUnits(file: Pick<LineFile, "units">): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { propertyId } of file.units) {
    counts.set(propertyId, (counts.get(propertyId) ?? 0) + 1);
  }
  return counts;
}

function fromTheMain(a: Sharer, b: Sharer): number {
  const [first, second] = [a.top ?? Number.MAX_SAFE_INTEGER, b.top ?? Number.MAX_SAFE_INTEGER];
  if (first !== second) return first - second;
  return compareKeys(a.key, b.key);
}

/** Plain order of ids, the same on every machine. */
export function compareKeys(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
