import type { StandAlone } from "../findings/outcome.ts";
import { toCents } from "../money/apportion.ts";
import { formatCents } from "../money/format-cents.ts";
import { roundDiv } from "../money/ratio.ts";
import { sayList } from "../say/say-list.ts";
import type { Ground, PricedItem } from "../sharing/ground.ts";
import { placementOf } from "../sharing/placing.ts";
import { type CostTree, costTree } from "./cost-tree.ts";
import type { Division } from "./divide.ts";
import { worstGroup } from "./worst-group.ts";

const LEFT_OUT = " General work and items with their own payer are left out on both sides.";

/** The pipe and the work on it that the test looks at; null where something has no place yet. */
export function standAloneTree(ground: Ground): CostTree | null {
  return costTree(
    ground,
    ground.items
      .filter(isTested)
      .map((priced) => ({ ...priced, placement: placementOf(priced.item, ground) })),
  );
}

function isTested({ item }: PricedItem): boolean {
  return item.place !== "general" && item.payerId === null;
}

/**
 * The stand-alone test (no group subsidises another: the core of the cost game): does any group of
 * neighbors pay more for the placed work than mending only the pipe that it uses would cost?
 * Exact over all groups, on amounts before rounding. Null where a tie-in or an item has no place.
 */
export function standAloneTest(
  ground: Ground,
  tree: CostTree | null,
  division: Division,
): StandAlone | null {
  const note = ground.items.every(isTested) ? "" : LEFT_OUT;
  const worst = tree === null ? null : worstGroup(tree, division.ruled);
  if (worst === null) return null;
  const excess = toCents(roundDiv(worst.excess, worst.denominator));
  if (excess === 0) {
    return {
      passes: true,
      group: [],
      excess: 0,
      sentence: `No group of neighbors pays more than it would cost to repair only the pipe they use.${note}`,
    };
  }
  const group = worst.members.flatMap((index) => ground.people[index] ?? []);
  const names = sayList(group.map((person) => person.label));
  const [pays, uses] = group.length === 1 ? ["pays", "it uses"] : ["together pay", "they use"];
  return {
    passes: false,
    group: group.map((person) => person.key),
    excess,
    sentence: `${names} ${pays} ${formatCents(excess)} more than it would cost to repair only the pipe ${uses}.${note}`,
  };
}
