import { err, ok, type Result } from "../../result.ts";
import type { Cft } from "../length/station.ts";

/** A tie-in as the tree needs it. */
export interface TreeRow {
  readonly id: string;
  /** Null: joins the trunk. */
  readonly parentId: string | null;
  /** Along the pipe from the main connection; null where only relative. */
  readonly station: Cft | null;
  /** How far off the station may be; limits are only broken beyond it. */
  readonly uncertainty?: Cft | null;
  /** Carries sewage; taken as true where not said. */
  readonly live?: boolean;
}

export type TreeProblemReason =
  | "blank-id"
  | "duplicate-id"
  | "missing-parent"
  | "cycle"
  | "not-a-length"
  | "below-main"
  | "below-parent"
  | "beyond-upper-end";

/** What is wrong with one row. */
export interface TreeProblem {
  readonly reason: TreeProblemReason;
  /** Number of the row, from 0. */
  readonly row: number;
  readonly field: "id" | "parentId" | "station";
  readonly id: string;
  /** The limit that was broken, where it is a length. */
  readonly limit: Cft | null;
}

interface TreeNode {
  readonly id: string;
  readonly parentId: string | null;
  readonly station: Cft | null;
  readonly live: boolean;
  /** Where its flow reaches the trunk; null where nobody can say. */
  readonly joinsTrunkAt: Cft | null;
}

/** A sound tree: every parent is there, nothing goes round, nothing lies below what it joins. */
interface LineTree {
  readonly nodes: ReadonlyMap<string, TreeNode>;
  /** Rising along the trunk; on one branch parents stand before children; unplaced last. */
  readonly order: readonly TreeNode[];
}

/**
 * Hangs tie-ins on the trunk and on one another. Refuses with the first thing that is wrong,
 * in the order of the rows. Stations are hundredths of a foot from the main connection.
 */
export function parseTree(
  rows: readonly TreeRow[],
  limit: { readonly upperEnd: Cft | null },
): Result<LineTree, TreeProblem> {
  const [problem] = treeProblems(rows, limit);
  return problem ? err(problem) : ok(soundTree(rows));
}

/**
 * Hangs what can be hung: rows without a name, second rows of the same name, and rows that hang
 * on nothing or on one another are left out, with all that hangs on them.
 */
export function soundTree(rows: readonly TreeRow[]): LineTree {
  const byId = firstById(rows);
  const given = inherit<{ joint: Cft | null; depth: number }>(rows, byId, {
    atTrunk: { joint: null, depth: 0 },
    pass: ({ joint, depth }, row) => ({
      joint: depth === 0 ? lengthOf(row) : joint,
      depth: depth + 1,
    }),
  });
  const hung = rows.flatMap((row, index) => {
    const from = given[index];
    if (!from || byId.get(row.id) !== index) return [];
    const station = lengthOf(row);
    const joinsTrunkAt = row.parentId === null ? station : from.joint;
    const { id, parentId, live = true } = row;
    return [{ node: { id, parentId, station, live, joinsTrunkAt }, depth: from.depth, index }];
  });
  hung.sort(
    (a, b) =>
      stationOrder(a.node.joinsTrunkAt, b.node.joinsTrunkAt) ||
      a.depth - b.depth ||
      a.index - b.index,
  );
  const order = hung.map(({ node }) => node);
  return { nodes: new Map(order.map((node) => [node.id, node])), order };
}

/** Everything that is wrong with the rows, in their order; empty for a sound tree. */
export function treeProblems(
  rows: readonly TreeRow[],
  limit: { readonly upperEnd: Cft | null },
): TreeProblem[] {
  const byId = firstById(rows);
  const problems = [
    ...rows.flatMap((row, index) => ownProblems(row, { index, byId, upperEnd: limit.upperEnd })),
    ...cycleProblems(rows, byId),
    ...parentProblems(rows, byId),
  ];
  return problems.sort((a, b) => a.row - b.row);
}

/** Ids whose flow passes the trunk at a station: live, and joining it there or above. */
export function liveAbove(tree: LineTree, station: Cft): string[] {
  return tree.order
    .filter((node) => node.live && node.joinsTrunkAt !== null && node.joinsTrunkAt >= station)
    .map((node) => node.id);
}

function firstById(rows: readonly TreeRow[]): Map<string, number> {
  const byId = new Map<string, number>();
  rows.forEach((row, index) => {
    if (row.id.trim() !== "" && !byId.has(row.id)) byId.set(row.id, index);
  });
  return byId;
}

