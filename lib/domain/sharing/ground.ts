import { type RankedAgreement, rankedAgreements } from "../agreement/agreement-standing.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { UnknownShares } from "../facts/split.ts";
import type { ReachFinding } from "../findings/reach-finding.ts";
import type { TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import type { Cents } from "../money/cents.ts";
import { faultsSeen } from "../run/faults.ts";
import { stationObservations } from "../run/observe.ts";
import { itemAmount } from "./item-amount.ts";
import { type Leaver, leaversOf } from "./leavers.ts";
import { scopeInForce } from "./scope-in-force.ts";
import { pathToTrunk, propertyLabel, type Sharer, sharersOf } from "./sharers.ts";

/** What the split is worked out from, besides the file. */
export interface Found {
  readonly tieIns: readonly TieInFinding[];
  readonly reaches: readonly ReachFinding[];
  /** Upper end of what is known of the trunk. */
  readonly extent: Cft;
}

export interface PricedItem {
  readonly item: ScopeItem;
  readonly amount: Cents;
}

/** Who is behind a tie-in: people by index, and whether somebody unknown whom others carry is. */
export interface Behind {
  readonly present: readonly number[];
  readonly absent: boolean;
}

/** The people and the priced work, ready for any rule. Made once for all rules of one file. */
export interface Ground {
  readonly file: LineFile;
  readonly unknownShares: UnknownShares;
  /** First those who take part, from the main upstream; then the file's other properties. */
  readonly people: readonly Sharer[];
  /** Indices of those who take part. */
  readonly connected: readonly number[];
  /** Unknown owners whose shares the others carry; empty where they are held apart. */
  readonly absent: readonly Sharer[];
  /** Who gets a line of their own under the option in force and pays only what names them. */
  readonly leavers: readonly Leaver[];
  readonly indexOf: ReadonlyMap<string, number>;
  readonly behind: ReadonlyMap<string, Behind>;
  readonly tieIns: ReadonlyMap<string, TieInFinding>;
  readonly reaches: readonly ReachFinding[];
  readonly items: readonly PricedItem[];
  readonly total: Cents;
  readonly agreements: readonly RankedAgreement[];
  /** Where the camera saw faults, rising, each place once. */
  readonly faults: readonly Cft[];
}

export function groundOf(file: LineFile, found: Found, unknownShares: UnknownShares): Ground {
  const all = sharersOf(file, found.tieIns);
  const leavers = leaversOf(file, all);
  const sharers = all.filter(({ key }) => !leavers.some((leaver) => leaver.key === key));
  const carried = unknownShares === "carried";
  const present = sharers.filter((sharer) => sharer.propertyId !== null || !carried);
  const absent = sharers.filter((sharer) => sharer.propertyId === null && carried);
  const people = [...present, ...outsiders(file, present)];
  const items = scopeInForce(file).map((item) => ({ item, amount: itemAmount(item) }));
  const tieIns = new Map(found.tieIns.map((finding) => [finding.tieIn.id, finding]));
  return {
    file,
    unknownShares,
    people,
    connected: present.map((_, index) => index),
    absent,
    leavers,
    indexOf: new Map(people.map((person, index) => [person.key, index])),
    behind: behindEach(tieIns, present, absent),
    tieIns,
    reaches: found.reaches,
    items,
    total: items.reduce((sum, { amount }) => sum + amount, 0),
    agreements: rankedAgreements(file),
    faults: faultStations(file),
  };
}

/**
 * Where the pipe has faults that have a station, rising, each place once: what two runs saw is one,
 * and a stretch counts from its lower end, since whoever joins along it flows through a part of it.
 */
export function faultStations(file: Pick<LineFile, "runs" | "anchors" | "observations">): Cft[] {
  const faults = faultsSeen(file, { stations: stationObservations(file) });
  return [...new Set(faults.flatMap(({ from }) => from ?? []))].sort((a, b) => a - b);
}

/** Properties without a live tie-in: they pay only where an agreement or a payer names them. */
function outsiders(file: LineFile, present: readonly Sharer[]): Sharer[] {
  const taken = new Set(present.map((sharer) => sharer.key));
  return file.properties
    .filter((property) => !taken.has(property.id))
    .map((property) => ({
      key: property.id,
      propertyId: property.id,
      tieInId: null,
      label: propertyLabel(property),
      tieIns: [],
      stations: [],
      top: null,
      unplaced: [],
      units: 0,
      unitsAssumed: false,
      weight: property.weight,
    }));
}

function behindEach(
  tieIns: ReadonlyMap<string, TieInFinding>,
  present: readonly Sharer[],
  absent: readonly Sharer[],
): ReadonlyMap<string, Behind> {
  const behind = new Map<string, { present: Set<number>; absent: boolean }>();
  const at = (id: string) => {
    const known = behind.get(id) ?? { present: new Set<number>(), absent: false };
    behind.set(id, known);
    return known;
  };
  for (const [index, sharer] of present.entries()) {
    for (const { tieIn } of sharer.tieIns.flatMap((id) => pathToTrunk(id, tieIns))) {
      at(tieIn.id).present.add(index);
    }
  }
  for (const sharer of absent) {
    for (const { tieIn } of sharer.tieIns.flatMap((id) => pathToTrunk(id, tieIns))) {
      at(tieIn.id).absent = true;
    }
  }
  return new Map(
    [...behind].map(([id, who]) => [id, { present: [...who.present], absent: who.absent }]),
  );
}
