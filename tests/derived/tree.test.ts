import { describe, expect, test } from "vitest";
import type { SplitRule } from "#lib/domain/facts/split.ts";
import { aScopeItem } from "#tests/support/file.ts";
import { aPricedLine, divideLine, exactOf } from "#tests/support/priced-line.ts";

/*
 * Trees: every segment is split equally among all who use it. No published table with numbers could be
 * opened, so the shares are our own sums: by hand, segment by segment, and again here as the average
 * over all orders in which the owners could come (the Shapley value).
 */

/** Owners by the place of the segment below each; null: that segment is the trunk's, from the main. */
interface Tree {
  readonly parents: readonly (number | null)[];
  readonly costs: readonly number[];
}

/**
 * The tree as a line: the segment next to the main is 10 ft of trunk, every other one a branch, in
 * dollars.
 */
function shares({ parents, costs }: Tree, rule: SplitRule): number[] {
  const tieIns = parents.map((parent, index) => ({
    id: `${index}`,
    station: parent === null ? 1_000 : 0,
    parentId: parent === null ? null : `${parent}`,
  }));
  const scope = costs.map((cost, index) => {
    const price = { quantity: 100, rate: cost * 100 };
    return parents[index] === null
      ? aScopeItem(`trunk ${index}`, { from: 0, to: 1_000, ...price })
      : aScopeItem(`branch ${index}`, {
          place: "branch",
          tieInId: `${index}`,
          from: null,
          to: null,
          ...price,
        });
  });
  const exact = exactOf(divideLine(aPricedLine(tieIns, { scope }), rule));
  return parents.map((_, index) => dollars(exact[`${index}`]));
}

function dollars(exact: string | undefined): number {
  const [n = "0", d = "1"] = (exact ?? "").split("/");
  return Number(n) / Number(d) / 100;
}

function expectShares(actual: readonly number[], expected: readonly number[]) {
  expect(actual).toHaveLength(expected.length);
  for (const [index, value] of expected.entries()) expect(actual[index]).toBeCloseTo(value, 9);
}

/** The average over all orders of what each adds to the cost of the pipe that the earlier ones need. */
function byAllOrders({ parents, costs }: Tree): number[] {
  const pathOf = (owner: number): number[] => {
    const below = parents[owner] ?? null;
    return below === null ? [owner] : [owner, ...pathOf(below)];
  };
  const orders = permutations(parents.map((_, index) => index));
  const paid = parents.map(() => 0);
  for (const order of orders) {
    const built = new Set<number>();
    for (const owner of order)
      for (const segment of pathOf(owner)) {
        if (!built.has(segment)) paid[owner] = (paid[owner] ?? 0) + (costs[segment] ?? 0);
        built.add(segment);
      }
  }
  return paid.map((sum) => sum / orders.length);
}

function permutations(items: readonly number[]): number[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item) =>
    permutations(items.filter((each) => each !== item)).map((rest) => [item, ...rest]),
  );
}

describe("trees, by segment and by all orders", () => {
  test("a tree of five: 240, 440, 1140, 740 and 890", () => {
    const tree = { parents: [null, 0, 0, 1, 1], costs: [1200, 600, 900, 300, 450] };
    expectShares(shares(tree, "portion-used"), [240, 440, 1140, 740, 890]);
    expectShares(byAllOrders(tree), [240, 440, 1140, 740, 890]);
  });

  test("a tree of four: 3, 14/3, 38/3 and 23/3", () => {
    const tree = { parents: [null, 0, 1, 1], costs: [12, 5, 8, 3] };
    expectShares(shares(tree, "portion-used"), [3, 14 / 3, 38 / 3, 23 / 3]);
    expectShares(byAllOrders(tree), [3, 14 / 3, 38 / 3, 23 / 3]);
  });

  test("a star: 10/3, 28/3 and 22/3", () => {
    const tree = { parents: [null, 0, 0], costs: [10, 6, 4] };
    expectShares(shares(tree, "portion-used"), [10 / 3, 28 / 3, 22 / 3]);
  });

  test("a chain of branches: 25, 155/3, 245/3 and 365/3", () => {
    const tree = { parents: [null, 0, 1, 2], costs: [100, 80, 60, 40] };
    expectShares(shares(tree, "portion-used"), [25, 155 / 3, 245 / 3, 365 / 3]);
  });
});

describe("a river, by our own sums", () => {
  // Segments from the main up cost 100, 80, 60 and 40.
  const tieIns = [1, 2, 3, 4].map((place) => ({ id: `${place}`, station: place * 1_000 }));
  const scope = [100, 80, 60, 40].map((cost, index) =>
    aScopeItem(`segment ${index + 1}`, {
      from: index * 1_000,
      to: (index + 1) * 1_000,
      quantity: 100,
      rate: cost * 100,
    }),
  );
  const river = (rule: SplitRule) => {
    const exact = exactOf(divideLine(aPricedLine(tieIns, { scope }), rule));
    return tieIns.map(({ id }) => dollars(exact[id]));
  };

  test("portion-used is the upstream equal sharing: all who discharge through a segment share it", () => {
    expectShares(river("portion-used"), [25, 155 / 3, 245 / 3, 365 / 3]);
  });

  test("reach-owner is the local responsibility, as is the Bird rule on a chain", () => {
    expectShares(river("reach-owner"), [100, 80, 60, 40]);
  });

  // Sewage flows toward the main, so whoever is below a segment does not use it: dear work at the top
  // falls on the uppermost owner alone.
  test("nobody pays for a segment above the own tie-in, by either rule", () => {
    const top = scope.map((item, index) =>
      index === 3 ? { ...item, rate: item.rate + 1_000_000 } : item,
    );
    for (const rule of ["portion-used", "reach-owner"] as const) {
      const before = river(rule);
      const exact = exactOf(divideLine(aPricedLine(tieIns, { scope: top }), rule));
      const after = tieIns.map(({ id }) => dollars(exact[id]));
      expect(after.slice(0, 3)).toEqual(before.slice(0, 3));
      expect((after[3] ?? 0) - (before[3] ?? 0)).toBeCloseTo(10_000, 9);
    }
  });
});
