import type { Cft } from "../length/station.ts";
import { liveAbove, soundTree, type TreeRow } from "./tree.ts";

/** A tie-in with what is computed about it, as far as served-by needs it. */
export interface ServingTieIn {
  readonly tieIn: { readonly id: string; readonly parentId: string | null };
  readonly station: Cft | null;
  readonly live: boolean;
  readonly propertyId: string | null;
}

interface ServedBy {
  /** In the order of their tie-ins up the line, each once. */
  readonly properties: readonly string[];
  /** Live tie-ins at or above the station whose owner is unknown. */
  readonly unknownTieIns: readonly string[];
  /** Live tie-ins that nobody can place: their flow may pass here. */
  readonly unplacedTieIns: readonly string[];
}

/**
 * Whose flow passes a station (hundredths of a foot from the main connection): everybody who
 * joins the trunk there or above. Tie-ins without a place in the tree count as unplaced.
 */
export function servedBy(tieIns: readonly ServingTieIn[], station: Cft): ServedBy {
  const tree = soundTree(tieIns.map(rowOf));
  const byId = new Map(tieIns.map((each) => [each.tieIn.id, each]));
  const passing = liveAbove(tree, station).flatMap((id) => byId.get(id) ?? []);
  const placed = (id: string) => (tree.nodes.get(id)?.joinsTrunkAt ?? null) !== null;
  return {
    properties: [...new Set(passing.flatMap((each) => each.propertyId ?? []))],
    unknownTieIns: passing.filter((each) => each.propertyId === null).map((each) => each.tieIn.id),
    unplacedTieIns: tieIns
      .filter((each) => each.live && !placed(each.tieIn.id))
      .map((each) => each.tieIn.id),
  };
}

function rowOf(each: ServingTieIn): TreeRow {
  const { id, parentId } = each.tieIn;
  return { id, parentId, station: each.station, live: each.live };
}
