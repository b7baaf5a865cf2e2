import type { Point, Shape } from "#lib/domain/strip/strip-shape.ts";

/** Patches of paper on which the words stand, by their words. */
export function patches(shapes: readonly Shape[]): Map<string, readonly Point[]> {
  return new Map(
    shapes.flatMap((shape, at) => {
      const next = shapes[at + 1];
      return shape.kind === "area" && next?.kind === "words" ? [[next.text, shape.points]] : [];
    }),
  );
}

/** The words over which a line to a label’s place runs, once for each such line. */
export function crossings(shapes: readonly Shape[]): string[] {
  const words = [...patches(shapes)];
  const leaders = shapes.flatMap((shape) =>
    shape.kind === "line" && shape.width === 0.4 ? [shape.points] : [],
  );
  return leaders.flatMap(([from, to]) =>
    words.flatMap(([text, patch]) => (meets(patch, from, to) ? [text] : [])),
  );
}

/** How many pairs of lines from words to their places cross. */
export function tangles(shapes: readonly Shape[]): number {
  const leaders = shapes.flatMap((shape) =>
    shape.kind === "line" && shape.width === 0.4 && shape.points.length === 2 ? [shape.points] : [],
  );
  return leaders.reduce(
    (sum, one, at) => sum + leaders.slice(at + 1).filter((other) => isAcross(one, other)).length,
    0,
  );
}

function isAcross(one: readonly Point[], other: readonly Point[]): boolean {
  const [a = [0, 0], b = [0, 0]] = one;
  const [c = [0, 0], d = [0, 0]] = other;
  const area = (p: Point, q: Point, r: Point) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return area(a, b, c) * area(a, b, d) < 0 && area(c, d, a) * area(c, d, b) < 0;
}

/** Whether a line enters a patch; it may end at its edge. */
function meets(patch: readonly Point[], from: Point = [0, 0], to: Point = [0, 0]): boolean {
  const across = patch.map(([x]) => x);
  const down = patch.map(([, y]) => y);
  return Array.from({ length: 199 }, (_none, at) => (at + 1) / 200).some((part) => {
    const x = from[0] + (to[0] - from[0]) * part;
    const y = from[1] + (to[1] - from[1]) * part;
    const isAcross = x > Math.min(...across) + 0.5 && x < Math.max(...across) - 0.5;
    return isAcross && y > Math.min(...down) + 0.5 && y < Math.max(...down) - 0.5;
  });
}

/** Pairs of words of which one lies over the other’s own signs. */
export function coverings(shapes: readonly Shape[]): string[] {
  const words = [...patches(shapes)].map(([text, patch]) => ({
    text,
    across: endsOf(patch.map(([x]) => x)),
    down: endsOf(patch.map(([, y]) => y)),
  }));
  return words.flatMap((one, at) =>
    words
      .slice(at + 1)
      .filter((other) => shared(one.across, other.across) > 0.5)
      // A patch stands out from its words by a point on each side.
      .filter((other) => shared(one.down, other.down) > 2.2)
      .map((other) => `${one.text} and ${other.text}`),
  );
}

type Ends = readonly [low: number, high: number];

function endsOf(values: readonly number[]): Ends {
  return [Math.min(...values), Math.max(...values)];
}

function shared(one: Ends, other: Ends): number {
  return Math.min(one[1], other[1]) - Math.max(one[0], other[0]);
}
