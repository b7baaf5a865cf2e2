import fc from "fast-check";
import { expect, test } from "vitest";
import {
  liveAbove,
  parseTree,
  soundTree,
  type TreeProblemReason,
  type TreeRow,
  treeProblems,
} from "#lib/domain/line/tree.ts";
import { effortOf } from "#tests/support/effort.ts";

const OPEN = { upperEnd: null };

function row(id: string, parentId: string | null, station: number | null, rest = {}): TreeRow {
  return { id, parentId, station, ...rest };
}

function reasonsOf(rows: TreeRow[], upperEnd: number | null = null): TreeProblemReason[] {
  return treeProblems(rows, { upperEnd }).map((problem) => problem.reason);
}

test("parseTree() hangs branches on the trunk and on one another, rising along the trunk", () => {
  const tree = parseTree(
    [row("c", "b", 6_200), row("b", null, 6_000), row("a", null, 2_000)],
    OPEN,
  );
  if (!tree.ok) throw new Error(tree.error.reason);
  expect(tree.value.order.map((node) => [node.id, node.joinsTrunkAt])).toEqual([
    ["a", 2_000],
    ["b", 6_000],
    ["c", 6_000],
  ]);
});

test.each<[TreeProblemReason, TreeRow[]]>([
  ["blank-id", [row(" ", null, 0)]],
  ["duplicate-id", [row("a", null, 0), row("a", null, 100)]],
  ["missing-parent", [row("a", "gone", 0)]],
  ["not-a-length", [row("a", null, 10.5)]],
  ["not-a-length", [row("a", null, Number.NaN)]],
  ["below-main", [row("a", null, -10)]],
  ["below-parent", [row("a", null, 500), row("b", "a", 400)]],
  ["beyond-upper-end", [row("a", null, 10_010)]],
])("parseTree() refuses %s", (reason, rows) => {
  const tree = parseTree(rows, { upperEnd: 10_000 });
  expect(tree.ok ? null : tree.error.reason).toBe(reason);
});

test("parseTree() names every row that goes round in a circle, and not those that only hang on it", () => {
  const rows = [row("a", "c", null), row("b", "a", null), row("c", "b", null), row("d", "a", null)];
  const problems = treeProblems(rows, OPEN);
  expect(problems.map(({ reason, id }) => [reason, id])).toEqual([
    ["cycle", "a"],
    ["cycle", "b"],
    ["cycle", "c"],
  ]);
});

test("parseTree() takes a tie-in that joins itself for a circle", () => {
  expect(reasonsOf([row("a", "a", null)])).toEqual(["cycle"]);
});

test("parseTree() tells the row, the field and the limit that was broken", () => {
  const tree = parseTree([row("a", null, 500), row("b", "a", 400)], OPEN);
  expect(tree).toEqual({
    ok: false,
    error: { reason: "below-parent", row: 1, field: "station", id: "b", limit: 500 },
  });
});

test("treeProblems() holds a branch to its nearest placed ancestor where its parent has no station", () => {
  const rows = [row("a", null, 500), row("b", "a", null), row("c", "b", 400)];
  expect(reasonsOf(rows)).toEqual(["below-parent"]);
});

test("treeProblems() lets a station overstep a limit by what it is uncertain by, and no more", () => {
  const limit = 10_000;
  expect(reasonsOf([row("a", null, -60, { uncertainty: 100 })], limit)).toEqual([]);
  expect(reasonsOf([row("a", null, 10_090, { uncertainty: 100 })], limit)).toEqual([]);
  expect(reasonsOf([row("a", null, 10_110, { uncertainty: 100 })], limit)).toEqual([
    "beyond-upper-end",
  ]);
});

test("treeProblems() does not hold a branch's own tie-in to the trunk's upper end", () => {
  expect(reasonsOf([row("a", null, 9_900), row("b", "a", 11_000)], 10_000)).toEqual([]);
});

test("soundTree() leaves out what hangs on nothing, with all that hangs on it", () => {
  const rows = [
    row("a", null, 100),
    row("lost", "gone", 200),
    row("on-lost", "lost", 300),
    row("x", "y", 1),
    row("y", "x", 1),
    row("a", null, 900),
    row("", null, 5),
    row("on-blank", "", 6),
  ];
  expect(soundTree(rows).order.map((node) => [node.id, node.station])).toEqual([["a", 100]]);
});

