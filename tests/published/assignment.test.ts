import fc from "fast-check";
import { munkres } from "munkres";
import oracle from "munkres-js";
import { expect, test } from "vitest";
import { assign, type Couple } from "#lib/domain/reconcile/assign.ts";

type Matrix = number[][];

/** A published or well-known cost table, its optimum, and the only optimal choice where there is one. */
interface Known {
  readonly source: string;
  readonly costs: Matrix;
  readonly optimum: number;
  /** Column for each row; -1 for a row left over. Null: several choices are optimal. */
  readonly columns: readonly number[] | null;
}

/**
 * The pages were read, except where it says “from memory”. The optimum of every table was also
 * computed here, by exhaustive search.
 */
const KNOWN: readonly Known[] = [
  {
    source: "Wikipedia, Hungarian algorithm (from memory)",
    costs: [
      [8, 4, 7],
      [5, 2, 3],
      [9, 4, 8],
    ],
    optimum: 15,
    columns: [0, 2, 1],
  },
  {
    source: "hungarianalgorithm.com example, quoted in two public test suites",
    costs: [
      [82, 83, 69, 92],
      [77, 37, 49, 92],
      [11, 69, 5, 86],
      [8, 9, 98, 23],
    ],
    optimum: 140,
    columns: [2, 1, 0, 3],
  },
  {
    source: "Levitin's textbook (from memory), asserted in a public test suite",
    costs: [
      [9, 2, 7, 8],
      [6, 4, 3, 7],
      [5, 8, 1, 8],
      [7, 6, 9, 4],
    ],
    optimum: 13,
    columns: [1, 0, 2, 3],
  },
  {
    source: "munkres (Python) test suite, 3 by 3",
    costs: [
      [400, 150, 400],
      [400, 450, 600],
      [300, 225, 300],
    ],
    optimum: 850,
    columns: [1, 0, 2],
  },
  {
    source: "munkres (Python) test suite, 3 by 4",
    costs: [
      [400, 150, 400, 1],
      [400, 450, 600, 2],
      [300, 225, 300, 3],
    ],
    optimum: 452,
    columns: null,
  },
  {
    source: "munkres (Python) test suite, second 3 by 3",
    costs: [
      [10, 10, 8],
      [9, 8, 1],
      [9, 7, 4],
    ],
    optimum: 18,
    columns: [0, 2, 1],
  },
  {
    source: "munkres (Python) test suite, second 3 by 4 (from memory; optimum computed here)",
    costs: [
      [10, 10, 8, 11],
      [9, 8, 1, 1],
      [9, 7, 4, 10],
    ],
    optimum: 15,
    columns: null,
  },
  {
    source: "munkres README (from memory)",
    costs: [
      [5, 9, 1],
      [10, 3, 2],
      [8, 7, 4],
    ],
    optimum: 12,
    columns: null,
  },
  {
    source: "scipy linear_sum_assignment documentation (from memory)",
    costs: [
      [4, 1, 3],
      [2, 0, 5],
      [3, 2, 2],
    ],
    optimum: 5,
    columns: [1, 0, 2],
  },
  {
    source: "Pilgrim's page on Munkres' algorithm, in a public test suite",
    costs: [
      [1, 2, 3],
      [2, 4, 6],
      [3, 6, 9],
    ],
    optimum: 10,
    columns: [2, 1, 0],
  },
  {
    source: "R clue::solve_LSAP documentation, by rows (from memory)",
    costs: [
      [5, 3, 2],
      [1, 5, 4],
      [4, 2, 4],
    ],
    optimum: 5,
    columns: [2, 0, 1],
  },
  {
    source: "OR-Tools assignment tutorial, 5 workers and 4 tasks (from memory)",
    costs: [
      [90, 80, 75, 70],
      [35, 85, 55, 65],
      [125, 95, 90, 95],
      [45, 110, 95, 115],
      [50, 100, 90, 100],
    ],
    optimum: 265,
    columns: [3, 2, 1, 0, -1],
  },
  {
    source: "OR-Tools LinearSumAssignment tutorial (from memory)",
    costs: [
      [90, 76, 75, 70],
      [35, 85, 55, 65],
      [125, 95, 90, 105],
      [45, 110, 95, 115],
    ],
    optimum: 265,
    columns: [3, 2, 1, 0],
  },
  {
    source: "i10416/munkres test, 4 by 4",
    costs: [
      [5, 4, 7, 6],
      [6, 7, 3, 2],
      [8, 11, 2, 5],
      [9, 8, 6, 7],
    ],
    optimum: 17,
    columns: null,
  },
  {
    source: "i10416/munkres test, 5 by 5",
    costs: [
      [993, 947, 817, 561, 137],
      [503, 617, 437, 921, 27],
      [713, 937, 657, 831, 417],
      [373, 657, 227, 41, 57],
      [233, 527, 897, 301, 697],
    ],
    optimum: 1_685,
    columns: [4, 1, 2, 3, 0],
  },
];

