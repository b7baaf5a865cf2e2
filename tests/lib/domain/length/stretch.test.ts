import fc from "fast-check";
import { expect, test } from "vitest";
import {
  commonStretch,
  joinedStretches,
  type Stretch,
  sayWhere,
  touches,
  withoutStretches,
} from "#lib/domain/length/stretch.ts";

const STRETCH = fc
  .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 20 }))
  .map(([from, length]): Stretch => ({ from, to: from + length }));

/** Every place between two whole numbers that a stretch covers. */
function cells(stretches: readonly Stretch[]): Set<number> {
  const found = new Set<number>();
  for (const { from, to } of stretches) for (let at = from; at < to; at += 1) found.add(at);
  return found;
}

test("joinedStretches() and withoutStretches() cover what they say, each place once", () => {
  fc.assert(
    fc.property(STRETCH, fc.array(STRETCH, { maxLength: 6 }), (whole, others) => {
      const joined = joinedStretches(others);
      expect(cells(joined)).toEqual(cells(others));
      for (const [at, each] of joined.entries()) {
        const next = joined[at + 1];
        if (next !== undefined) expect(next.from).toBeGreaterThan(each.to);
      }
      const left = withoutStretches(whole, others);
      const taken = cells(others);
      expect([...cells(left)]).toEqual([...cells([whole])].filter((place) => !taken.has(place)));
    }),
  );
});

test("a point is left unless another stretch holds it", () => {
  const point = { from: 500, to: 500 };
  expect(withoutStretches(point, [{ from: 0, to: 400 }])).toEqual([point]);
  expect(withoutStretches(point, [{ from: 400, to: 600 }])).toEqual([]);
});

test("stretches touch where one ends and the other begins, and have no length in common there", () => {
  const [low, high] = [
    { from: 0, to: 500 },
    { from: 500, to: 900 },
  ];
  expect(touches(low, high)).toBe(true);
  expect(commonStretch(low, high)).toBeNull();
  expect(commonStretch(low, { from: 500, to: 500 })).toEqual({ from: 500, to: 500 });
  expect(commonStretch(low, { from: 400, to: 700 })).toEqual({ from: 400, to: 500 });
});

test("sayWhere() says a stretch, a point and no known place", () => {
  expect(sayWhere({ from: 1_200, to: 4_600 })).toBe("from 12.0 to 46.0 ft");
  expect(sayWhere({ from: 2_200, to: 2_200 })).toBe("at 22.0 ft");
  expect(sayWhere(null)).toBe("anywhere on the line");
});