function ownProblems(
  row: TreeRow,
  at: { index: number; byId: ReadonlyMap<string, number>; upperEnd: Cft | null },
): TreeProblem[] {
  const found: TreeProblem[] = [];
  const add = (reason: TreeProblemReason, field: TreeProblem["field"], limit: Cft | null = null) =>
    found.push({ reason, row: at.index, field, id: row.id, limit });
  if (row.id.trim() === "") add("blank-id", "id");
  else if (at.byId.get(row.id) !== at.index) add("duplicate-id", "id");
  if (row.parentId !== null && !at.byId.has(row.parentId)) add("missing-parent", "parentId");
  if (row.station === null) return found;
  const slack = row.uncertainty ?? 0;
  if (!Number.isSafeInteger(row.station)) add("not-a-length", "station");
  else if (row.station + slack < 0) add("below-main", "station", 0);
  else if (row.parentId === null && at.upperEnd !== null && row.station - slack > at.upperEnd)
    add("beyond-upper-end", "station", at.upperEnd);
  return found;
}

/** Follows every row's parents once; a row met twice on one way is part of a circle. */
function cycleProblems(rows: readonly TreeRow[], byId: ReadonlyMap<string, number>): TreeProblem[] {
  const walk = new Array<number>(rows.length).fill(-1);
  const problems: TreeProblem[] = [];
  const parentOf = (index: number) => byId.get(rows[index]?.parentId ?? "") ?? -1;
  rows.forEach((_, start) => {
    let at = start;
    while (at >= 0 && walk[at] === -1) {
      walk[at] = start;
      at = rows[at]?.parentId === null ? -1 : parentOf(at);
    }
    if (at < 0 || walk[at] !== start) return;
    let on = at;
    do {
      const id = rows[on]?.id ?? "";
      problems.push({ reason: "cycle", row: on, field: "parentId", id, limit: null });
      on = parentOf(on);
    } while (on !== at);
  });
  return problems;
}

/** A branch's tie-in lies at or above the joint of the branch that it is on. */
function parentProblems(
  rows: readonly TreeRow[],
  byId: ReadonlyMap<string, number>,
): TreeProblem[] {
  const floors = inherit<Cft | null>(rows, byId, {
    atTrunk: null,
    pass: (floor, row) => higher(floor, row.station),
  });
  return rows.flatMap((row, index) => {
    const floor = floors[index] ?? null;
    if (floor === null || row.station === null || row.parentId === null) return [];
    if (row.station + (row.uncertainty ?? 0) >= floor) return [];
    return [
      {
        reason: "below-parent" as const,
        row: index,
        field: "station" as const,
        id: row.id,
        limit: floor,
      },
    ];
  });
}

function higher(a: Cft | null, b: Cft | null): Cft | null {
  if (a === null || b === null) return a ?? b;
  return Math.max(a, b);
}

/**
 * Hands a value down from the trunk to every row, parents first, without recursion.
 * Rows that hang on nothing get undefined.
 */
function inherit<T>(
  rows: readonly TreeRow[],
  byId: ReadonlyMap<string, number>,
  rule: { readonly atTrunk: T; readonly pass: (given: T, row: TreeRow) => T },
): (T | undefined)[] {
  const children = new Map<number, number[]>();
  const queue: number[] = [];
  const given = new Array<T | undefined>(rows.length).fill(undefined);
  rows.forEach((row, index) => {
    const parent = row.parentId === null ? undefined : byId.get(row.parentId);
    if (row.parentId === null) {
      given[index] = rule.atTrunk;
      queue.push(index);
    } else if (parent !== undefined) {
      const brood = children.get(parent);
      if (brood) brood.push(index);
      else children.set(parent, [index]);
    }
  });
  for (let next = 0; next < queue.length; next += 1) {
    const index = queue[next] ?? 0;
    const row = rows[index];
    const own = given[index];
    if (!row || own === undefined) continue;
    const passed = rule.pass(own, row);
    for (const child of children.get(index) ?? []) {
      given[child] = passed;
      queue.push(child);
    }
  }
  return given;
}

function lengthOf(row: TreeRow): Cft | null {
  return Number.isSafeInteger(row.station) ? row.station : null;
}

function stationOrder(a: Cft | null, b: Cft | null): number {
  if (a === null && b === null) return 0;
  if (a === null) return 1;
  return b === null ? -1 : a - b;
}
