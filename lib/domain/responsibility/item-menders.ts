import type { ScopeItem } from "../facts/scope.ts";
import type { Holder, ReachFinding } from "../findings/reach-finding.ts";
import type { Cft } from "../length/station.ts";
import { placementOf } from "../sharing/placing.ts";

/** Who does a piece of work, over a stretch that is all alike. */
export interface ItemMender {
  readonly from: Cft;
  readonly to: Cft;
  readonly mender: Holder;
}

/**
 * Who does an item's kind of work along the pipe that it lies on, from the main upstream. Empty for
 * branches, which are their owners’, for general work, and where no reach is known.
 */
export function itemMenders(item: ScopeItem, reaches: readonly ReachFinding[]): ItemMender[] {
  const placement = placementOf(item, { tieIns: new Map(), behind: new Map() });
  if (placement.kind !== "trunk") return [];
  const stretches: ItemMender[] = [];
  for (const [index, reach] of reaches.entries()) {
    const from = Math.max(reach.from, placement.from);
    const to = Math.min(reach.to, placement.to);
    if (!touches({ from, to }, placement, { reach, lowest: index === 0 })) continue;
    const mender = reach.menders[item.work];
    const last = stretches.at(-1);
    if (last !== undefined && last.mender === mender && last.to === from)
      stretches[stretches.length - 1] = { ...last, to };
    else stretches.push({ from, to, mender });
  }
  return stretches;
}

interface Span {
  readonly from: Cft;
  readonly to: Cft;
}

/** A point lies in the reach below it, as in its cost. */
function touches(
  overlap: Span,
  item: Span,
  { reach, lowest }: { readonly reach: Span; readonly lowest: boolean },
): boolean {
  if (item.from !== item.to) return overlap.from < overlap.to;
  return (item.from > reach.from && item.from <= reach.to) || (lowest && item.from === reach.from);
}
