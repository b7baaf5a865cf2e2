import type { SharedRule } from "../facts/authority.ts";
import { sayList } from "../say/say-list.ts";
import type { Sharer } from "../sharing/sharers.ts";

/** Which owners are responsible for one reach, and why. */
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
      ? none("No active tie-in upstream, so no flow passes here.")
      : some(passing, () => "Among owners, everyone whose flow passes is responsible."),
  "next-downstream-tie-in": ({ next }) =>
    next.length === 0
      ? none("No active tie-in upstream to be responsible.")
      : some(
          next,
          (names) =>
            `Each owner is responsible from their own tie-in down to the next one; the lowest, to the main. Here that is ${names}.`,
        ),
  "all-connected-equally": ({ all }) =>
    all.length === 0
      ? none("No active tie-in yet.")
      : some(all, (names) => `All connected owners are equally responsible: ${names}.`),
  "parties-decide": () =>
    none("The authority leaves it to the owners to agree among themselves; nothing is agreed yet."),
  unclear: () => none("The rule does not say which owners are responsible for shared pipe."),
};

/** Who among the owners is responsible for a reach of the owners' part. Unknown owners are named, not listed. */
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
