import type { ScopeItem } from "../facts/scope.ts";
import type { Cft } from "../length/station.ts";
import { roundShares } from "../money/apportion.ts";
import type { Cents } from "../money/cents.ts";
import { lcm, ratio } from "../money/ratio.ts";
import { itemAmount } from "../sharing/item-amount.ts";
import { placementOf } from "../sharing/placing.ts";

/**
 * What the work placed on each reach costs, by length, in whole cents by the largest remainder. A
 * point belongs to the reach below it. Branches, general work and what lies beyond the reaches are
 * left out, and so is what does not count on a reach.
 */
export function reachCosts(
  scope: readonly ScopeItem[],
  reaches: readonly { readonly from: Cft; readonly to: Cft }[],
  counts: (item: ScopeItem, reach: number) => boolean = () => true,
): Cents[] {
  const byDenominator = reaches.map(() => new Map<bigint, bigint>());
  for (const item of scope) {
    const placement = placementOf(item, { tieIns: new Map(), behind: new Map() });
    if (placement.kind !== "trunk") continue;
    const { from, to } = placement;
    const perPart = ratio(BigInt(itemAmount(item)), BigInt(Math.max(to - from, 1)));
    for (const [index, reach] of reaches.entries()) {
      const part = overlap({ from, to }, reach, index === 0);
      if (part === 0 || !counts(item, index)) continue;
      const costs = byDenominator[index];
      costs?.set(perPart.d, (costs.get(perPart.d) ?? 0n) + perPart.n * BigInt(part));
    }
  }
  const denominator = byDenominator.flatMap((costs) => [...costs.keys()]).reduce(lcm, 1n);
  const exact = byDenominator.map((costs) =>
    [...costs].reduce((sum, [d, n]) => sum + n * (denominator / d), 0n),
  );
  return roundShares(
    exact,
    denominator,
    exact.map((_, index) => -index),
  );
}

function overlap(
  item: { readonly from: Cft; readonly to: Cft },
  reach: { readonly from: Cft; readonly to: Cft },
  lowest: boolean,
): number {
  if (item.from === item.to) {
    const inside = item.from > reach.from && item.from <= reach.to;
    return inside || (lowest && item.from === reach.from) ? 1 : 0;
  }
  return Math.max(0, Math.min(item.to, reach.to) - Math.max(item.from, reach.from));
}