/** Project Euler 345's example, to be made as large as it goes from memory, its optimum computed here. */
const EULER: Matrix = [
  [7, 53, 183, 439, 863],
  [497, 383, 563, 79, 973],
  [287, 63, 343, 169, 583],
  [627, 343, 773, 959, 943],
  [767, 473, 103, 699, 303],
];

/** More than any table here costs: staying alone is never the cheaper choice. */
const ALONE = 100_000;

function couplesOf(costs: Matrix): Couple[] {
  return costs.flatMap((row, left) =>
    row.flatMap((cost, right) => (Number.isFinite(cost) ? [{ left, right, cost }] : [])),
  );
}

function choice(costs: Matrix, alone = ALONE): { optimum: number; columns: number[] } {
  const chosen = assign(couplesOf(costs), { alone, clear: 0 });
  return {
    optimum: chosen.reduce((sum, { cost }) => sum + cost, 0),
    columns: costs.map((_, row) => chosen.find(({ left }) => left === row)?.right ?? -1),
  };
}

/** The least that any choice of columns costs, by trying them all; rows may stay alone. */
function exhaustive(costs: Matrix, alone: number): number {
  const from = (row: number, taken: ReadonlySet<number>): number => {
    const own = costs[row];
    if (!own) return 0;
    const options = own.flatMap((cost, column) =>
      taken.has(column) || !Number.isFinite(cost)
        ? []
        : [cost + from(row + 1, new Set([...taken, column]))],
    );
    return Math.min(alone + from(row + 1, taken), ...options);
  };
  return from(0, new Set());
}

function costAt(costs: Matrix, pairs: readonly (readonly [number, number])[]): number {
  return pairs.reduce((sum, [row, column]) => sum + (costs[row]?.[column] ?? Number.NaN), 0);
}

test.each(KNOWN)("assign() finds the known optimum of $source", ({ costs, optimum, columns }) => {
  const found = choice(costs);
  expect(found.optimum).toBe(optimum);
  if (columns) expect(found.columns).toEqual(columns);
});

test.each(KNOWN)("exhaustive search agrees with the optimum of $source", ({ costs, optimum }) => {
  const lonely = Math.max(0, costs.length - (costs[0]?.length ?? 0)) * ALONE;
  expect(exhaustive(costs, ALONE)).toBe(optimum + lonely);
});

test.each(KNOWN)("munkres-js, another program, agrees on $source", ({ costs, optimum }) => {
  const pairs = oracle(costs).filter(([row]) => row < costs.length);
  expect(costAt(costs, pairs)).toBe(optimum);
});

test("assign() makes Project Euler 345's example as large as it goes: 3315", () => {
  const found = choice(EULER.map((row) => row.map((value) => 1_000 - value)));
  expect(5_000 - found.optimum).toBe(3_315);
  expect(
    costAt(
      EULER,
      found.columns.map((column, row) => [row, column] as const),
    ),
  ).toBe(863 + 383 + 343 + 959 + 767);
});

const cost = fc.integer({ min: 0, max: 99 });

function tables(rows: number, columns: number): fc.Arbitrary<Matrix> {
  return fc
    .tuple(fc.integer({ min: 1, max: rows }), fc.integer({ min: 1, max: columns }))
    .chain(([height, width]) =>
      fc.array(fc.array(cost, { minLength: width, maxLength: width }), {
        minLength: height,
        maxLength: height,
      }),
    );
}

