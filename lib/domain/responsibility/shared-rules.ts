import type { SharedRule } from "../facts/authority.ts";
import { sayList } from "../say/say-list.ts";
import type { Sharer } from "../sharing/sharers.ts";

/** Which owners answer for one reach, and why. */
export interface Answerable {
  readonly propertyIds: readonly string[];
  readonly reason: string;
}

/** Who is on the line, seen from one reach. */
export interface Around {
  /** Everyone who takes part. */
  readonly all: readonly Sharer[];
  /** Those whose flow passes the reach. */
  readonly passing: readonly Sharer[];
  /** Of them, those at the first tie-in at or above its upper end. */
  readonly next: readonly Sharer[];
}

const SHARED: Record<SharedRule, (around: Around) => Answerable> = {
  "all-whose-flow-passes": ({ passing }) =>
    passing.length === 0
      ? none("No live tie-in joins above, so nobody’s flow passes here.")
      : some(passing, (names) => `Among the owners, those whose flow passes answer: ${names}.`),
  "next-downstream-tie-in": ({ next }) =>
    next.length === 0
      ? none("No live tie-in lies above to answer for it.")
      : some(
          next,
          (names) =>
            `Each owner answers from its own tie-in down to the next one; the lowest answers to the main. Here it is ${names}.`,
        ),
  "all-connected-equally": ({ all }) =>
    all.length === 0
      ? none("No live tie-in takes part yet.")
      : some(all, (names) => `All connected owners answer equally: ${names}.`),
  "parties-decide": () =>
    none("The authority leaves it to the owners to agree among themselves; nothing is agreed yet."),
  unclear: () => none("The rule does not say which owners answer for shared pipe."),
};

/** Who among the owners answers for a reach of the owners' part. Unknown owners are named, not listed. */
export function answerableUnder(rule: SharedRule, around: Around): Answerable {
  return SHARED[rule](around);
}

function none(reason: string): Answerable {
  return { propertyIds: [], reason };
}

function some(sharers: readonly Sharer[], say: (names: string) => string): Answerable {
  return {
    propertyIds: sharers.flatMap((sharer) => sharer.propertyId ?? []),
    reason: say(sayList(sharers.map((sharer) => sharer.label))),
  };
}
