import { roundShares } from "../money/apportion.ts";
import type { Cents } from "../money/cents.ts";
import { lcm } from "../money/ratio.ts";
import { type Division, divide } from "./divide.ts";
import type { Ground } from "./ground.ts";
import { tieOrderOf } from "./odd-cents.ts";
import { COUNTS_UNKNOWN } from "./rule-words.ts";
import type { SplitChoice, UnknownShares } from "./split.ts";

/**
 * Of each amount, what is carried for owners who are not known: what the person pays above what it
 * would pay if they paid their own shares. In whole cents by the same rounding; never more than the
 * amount itself. All zero where nobody is carried, or the rule gives an unknown owner no share.
 */
export function recoverableOf(
  division: Division,
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
  const without = divide(apart, { ...choice, unknownShares: "held-apart" });
  if (!without.ok) return none;
  const own = without.value.tally;
  const { tally } = division;
  const denominator = lcm(tally.denominator, own.denominator);
  const carried = ground.people.map((person, index) => {
    const place = apart.indexOf.get(person.key) ?? -1;
    const pays = (tally.numerators[index] ?? 0n) * (denominator / tally.denominator);
    const owes = (own.numerators[place] ?? 0n) * (denominator / own.denominator);
    return pays > owes ? pays - owes : 0n;
  });
  const rounded = roundShares(carried, denominator, tieOrderOf(ground));
  return rounded.map((cents, index) => Math.min(cents, Math.max(amounts[index] ?? 0, 0)));
}
