import { describe, expect, test } from "vitest";
import { cornersOver, triangleOf } from "#lib/domain/plan/triangle.ts";

/** Whole hundredths, as taped. */
function cft(feet: number): number {
  return Math.round(feet * 100);
}

// A worked intersection of two distances from a surveying text (Ghilani, Elementary Surveying). The text
// itself was not read; its numbers and both answers are as a public test of another program gives them
// (org.wysko.autogeokt, TestDistanceDistanceIntersection, "a Ghilani example").
describe("two distances from two known points", () => {
  const one = { east: cft(2851.28), north: cft(299.4) };
  const other = { east: cft(3898.72), north: cft(2870.15) };
  const apart = Math.hypot(other.east - one.east, other.north - one.north);

  test("2,000 ft and 1,500 ft meet at 4464.85 E 1481.09 N on the right, 2523.02 E 2272.28 N on the left", () => {
    const triangle = triangleOf(cft(2_000), cft(1_500), apart);
    if (triangle.state !== "closes") throw new Error(triangle.state);
    const { left, right } = cornersOver(triangle, [one, other]);
    expect(Math.abs(right.east - cft(4464.85))).toBeLessThanOrEqual(1);
    expect(Math.abs(right.north - cft(1481.09))).toBeLessThanOrEqual(1);
    expect(Math.abs(left.east - cft(2523.02))).toBeLessThanOrEqual(1);
    expect(Math.abs(left.north - cft(2272.28))).toBeLessThanOrEqual(1);
  });

  test("mixed up, the tapes put the point elsewhere: the sides are told apart", () => {
    const triangle = triangleOf(cft(1_500), cft(2_000), apart);
    if (triangle.state !== "closes") throw new Error(triangle.state);
    const { right } = cornersOver(triangle, [one, other]);
    expect(Math.abs(right.east - cft(4464.85))).toBeGreaterThan(cft(10));
  });
});

test("3, 4 and 5 make a square corner (Euclid, Elements I.47)", () => {
  const triangle = triangleOf(300, 400, 500);
  expect(triangle).toEqual({ state: "closes", along: 180, off: 240, loose: 1 });
});
