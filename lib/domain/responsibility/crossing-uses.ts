import type { Crossing } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ReachFinding } from "../findings/reach-finding.ts";

/** How the owner of a crossed lot uses the pipe: not at all, only elsewhere, or where it is crossed. */
export type CrossingUse = "none" | "elsewhere" | "here";

/**
 * Each crossed lot with how its owner uses the pipe. Who does not use it is not a payer by reason
 * of the crossing alone (Donner v. Blue, 187 Wn. App. 51 (2015): the crossed lot was not charged).
 */
export function crossingUses(
  file: Pick<LineFile, "crossings">,
  reaches: readonly ReachFinding[],
): { readonly crossing: Crossing; readonly uses: CrossingUse }[] {
  return file.crossings.map((crossing) => ({ crossing, uses: useOf(crossing, reaches) }));
}

function useOf({ propertyId, from, to }: Crossing, reaches: readonly ReachFinding[]): CrossingUse {
  const served = reaches.filter(({ servedBy }) => servedBy.includes(propertyId));
  if (served.length === 0) return "none";
  return served.some((reach) => reach.from < to && reach.to > from) ? "here" : "elsewhere";
}
