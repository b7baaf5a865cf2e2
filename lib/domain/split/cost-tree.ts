import { firstAtOrAbove } from "../length/rising.ts";
import type { Cft } from "../length/station.ts";
import { lcm, ratio } from "../money/ratio.ts";
import type { Ground } from "../sharing/ground.ts";
import { type PlacedItem, piecesOf } from "../sharing/placing.ts";
import { pathToTrunk } from "../sharing/sharers.ts";

/** A piece of pipe with what mending it costs; its parent is the next piece toward the main. */
interface CostNode {
  /** Null: at the main. Parents come before their children. */
  readonly parent: number | null;
  /** Over the tree's denominator. */
  readonly cost: bigint;
}

/** The pipe as a tree rooted at the main, priced. */
export interface CostTree {
  readonly nodes: readonly CostNode[];
  readonly denominator: bigint;
  /** The pieces at which each person's flow enters, by the person's index; empty: at the main. */
  readonly entries: ReadonlyMap<number, readonly number[]>;
}

/**
 * The pipe that those who take part use, cut at every tie-in, with the placed work on it. Work
 * above the highest tie-in is nobody's use and is left out. Null where a tie-in or an item has no
 * place yet.
 */
export function costTree(ground: Ground, items: readonly PlacedItem[]): CostTree | null {
  const people = ground.connected.map((index) => ({ index, person: ground.people[index] }));
  if (people.some(({ person }) => (person?.top ?? null) === null)) return null;
  if (items.some(({ placement }) => placement.kind === "nowhere")) return null;
  const stations = people.flatMap(({ person }) => person?.stations ?? []);
  const cuts = [...new Set(stations)].sort((a, b) => a - b);
  const trunk = trunkCosts(items, cuts);
  const nodes: CostNode[] = trunk.costs.map((cost, place) => ({
    parent: place === 0 ? null : place - 1,
    cost,
  }));
  const branches = branchCosts(items);
  const nodeOf = new Map<string, number>();
  const entries = new Map<number, number[]>();
  for (const { index, person } of people) {
    const entered = (person?.tieIns ?? []).map((id) =>
      enter(id, { ground, cuts, nodes, nodeOf, branches, denominator: trunk.denominator }),
    );
    entries.set(index, entered);
  }
  return { nodes, denominator: trunk.denominator, entries };
}

/** The node of a tie-in's branch, made with those below it where they are not there yet. */
function enter(
  id: string,
  into: {
    readonly ground: Ground;
    readonly cuts: readonly Cft[];
    readonly nodes: CostNode[];
    readonly nodeOf: Map<string, number>;
    readonly branches: ReadonlyMap<string, bigint>;
    readonly denominator: bigint;
  },
): number {
  const path = pathToTrunk(id, into.ground.tieIns).reverse();
  let below = firstAtOrAbove(into.cuts, path[0]?.station ?? 0);
  for (const { tieIn } of path) {
    const known = into.nodeOf.get(tieIn.id);
    if (known === undefined) {
      const cost = (into.branches.get(tieIn.id) ?? 0n) * into.denominator;
      into.nodes.push({ parent: below, cost });
      below = into.nodes.length - 1;
      into.nodeOf.set(tieIn.id, below);
    } else {
      below = known;
    }
  }
  return below;
}

function branchCosts(items: readonly PlacedItem[]): ReadonlyMap<string, bigint> {
  const costs = new Map<string, bigint>();
  for (const { amount, placement } of items) {
    if (placement.kind !== "branch") continue;
    costs.set(placement.tieInId, (costs.get(placement.tieInId) ?? 0n) + BigInt(amount));
  }
  return costs;
}

/** What the work costs on each piece of the trunk, the piece below the first cut first. */
function trunkCosts(items: readonly PlacedItem[], cuts: readonly Cft[]) {
  const byDenominator = cuts.map(() => new Map<bigint, bigint>());
  for (const { amount, placement } of items) {
    if (placement.kind !== "trunk") continue;
    const length = placement.to - placement.from;
    const perPart = ratio(BigInt(amount), BigInt(Math.max(length, 1)));
    for (const piece of piecesOf(placement, cuts)) {
      const costs = byDenominator[firstAtOrAbove(cuts, piece.to)];
      const part = length === 0 ? 1n : BigInt(piece.to - piece.from);
      costs?.set(perPart.d, (costs.get(perPart.d) ?? 0n) + perPart.n * part);
    }
  }
  const denominator = byDenominator.flatMap((costs) => [...costs.keys()]).reduce(lcm, 1n);
  const costs = byDenominator.map((each) =>
    [...each].reduce((sum, [d, n]) => sum + n * (denominator / d), 0n),
  );
  return { costs, denominator };
}
