import fc from "fast-check";
import { expect, test } from "vitest";
import { counterAt } from "#lib/domain/run/between.ts";

function read(counter: number, videoSecond: number | null) {
  return { counter, videoSecond, reading: "read" as const };
}

test("counterAt() works a counter out by time, to a tenth of a foot, and says so", () => {
  const seen = [read(3_000, 40), read(1_000, 20), read(9_900, null)];
  expect(counterAt(seen, 30)).toEqual({ counter: 2_000, reading: "between", uncertainty: 1_000 });
  expect(counterAt(seen, 25.03)).toEqual({
    counter: 1_500,
    reading: "between",
    uncertainty: 1_000,
  });
  expect(counterAt(seen, 20)).toEqual({
    counter: 1_000,
    reading: "read",
    uncertainty: null,
  });
});

test("counterAt() follows a camera that is pulled back", () => {
  expect(counterAt([read(5_000, 100), read(4_000, 110)], 105)?.counter).toBe(4_500);
});

test("counterAt() knows nothing beyond the outermost readings, and nothing from what was itself worked out", () => {
  expect(counterAt([], 5)).toBeNull();
  expect(counterAt([read(1_000, 20)], 21)).toBeNull();
  expect(counterAt([read(1_000, 20), read(2_000, 30)], 19.9)).toBeNull();
  const between = { ...read(2_000, 30), reading: "between" as const };
  expect(counterAt([read(1_000, 20), between], 25)).toBeNull();
});

test("counterAt() stays between its neighbors, whatever the order of rows", () => {
  const rows = fc.array(fc.tuple(fc.nat(20_000), fc.nat(600)), { minLength: 2, maxLength: 8 });
  fc.assert(
    fc.property(rows, fc.double({ min: 0, max: 600, noNaN: true }), (pairs, second) => {
      const seen = pairs.map(([counter, at]) => read(counter * 10, at));
      const found = counterAt(seen, second);
      const counters = seen.map(({ counter }) => counter);
      const around = pairs.some(([, at]) => at <= second) && pairs.some(([, at]) => at >= second);
      expect(found !== null).toBe(around);
      if (found === null) return;
      expect(found.counter).toBeGreaterThanOrEqual(Math.min(...counters));
      expect(found.counter).toBeLessThanOrEqual(Math.max(...counters));
      expect(counterAt(seen.toReversed(), second)).toEqual(found);
    }),
  );
});