test("soundTree() takes a station that is no length for unknown", () => {
  expect(soundTree([row("a", null, 0.5)]).nodes.get("a")?.joinsTrunkAt).toBeNull();
});

test("liveAbove() gives who joins at the station or above, through branches too", () => {
  const rows = [
    row("a", null, 1_000),
    row("b", null, 2_000),
    row("b1", "b", 2_500),
    row("dead", null, 3_000, { live: false }),
    row("beyond-dead", "dead", 3_100),
  ];
  const tree = soundTree(rows);
  expect(liveAbove(tree, 0)).toEqual(["a", "b", "b1", "beyond-dead"]);
  expect(liveAbove(tree, 2_000)).toEqual(["b", "b1", "beyond-dead"]);
  expect(liveAbove(tree, 2_001)).toEqual(["beyond-dead"]);
});

/** A chain of branches, each joining the one before. */
function chain(length: number): TreeRow[] {
  return Array.from({ length }, (_, index) =>
    row(`n${index}`, index === 0 ? null : `n${index - 1}`, 1_000 + index),
  );
}

test("parseTree() hangs a chain of 20 000 branches without overflow and without slowing down", () => {
  const effortFor = (rows: TreeRow[]) =>
    effortOf(() => expect(parseTree(rows, OPEN).ok).toBe(true));
  effortFor(chain(2_000));
  expect(effortFor(chain(20_000).toReversed())).toBeLessThan(2_500);
});

test("treeProblems() finds a circle of 20 000 branches", () => {
  const rows = chain(20_000).with(0, row("n0", "n19999", 1_000));
  expect(new Set(reasonsOf(rows))).toEqual(new Set(["cycle"]));
});

/** Sound trees: every row hangs on the trunk or an earlier row, at or above it; then shuffled. */
const soundRows = fc
  .array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 500 })), { maxLength: 30 })
  .chain((seeds) => {
    const rows: TreeRow[] = [];
    for (const [index, [pick, rise]] of seeds.entries()) {
      const parent = rows[pick % (rows.length + 1)] ?? null;
      rows.push(row(`n${index}`, parent?.id ?? null, (parent?.station ?? 0) + rise));
    }
    return fc.shuffledSubarray(rows, { minLength: rows.length });
  });

test("parseTree() takes every sound tree, in any order of its rows", () => {
  fc.assert(
    fc.property(soundRows, (rows) => {
      const tree = parseTree(rows, OPEN);
      expect(tree.ok && tree.value.nodes.size).toBe(rows.length);
    }),
  );
});

test("liveAbove() agrees with following every row down to the trunk", () => {
  fc.assert(
    fc.property(soundRows, fc.integer({ min: 0, max: 2_000 }), (rows, station) => {
      const joint = (each: TreeRow): number => {
        const parent = rows.find((other) => other.id === each.parentId);
        return parent ? joint(parent) : (each.station ?? 0);
      };
      const expected = rows.filter((each) => joint(each) >= station).map((each) => each.id);
      expect(new Set(liveAbove(soundTree(rows), station))).toEqual(new Set(expected));
    }),
  );
});

test("treeProblems() answers any rows whatever, and always the same", () => {
  const id = fc.constantFrom("a", "b", "c", "", "d");
  const anyRow = fc.record({
    id,
    parentId: fc.option(id),
    station: fc.option(fc.oneof(fc.double(), fc.integer())),
  });
  fc.assert(
    fc.property(fc.array(anyRow, { maxLength: 12 }), (rows) => {
      const problems = treeProblems(rows, { upperEnd: 100 });
      expect(treeProblems(rows, { upperEnd: 100 })).toEqual(problems);
      expect(parseTree(rows, { upperEnd: 100 }).ok).toBe(problems.length === 0);
      for (const node of soundTree(rows).order)
        if (node.parentId !== null) expect(soundTree(rows).nodes.has(node.parentId)).toBe(true);
    }),
  );
});
