import { roundShares } from "../money/apportion.ts";
import type { Cents } from "../money/cents.ts";
import { divide } from "./divide.ts";
import type { Ground } from "./ground.ts";
import { tieOrderOf } from "./odd-cents.ts";
import { COUNTS_UNKNOWN } from "./rule-words.ts";
import type { SplitChoice, UnknownShares } from "./split.ts";

/**
 * Of each amount, what is carried for owners who are not known: the amount less what the person
 * would pay if they paid their own shares, both in whole cents, so that what is left once it is
 * recovered is that person's own share to the cent. Never below zero and never more than the
 * amount. All zero where nobody is carried, or the rule gives an unknown owner no share.
 */
export function recoverableOf(
  amounts: readonly Cents[],
  given: {
    readonly ground: Ground;
    readonly choice: SplitChoice;
    readonly groundFor: (unknownShares: UnknownShares) => Ground;
  },
): Cents[] {
  const { ground, choice } = given;
  const none = ground.people.map(() => 0);
  if (ground.absent.length === 0 || !COUNTS_UNKNOWN.includes(choice.rule)) return none;
  const apart = given.groundFor("held-apart");
  const division = divide(apart, { ...choice, unknownShares: "held-apart" });
  if (!division.ok) return none;
  const { numerators, denominator } = division.value.tally;
  const own = roundShares(numerators, denominator, tieOrderOf(apart));
  return ground.people.map((person, index) => {
    const amount = amounts[index] ?? 0;
    const carried = amount - (own[apart.indexOf.get(person.key) ?? -1] ?? 0);
    return Math.min(Math.max(carried, 0), Math.max(amount, 0));
  });
}
