import { lcm } from "../money/ratio.ts";
import type { CostTree } from "./cost-tree.ts";
import type { Tally } from "./tally.ts";

/** The group that pays most above what mending only its own pipe would cost. */
export interface WorstGroup {
  /** Indices of its people; empty where no group pays more. */
  readonly members: readonly number[];
  /** What it pays too much, over `denominator`; 0 where no group does. */
  readonly excess: bigint;
  readonly denominator: bigint;
}

/** More people than this who each come through several shared branches are not tried out. */
const MOST_TRIED = 10;

interface Player {
  readonly index: number;
  /** What it pays, less the pipe that it alone uses. */
  readonly gain: bigint;
  /** The shared pieces at which it enters; none: at the main itself. */
  readonly entries: readonly number[];
}

interface Priced {
  readonly parents: readonly (number | null)[];
  readonly costs: readonly bigint[];
}

/**
 * Looks over all groups at once. The pipe that a group uses is a piece of the tree that hangs
 * together from the main, so the worst group is found by asking at each piece, from the ends
 * toward the main, whether those above it pay more than it costs to reach them: one pass. A person
 * who comes through several shared branches ties those together; such people are tried in and out.
 * Null where too many of them would have to be tried.
 */
export function worstGroup(tree: CostTree, tally: Tally): WorstGroup | null {
  const denominator = lcm(tree.denominator, tally.denominator);
  const priced: Priced = {
    parents: tree.nodes.map(({ parent }) => parent),
    costs: tree.nodes.map(({ cost }) => cost * (denominator / tree.denominator)),
  };
  const users = usersOfEach(tree, priced);
  const players = tally.numerators.flatMap((numerator, index) => {
    const pays = numerator * (denominator / tally.denominator);
    const entries = tree.entries.get(index) ?? [];
    return entries.length === 0 && pays === 0n
      ? []
      : [foldOwn({ index, pays, entries }, users, priced)];
  });
  const several = players.filter((player) => player.entries.length > 1);
  if (several.length > MOST_TRIED) return null;
  const single = players.filter((player) => player.entries.length <= 1);
  let worst: WorstGroup = { members: [], excess: 0n, denominator };
  for (let choice = 0; choice < 2 ** several.length; choice += 1) {
    const inside = several.filter((_, place) => ((choice >> place) & 1) === 1);
    const found = best(single, inside, priced);
    if (found.excess > worst.excess) worst = { ...found, denominator };
  }
  return worst;
}

/** Who uses each piece: one person's index, or `several`. */
function usersOfEach(tree: CostTree, { parents }: Priced): User[] {
  const users: User[] = parents.map(() => null);
  for (const [index, entries] of tree.entries) {
    for (const entry of entries) markDown(entry, index, { users, parents });
  }
  return users;
}

type User = number | "several" | null;

/** Notes one more user on a piece and all below it. */
function markDown(
  entry: number,
  index: number,
  { users, parents }: { readonly users: User[]; readonly parents: Priced["parents"] },
): void {
  let node: number | null = entry;
  while (node !== null && users[node] !== "several") {
    const known: User = users[node] ?? null;
    users[node] = known === null || known === index ? index : "several";
    node = parents[node] ?? null;
  }
}

/** Takes the pipe that a person alone uses off what it pays, and moves it to the shared pipe. */
function foldOwn(
  { index, pays, entries }: { index: number; pays: bigint; entries: readonly number[] },
  users: readonly User[],
  { parents, costs }: Priced,
): Player {
  const own = new Set<number>();
  const shared = new Set<number>();
  for (const entry of entries) {
    let node: number | null = entry;
    while (node !== null && users[node] === index) {
      own.add(node);
      node = parents[node] ?? null;
    }
    if (node !== null) shared.add(node);
  }
  for (const node of shared.size > 1 ? [...shared] : []) {
    for (let below = parents[node] ?? null; below !== null; below = parents[below] ?? null) {
      shared.delete(below);
    }
  }
  const gain = [...own].reduce((left, node) => left - (costs[node] ?? 0n), pays);
  return { index, gain, entries: [...shared] };
}

/** The best group with all of `inside` in it; people in `several` who are not inside stay out. */
function best(
  single: readonly Player[],
  inside: readonly Player[],
  { parents, costs }: Priced,
): { readonly members: readonly number[]; readonly excess: bigint } {
  const values = costs.map((cost) => -cost);
  const forced = costs.map(() => false);
  for (const entry of inside.flatMap((player) => player.entries)) forced[entry] = true;
  const willing = single.filter((player) => player.gain > 0n);
  let excess = inside.reduce((sum, player) => sum + player.gain, 0n);
  for (const { gain, entries } of willing) {
    const [entry] = entries;
    if (entry === undefined) excess += gain;
    else values[entry] = (values[entry] ?? 0n) + gain;
  }
  excess += passDown({ parents, values, forced });
  const open = opened({ parents, values, forced });
  const members = [
    ...inside,
    ...willing.filter(({ entries }) => entries.every((entry) => open[entry] === true)),
  ].map((player) => player.index);
  return { members: members.sort((a, b) => a - b), excess };
}

/**
 * From the ends toward the main, adds to each piece what the pieces above it are worth, where that
 * is above zero or a person inside needs them. Returns what arrives at the main.
 */
function passDown({ parents, values, forced }: Reckoning): bigint {
  let arrived = 0n;
  for (let node = values.length - 1; node >= 0; node -= 1) {
    const value = values[node] ?? 0n;
    if (value <= 0n && !forced[node]) continue;
    const parent = parents[node] ?? null;
    if (parent === null) {
      arrived += value;
    } else {
      values[parent] = (values[parent] ?? 0n) + value;
      forced[parent] = forced[parent] === true || forced[node] === true;
    }
  }
  return arrived;
}

interface Reckoning {
  readonly parents: Priced["parents"];
  readonly values: bigint[];
  readonly forced: boolean[];
}

/** The pieces that the best group uses: worth opening themselves, and so is all below them. */
function opened({ parents, values, forced }: Reckoning): boolean[] {
  const open: boolean[] = [];
  for (const [node, value] of values.entries()) {
    const parent = parents[node] ?? null;
    const reached = parent === null || open[parent] === true;
    open.push(reached && (value > 0n || forced[node] === true));
  }
  return open;
}
