import munkres from "munkres";

/** One allowed couple of a left and a right thing, by their numbers, and what it costs. */
export interface Couple {
  readonly left: number;
  readonly right: number;
  readonly cost: number;
}

export interface Chosen extends Couple {
  /** Leaving this couple out costs so little more that the choice is no better than a guess. */
  readonly nearTie: boolean;
}

/** What leaving one left thing alone costs, and how much better a choice must be to stand clear. */
interface AssignTerms {
  readonly alone: number;
  readonly clear: number;
}

/** Beyond this many left things in one knot, near-ties are looked for couple by couple only. */
const SMALL_KNOT = 24;

/** Costs become whole numbers inside, so that sums are exact. */
const GRAIN = 1_000;

/**
 * The cheapest one-to-one choice among the allowed couples, each left thing that stays alone
 * costing `alone` (optimal assignment, Kuhn and Munkres). Knots of things that share no couple
 * with others are solved apart, which changes nothing but the time.
 */
export function assign(couples: readonly Couple[], terms: AssignTerms): Chosen[] {
  return knotsOf(couples)
    .flatMap((knot) => {
      const chosen = solve(knot, terms.alone);
      const total = costOf(chosen, knot, terms.alone);
      return chosen.map((couple) => ({
        ...couple,
        nearTie: isNearTie(couple, { knot, total, terms }),
      }));
    })
    .sort((a, b) => a.left - b.left);
}

function isNearTie(
  couple: Couple,
  { knot, total, terms }: { knot: readonly Couple[]; total: number; terms: AssignTerms },
): boolean {
  const others = knot.filter((each) => each.left !== couple.left || each.right !== couple.right);
  if (new Set(knot.map((each) => each.left)).size > SMALL_KNOT)
    return others.some(
      (each) =>
        (each.left === couple.left || each.right === couple.right) &&
        each.cost - couple.cost < terms.clear,
    );
  const next = solve(others, terms.alone);
  return costOf(next, knot, terms.alone) - total < terms.clear;
}

/** What a choice costs over all left things of the knot, the lonely ones included. */
function costOf(chosen: readonly Couple[], knot: readonly Couple[], alone: number): number {
  const lefts = new Set(knot.map((couple) => couple.left)).size;
  return chosen.reduce((sum, couple) => sum + couple.cost, 0) + (lefts - chosen.length) * alone;
}

function solve(couples: readonly Couple[], alone: number): Couple[] {
  const lefts = [...new Set(couples.map((couple) => couple.left))].sort((a, b) => a - b);
  const rights = [...new Set(couples.map((couple) => couple.right))].sort((a, b) => a - b);
  if (lefts.length === 0) return [];
  const byPlace = new Map(couples.map((couple) => [`${couple.left}:${couple.right}`, couple]));
  const lonely = Math.round(alone * GRAIN);
  const forbidden = lonely * (lefts.length + 1) * 2;
  const costs = lefts.map((left) => [
    ...rights.map((right) => {
      const couple = byPlace.get(`${left}:${right}`);
      return couple ? Math.round(couple.cost * GRAIN) : forbidden;
    }),
    ...lefts.map(() => lonely),
  ]);
  return munkres(costs).flatMap(([row, column]) => {
    const left = lefts[row];
    const right = rights[column];
    return left === undefined || right === undefined ? [] : (byPlace.get(`${left}:${right}`) ?? []);
  });
}

/** Couples grouped so that no left or right thing is in two groups. */
function knotsOf(couples: readonly Couple[]): Couple[][] {
  const knotOf = new Map<string, Couple[]>();
  for (const couple of couples) {
    const left = knotOf.get(`left ${couple.left}`);
    const right = knotOf.get(`right ${couple.right}`);
    const knot = left ?? right ?? [];
    knot.push(couple);
    if (left && right && left !== right) {
      left.push(...right);
      for (const moved of right) {
        knotOf.set(`left ${moved.left}`, left);
        knotOf.set(`right ${moved.right}`, left);
      }
    }
    knotOf.set(`left ${couple.left}`, knot);
    knotOf.set(`right ${couple.right}`, knot);
  }
  return [...new Set(knotOf.values())];
}
