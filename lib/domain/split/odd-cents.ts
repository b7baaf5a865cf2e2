import { oddCentReceivers } from "../money/apportion.ts";
import { sayList } from "../say/say-list.ts";
import type { Ground } from "../sharing/ground.ts";
import { compareKeys } from "../sharing/sharers.ts";
import type { Tally } from "./tally.ts";

/**
 * Who comes first when two shares lost the same by rounding down: the tie-in farthest upstream,
 * then the lower id; those without a station last. The person's index → its place in that order.
 */
export function tieOrderOf({ people }: Pick<Ground, "people">): number[] {
  const order = people
    .map((_, index) => index)
    .sort((a, b) => {
      const [first, second] = [people[a], people[b]];
      const higher = (second?.top ?? -1) - (first?.top ?? -1);
      return higher || compareKeys(first?.key ?? "", second?.key ?? "");
    });
  const places: number[] = [];
  for (const [place, index] of order.entries()) places[index] = place;
  return places;
}

/** How the odd cents went, in one or two sentences. */
export function oddCentsWords(ground: Ground, tally: Tally): string {
  const receivers = oddCentReceivers(tally.numerators, tally.denominator, tieOrderOf(ground));
  if (receivers.length === 0) return "Every share comes out in whole cents.";
  const names = sayList(receivers.flatMap((index) => ground.people[index]?.label ?? []));
  const cents = receivers.length === 1 ? "1 cent was" : `${receivers.length} cents were`;
  const went = receivers.length === 1 ? "It went" : "They went one each";
  return `Every share was rounded down to the cent and ${cents} left after rounding. ${went} to the shares that lost the most, and among equal ones to the tie-in farthest upstream: ${names}.`;
}
