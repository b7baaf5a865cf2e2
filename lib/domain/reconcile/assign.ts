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

/** So many other choices are looked for in one knot; more would only vary them. */
const MOST_OTHERS = 6;

/**
 * Other whole choices that cost less than `clear` more than the cheapest, the cheapest first: in one
 * knot at a time, without one and then without two of the couples chosen there.
 */
export function otherChoices(couples: readonly Couple[], terms: AssignTerms): Chosen[][] {
  const knots = knotsOf(couples).map((knot) => ({ knot, best: solve(knot, terms.alone) }));
  const others = knots.flatMap(({ knot, best }) => {
    if (lefts(knot).size > SMALL_KNOT) return [];
    const rest = knots.filter((each) => each.knot !== knot).flatMap((each) => each.best);
    return othersIn(knot, best, terms).map((other) => ({
      more: other.more,
      choice: [...rest, ...other.choice].sort((a, b) => a.left - b.left),
    }));
  });
  return others
    .sort((a, b) => a.more - b.more)
    .map(({ choice }) => choice.map((couple) => ({ ...couple, nearTie: true })));
}

function othersIn(
  knot: readonly Couple[],
  best: readonly Couple[],
  terms: AssignTerms,
): { choice: readonly Couple[]; more: number }[] {
  const total = costOf(best, knot, terms.alone);
  const found = new Map<string, { choice: readonly Couple[]; more: number }>();
  const without = (from: readonly Couple[], chosen: readonly Couple[], deeper: boolean) => {
    for (const couple of chosen) {
      const left = from.filter((each) => !isSame(each, couple));
      const choice = solve(left, terms.alone);
      const more = costOf(choice, knot, terms.alone) - total;
      const key = choice.map((each) => `${each.left}:${each.right}`).join(" ");
      if (more >= terms.clear || found.has(key) || found.size >= MOST_OTHERS) continue;
      found.set(key, { choice, more });
      if (deeper) without(left, choice, false);
    }
  };
  without(knot, best, true);
  return [...found.values()];
}

function isSame(a: Couple, b: Couple): boolean {
  return a.left === b.left && a.right === b.right;
}

function lefts(knot: readonly Couple[]): Set<number> {
  return new Set(knot.map((each) => each.left));
}

function isNearTie(
  couple: Couple,
  { knot, total, terms }: { knot: readonly Couple[]; total: number; terms: AssignTerms },
): boolean {
  const others = knot.filter((each) => !isSame(each, couple));
  if (lefts(knot).size > SMALL_KNOT)
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
  const lonely = lefts(knot).size - chosen.length;
  return chosen.reduce((sum, couple) => sum + couple.cost, 0) + lonely * alone;
}

function solve(couples: readonly Couple[], alone: number): Couple[] {
  const [only, second] = couples;
  if (only === undefined) return [];
  if (second === undefined && only.cost < alone - 1 / GRAIN) return [only];
  const rows = [...lefts(couples)].sort((a, b) => a - b);
  const rights = [...new Set(couples.map((couple) => couple.right))].sort((a, b) => a - b);
  const byPlace = new Map(couples.map((couple) => [`${couple.left}:${couple.right}`, couple]));
  const lonely = Math.round(alone * GRAIN);
  const forbidden = lonely * (rows.length + 1) * 2;
  const costs = rows.map((left) => [
    ...rights.map((right) => {
      const couple = byPlace.get(`${left}:${right}`);
      return couple ? Math.round(couple.cost * GRAIN) : forbidden;
    }),
    ...rows.map(() => lonely),
  ]);
  return munkres(costs).flatMap(([row, column]) => {
    const left = rows[row];
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