test("assign() costs what exhaustive search finds, with any price for staying alone", () => {
  fc.assert(
    fc.property(tables(6, 6), fc.integer({ min: 0, max: 120 }), (costs, alone) => {
      const chosen = assign(couplesOf(costs), { alone, clear: 0 });
      const lonely = costs.length - chosen.length;
      const total = chosen.reduce((sum, couple) => sum + couple.cost, 0) + lonely * alone;
      expect(total).toBe(exhaustive(costs, alone));
    }),
  );
});

test("assign() costs what munkres-js finds, on square tables up to 12 by 12", () => {
  fc.assert(
    fc.property(tables(12, 12), (costs) => {
      const size = Math.min(costs.length, costs[0]?.length ?? 0);
      const square = costs.slice(0, size).map((row) => row.slice(0, size));
      expect(choice(square).optimum).toBe(costAt(square, oracle(square)));
    }),
  );
});

test("assign() chooses a couple only once on either side, and only allowed couples", () => {
  fc.assert(
    fc.property(tables(7, 7), fc.func(fc.boolean()), (costs, mayPair) => {
      const couples = couplesOf(costs).filter(({ left, right }) => mayPair(left, right));
      const chosen = assign(couples, { alone: 50, clear: 0 });
      expect(new Set(chosen.map(({ left }) => left)).size).toBe(chosen.length);
      expect(new Set(chosen.map(({ right }) => right)).size).toBe(chosen.length);
      for (const { left, right } of chosen)
        expect(couples.some((each) => each.left === left && each.right === right)).toBe(true);
    }),
  );
});

test("munkres() gives a row that costs a constant more the same column, for that constant more", () => {
  fc.assert(
    fc.property(tables(6, 6), fc.integer({ min: 1, max: 50 }), (costs, more) => {
      const size = Math.min(costs.length, costs[0]?.length ?? 0);
      const square = costs.slice(0, size).map((row) => row.slice(0, size));
      const dearer = square.map((row, index) =>
        index === 0 ? row.map((each) => each + more) : row,
      );
      const before = munkres(square);
      const after = munkres(dearer);
      expect(costAt(dearer, after)).toBe(costAt(square, before) + more);
      expect(costAt(square, after)).toBe(costAt(square, before));
    }),
  );
});

test("munkres() never takes what is forbidden while another choice is open", () => {
  const forbidden = Number.POSITIVE_INFINITY;
  const costs = [
    [forbidden, 1, forbidden],
    [1, forbidden, 9],
    [forbidden, 1, 9],
  ];
  const pairs = munkres(costs);
  expect(costAt(costs, pairs)).toBe(11);
});

test("assign() leaves exactly one of five workers alone on four tasks, the dearest one", () => {
  const five = KNOWN.find(({ source }) => source.includes("5 workers"));
  const chosen = assign(couplesOf(five?.costs ?? []), { alone: 1_000, clear: 0 });
  expect(chosen.map(({ left }) => left)).toEqual([0, 1, 2, 3]);
});

test("assign() leaves a row alone where every couple costs more than that", () => {
  expect(assign([{ left: 0, right: 0, cost: 6 }], { alone: 5, clear: 0 })).toEqual([]);
});

test("assign() flags a choice that another one nearly equals, and not one that stands clear", () => {
  const near: Couple[] = [
    { left: 0, right: 0, cost: 1 },
    { left: 0, right: 1, cost: 1.5 },
  ];
  const clear: Couple[] = [
    { left: 0, right: 0, cost: 0 },
    { left: 0, right: 1, cost: 1 },
  ];
  expect(assign(near, { alone: 5, clear: 0.7 })[0]?.nearTie).toBe(true);
  expect(assign(clear, { alone: 5, clear: 0.7 })[0]?.nearTie).toBe(false);
});

test("assign() flags near-ties in knots too large to solve again as well", () => {
  const long = Array.from({ length: 40 }, (_, left) => [
    { left, right: left, cost: 0 },
    { left, right: left + 1, cost: left === 39 ? 0.1 : 3 },
  ]).flat();
  const chosen = assign(long, { alone: 5, clear: 0.7 });
  expect(chosen).toHaveLength(40);
  expect(chosen.filter(({ nearTie }) => nearTie).map(({ left }) => left)).toEqual([39]);
});
