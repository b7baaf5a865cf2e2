import { textWidth } from "../say/text-width.ts";
import type { Point, Shape, Tone } from "./strip-shape.ts";

/** Words that belong to a place on a drawing. */
export interface Label {
  readonly at: Point;
  /** Lines one below the other where it has breaks. */
  readonly text: string;
  readonly size: number;
  readonly strong?: boolean;
  readonly tone?: Tone;
  /** The way in which they stand from their place best, as a pair of −1, 0 or 1; null: over it, beside it only where that is taken. */
  readonly toward: Point | null;
  /** Where they may stand as well, over their place. */
  readonly or?: readonly Point[];
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where a label may stand, as parts of its own size from its place: best first. */
const WAYS: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [0, -1],
  [0, 1],
  [0.5, -1],
  [-0.5, -1],
  [0.5, 1],
  [-0.5, 1],
];

/** Steps away from the place, in points: near first. */
const STEPS = [5, 12, 20, 30, 42, 56];

/**
 * Sets labels beside their places so that none lies over another one or over its line, over what is
 * `taken`, or past the edge of the sheet; those that stand first in the list choose first. Where
 * there is no room, the place with the least in its way is taken. A label that stands far off gets a
 * line to its place.
 */
export function placeLabels(
  labels: readonly Label[],
  sheet: { readonly width: number; readonly height: number },
  taken: readonly Box[],
): Shape[] {
  const placed: Placed[] = [];
  for (const label of labels) placed.push(...spotFor(label, placed, { sheet, taken }));
  const spots = untangled(placed, { sheet, taken }).map(({ label, box }) => drawn(label, box));
  return [...spots.flatMap(({ under }) => under), ...spots.flatMap(({ over }) => over)];
}

/** A label where it stands, with the line to its place if it stands far off. */
interface Placed {
  readonly label: Label;
  readonly box: Box;
  readonly leader: Leader | null;
}

interface Ground {
  readonly sheet: { readonly width: number; readonly height: number };
  readonly taken: readonly Box[];
}

/** Where a label has least in its way among others; none for one without words. */
function spotFor(label: Label, others: readonly Placed[], { sheet, taken }: Ground): Placed[] {
  const words = others.map(({ box }) => box);
  const leaders = others.flatMap(({ leader }) => (leader === null ? [] : [leader]));
  const boxes = [...taken, ...words];
  const box = leastOf(
    spotsOf(label),
    (each) => costOf(each, boxes, sheet) + crossedBy(label, each, { words, leaders }),
  );
  return box === undefined ? [] : [{ label, box, leader: leaderOf(label, box) }];
}

/** How many pairs of labels whose lines cross are set anew, now that all others stand. */
const ROUNDS = 6;

/** Two labels whose lines cross choose again among the others as they stand, the later one first. */
function untangled(placed: readonly Placed[], ground: Ground): readonly Placed[] {
  let now = placed;
  for (let round = 0; round < ROUNDS; round += 1) {
    const pair = tangleIn(now);
    if (pair === null) break;
    const orders: readonly (readonly Placed[])[] = [pair, pair.toReversed()];
    const tries = orders.map((order) => {
      const among = now.filter((each) => !pair.includes(each));
      for (const { label } of order) among.push(...spotFor(label, among, ground));
      return among;
    });
    const [best = now] = tries.toSorted((one, other) => tanglesOf(one) - tanglesOf(other));
    if (tanglesOf(best) >= tanglesOf(now)) break;
    now = best;
  }
  return now;
}

function tangleIn(placed: readonly Placed[]): readonly [Placed, Placed] | null {
  return pairsOf(placed)[0] ?? null;
}

function tanglesOf(placed: readonly Placed[]): number {
  return pairsOf(placed).length;
}

/** All pairs whose lines cross. */
function pairsOf(placed: readonly Placed[]): (readonly [Placed, Placed])[] {
  return placed.flatMap((one, at) =>
    placed.slice(at + 1).flatMap((other): (readonly [Placed, Placed])[] => {
      if (one.leader === null || other.leader === null) return [];
      return doCross(one.leader, other.leader) ? [[one, other]] : [];
    }),
  );
}

function spotsOf({ at, text, size, strong = false, toward, or = [] }: Label): Box[] {
  const lines = text.split("\n");
  const width = Math.max(...lines.map((line) => textWidth(line, size, strong)));
  const height = size + (lines.length - 1) * (size + LEADING);
  const over = toward === null ? [at, ...or].map((spot) => around(spot, width, height)) : [];
  const first = toward ?? [0, -1];
  const ways = [first, ...WAYS.filter((way) => way[0] !== first[0] || way[1] !== first[1])];
  const beside = STEPS.flatMap((step) =>
    ways.map(([right, down]) =>
      around(
        [at[0] + right * (step + width / 2), at[1] + down * (step + height / 2)],
        width,
        height,
      ),
    ),
  );
  return [...over, ...beside];
}

/** Between two lines of a label, in points. */
const LEADING = 2;

