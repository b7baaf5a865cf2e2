import { expect, test } from "vitest";
import { bearingAt, compassAt, courseOf, pathBetween, spotAt } from "#lib/domain/plan/course.ts";
import { aBend } from "../../../support/plan.ts";

const line = { bearing: 90 };

function course(...bends: readonly ReturnType<typeof aBend>[]) {
  const found = courseOf({ line, bends });
  if (found === null) throw new Error("no course");
  return found;
}

test("without a bearing nobody knows how the line lies", () => {
  expect(courseOf({ line: { bearing: null }, bends: [aBend("b", 1_000)] })).toBeNull();
  expect(compassAt(null, 1_000, "left")).toBeNull();
});

test("a line that runs east lies east of the main, its left side faces north", () => {
  const straight = course();
  expect(spotAt(straight, 2_000).east).toBeCloseTo(2_000, 6);
  expect(spotAt(straight, 2_000).north).toBeCloseTo(0, 6);
  expect(compassAt(straight, 2_000, "left")).toBe("north");
  expect(compassAt(straight, 2_000, "right")).toBe("south");
  expect(compassAt(straight, 2_000, "crown")).toBeNull();
  expect(compassAt(straight, null, "left")).toBeNull();
});

test("beyond a square bend to the left the line runs north and its left side faces west", () => {
  const bent = course(aBend("b", 3_000, { turn: "left", degrees: 90 }));
  const end = spotAt(bent, 7_000);
  expect([Math.round(end.east), Math.round(end.north)]).toEqual([3_000, 4_000]);
  expect(compassAt(bent, 2_999, "left")).toBe("north");
  expect(compassAt(bent, 3_000, "left")).toBe("west");
  expect(bearingAt(bent, 7_000)).toBe(0);
});

test("bends count in the order of their stations, however they were entered", () => {
  const bends = [aBend("b", 6_000, { turn: "right" }), aBend("a", 3_000, { turn: "left" })];
  const bent = course(...bends);
  expect(bearingAt(bent, 4_000)).toBe(45);
  expect(bearingAt(bent, 6_000)).toBe(90);
  expect(spotAt(bent, 6_000).north).toBeCloseTo(3_000 * Math.SQRT1_2, 6);
});

test("a path has its ends and the bends between them as corners", () => {
  const bent = course(aBend("b", 3_000, { degrees: 90 }));
  expect(pathBetween(bent, 1_000, 5_000)).toHaveLength(3);
  expect(pathBetween(bent, 3_000, 5_000)).toHaveLength(2);
});
