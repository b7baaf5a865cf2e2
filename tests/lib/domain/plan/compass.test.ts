import fc from "fast-check";
import { expect, test } from "vitest";
import { compassOf, formatBearing, parseBearing, sideBearing } from "#lib/domain/plan/compass.ts";

test.each([
  ["35", 35],
  ["35°", 35],
  ["N 35 E", 35],
  ["n35°e", 35],
  ["S 10.5 W", 190.5],
  ["N 80 W", 280],
  ["NE", 45],
  ["due west", 270],
  ["north-east", 45],
  ["360", 0],
  ["22.4", 22.5],
])("takes %s as %d degrees", (typed, degrees) => {
  expect(parseBearing(typed)).toBe(degrees);
});

test.each(["", "N 95 E", "361", "-5", "up the hill", "35 40", "N35"])(
  "takes %j as no bearing",
  (typed) => {
    expect(parseBearing(typed)).toBeNull();
  },
);

test.each([
  [0, "due north"],
  [35, "N 35° E"],
  [90, "due east"],
  [112.5, "S 67.5° E"],
  [190.5, "S 10.5° W"],
  [280, "N 80° W"],
  [359.5, "N 0.5° W"],
])("writes %d as %s", (degrees, written) => {
  expect(formatBearing(degrees)).toBe(written);
});

test("what is written is read back, every half degree", () => {
  for (let twice = 0; twice < 720; twice += 1)
    expect(parseBearing(formatBearing(twice / 2))).toBe(twice / 2);
});

test("the sides of a line that runs east face north at the left and south at the right", () => {
  expect(compassOf(sideBearing(90, "left") ?? -1)).toBe("north");
  expect(compassOf(sideBearing(90, "right") ?? -1)).toBe("south");
  expect(sideBearing(90, "crown")).toBeNull();
  expect(sideBearing(90, "unknown")).toBeNull();
});

test("the two sides always face away from one another", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 719 }), (twice) => {
      const [left, right] = [sideBearing(twice / 2, "left"), sideBearing(twice / 2, "right")];
      expect((((left ?? 0) + 180) % 360) - (right ?? 0)).toBe(0);
    }),
  );
});
