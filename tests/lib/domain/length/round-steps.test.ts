import fc from "fast-check";
import { expect, test } from "vitest";
import { multiplesIn, roundStep } from "#lib/domain/length/round-steps.ts";

test.each([
  [1, 1],
  [60, 100],
  [100, 100],
  [101, 200],
  [201, 500],
  [501, 1_000],
  [1_000, 1_000],
  [50_001, 100_000],
])("roundStep(%i) is %i", (least, step) => {
  expect(roundStep(least)).toBe(step);
});

test("a round step is at least what is wanted, and less than two and a half times that", () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 1e7, noNaN: true }), (least) => {
      const step = roundStep(least);
      expect(step).toBeGreaterThanOrEqual(least);
      expect(step).toBeLessThanOrEqual(least * 2.5);
    }),
  );
});

test("multiplesIn() counts both ends in, also below zero", () => {
  expect(multiplesIn(0, 1_000, 500)).toEqual([0, 500, 1_000]);
  expect(multiplesIn(-120, 130, 50)).toEqual([-100, -50, 0, 50, 100]);
  expect(multiplesIn(1, 49, 50)).toEqual([]);
});