function around([x, y]: Point, width: number, height: number): Box {
  return {
    left: x - width / 2 - 1,
    right: x + width / 2 + 1,
    top: y - height / 2 - 1,
    bottom: y + height / 2 + 1,
  };
}

/** Square points of what lies under a box, or off the sheet. */
function costOf(
  box: Box,
  taken: readonly Box[],
  { width, height }: { width: number; height: number },
): number {
  const off = [-box.left, -box.top, box.right - width, box.bottom - height];
  const beyond = off.reduce((sum, each) => sum + Math.max(0, each) * 100, 0);
  return taken.reduce((sum, other) => {
    const across = Math.min(box.right, other.right) - Math.max(box.left, other.left);
    const down = Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top);
    return across > 0 && down > 0 ? sum + across * down : sum;
  }, beyond);
}

/** From a place to the edge of its words. */
type Leader = readonly [from: Point, to: Point];

/** Farther off than this, in points, words get a line to their place. */
const FAR = 14;

function leaderOf({ at }: Label, { left, right, top, bottom }: Box): Leader | null {
  const near: Point = [clamp(at[0], left, right), clamp(at[1], top, bottom)];
  return Math.hypot(near[0] - at[0], near[1] - at[1]) > FAR ? [at, near] : null;
}

/** What a line through words weighs, in square points for each point of it that they hide. */
const CROSSED = 20;
/** What two lines that cross weigh: more than words over others. */
const TANGLED = 400;

/** Square points for the lines under these words, for the words over their own line, and for lines across it. */
function crossedBy(
  label: Label,
  box: Box,
  { words, leaders }: { readonly words: readonly Box[]; readonly leaders: readonly Leader[] },
): number {
  const own = leaderOf(label, box);
  const under = leaders.map((leader) => lengthIn(leader, box));
  const over = own === null ? [] : words.map((other) => lengthIn(own, other));
  const tangles = own === null ? 0 : leaders.filter((leader) => doCross(own, leader)).length;
  return [...under, ...over].reduce((sum, length) => sum + length * CROSSED, tangles * TANGLED);
}

/** Whether two lines cross; at one and the same place they only begin together. */
function doCross([a, b]: Leader, [c, d]: Leader): boolean {
  const turn = ([x, y]: Point, [u, v]: Point, [s, t]: Point) =>
    Math.sign((u - x) * (t - y) - (v - y) * (s - x));
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

/** How much of a line lies in a box, in points. */
function lengthIn([from, to]: Leader, { left, right, top, bottom }: Box): number {
  const across = partIn(from[0], to[0], [left, right]);
  const down = partIn(from[1], to[1], [top, bottom]);
  const part = Math.min(across[1], down[1]) - Math.max(across[0], down[0]);
  return Math.max(0, part) * Math.hypot(to[0] - from[0], to[1] - from[1]);
}

/** From which part of its way to which it is between two bounds. */
function partIn(
  from: number,
  to: number,
  [low, high]: readonly [number, number],
): [number, number] {
  if (from === to) return from > low && from < high ? [0, 1] : [1, 0];
  const ends = [(low - from) / (to - from), (high - from) / (to - from)];
  return [Math.max(0, Math.min(...ends)), Math.min(1, Math.max(...ends))];
}

/** The first box that costs nothing, else the first of those that cost least. */
function leastOf(boxes: readonly Box[], costs: (box: Box) => number): Box | undefined {
  let least: { readonly box: Box; readonly cost: number } | undefined;
  for (const box of boxes) {
    const cost = costs(box);
    if (cost === 0) return box;
    if (least === undefined || cost < least.cost) least = { box, cost };
  }
  return least?.box;
}

/** Words on a patch of paper, and the line to their place where they stand far off. */
function drawn(
  label: Label,
  box: Box,
): { readonly under: readonly Shape[]; readonly over: readonly Shape[] } {
  const { text, size, strong = false, tone = "ink" } = label;
  const { left, right, top, bottom } = box;
  const middle: Point = [(left + right) / 2, (top + bottom) / 2];
  const lines = text.split("\n");
  const over = lines.flatMap((line, index): Shape[] => {
    const down = (index - (lines.length - 1) / 2) * (size + LEADING);
    const spot: Point = [middle[0], middle[1] + down];
    return [
      patch(around(spot, textWidth(line, size, strong), size)),
      {
        kind: "words",
        at: [spot[0], spot[1] + size * 0.35],
        text: line,
        size,
        strong,
        tone,
        anchor: "middle",
        upright: false,
      },
    ];
  });
  const way = leaderOf(label, box);
  const leader: Shape[] =
    way === null ? [] : [{ kind: "line", points: way, width: 0.4, tone: "soft", dash: false }];
  return { under: leader, over };
}

/** Paper under words. */
function patch({ left, right, top, bottom }: Box): Shape {
  return {
    kind: "area",
    points: [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    fill: "paper",
    tone: "paper",
    width: 0,
  };
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
