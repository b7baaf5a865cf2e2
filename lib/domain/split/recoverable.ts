import type { SplitChoice, UnknownShares } from "../facts/split.ts";
import { roundShares } from "../money/apportion.ts";
import type { Cents } from "../money/cents.ts";
import type { Ground } from "../sharing/ground.ts";
import { divide } from "./divide.ts";
import { tieOrderOf } from "./odd-cents.ts";
import { COUNTS_UNKNOWN } from "./rule-words.ts";
import type { Tally } from "./tally.ts";

/**
 * Of each amount, what is carried for owners who are not known: the amount less what the person
 * would pay if they paid their own shares, both in whole cents. Together that is the unknown owners'
 * own share to the cent, and what is left of each amount is that person's own share to the cent:
 * where rounding makes an amount a cent less than the person's own share, somebody else's is left a
 * cent above, the one whose carried cents were rounded up most. Never below zero and never more than
 * the amount. All zero where nobody is carried, or the rule gives an unknown owner no share.
 */
export function recoverableOf(
  { amounts, tally }: { readonly amounts: readonly Cents[]; readonly tally: Tally },
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
  const own = division.value.tally;
  const ownAmounts = roundShares(own.numerators, own.denominator, tieOrderOf(apart));
  const carried = ground.people.map((person, index): Carried => {
    const at = apart.indexOf.get(person.key) ?? -1;
    const amount = amounts[index] ?? 0;
    const whole = amount - (ownAmounts[at] ?? 0);
    const exact =
      (tally.numerators[index] ?? 0n) * own.denominator -
      (own.numerators[at] ?? 0n) * tally.denominator;
    const kept = Math.min(Math.max(whole, 0), Math.max(amount, 0));
    return { index, whole, kept, exact };
  });
  return settled(carried, {
    cent: tally.denominator * own.denominator,
    tieOrder: tieOrderOf(ground),
  });
}

interface Carried {
  readonly index: number;
  /** Amount less own share, in whole cents. */
  readonly whole: Cents;
  readonly kept: Cents;
  /** The same exactly, over one common denominator. */
  readonly exact: bigint;
}

/** Takes back a cent for each that rounding alone put below zero, where it was rounded up most. */
function settled(
  carried: readonly Carried[],
  { cent, tieOrder }: { readonly cent: bigint; readonly tieOrder: readonly number[] },
): Cents[] {
  const short = carried.filter(({ whole, exact }) => whole < 0 && exact >= 0n).length;
  const roundedUp = ({ kept, exact }: Carried) => BigInt(kept) * cent - exact;
  const givers = carried
    .filter(({ kept }) => kept > 0)
    .sort((a, b) => {
      const more = roundedUp(b) - roundedUp(a);
      if (more !== 0n) return more > 0n ? 1 : -1;
      return (tieOrder[a.index] ?? a.index) - (tieOrder[b.index] ?? b.index);
    })
    .slice(0, short);
  const taken = new Set(givers.map(({ index }) => index));
  return carried.map(({ index, kept }) => (taken.has(index) ? kept - 1 : kept));
}
