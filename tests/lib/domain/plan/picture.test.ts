import fc from "fast-check";
import { expect, test } from "vitest";
import { cornersOf, outlineOf } from "#lib/domain/plan/outline.ts";
import {
  pictureProblem,
  pictureScale,
  pixelOfSpot,
  spotOfPixel,
} from "#lib/domain/plan/picture.ts";
import { aPicture } from "../../../support/plan.ts";

test("two points a known length apart give the scale", () => {
  expect(pictureScale(aPicture("p"))).toBe(10);
  expect(pictureScale(aPicture("p", { otherX: 100 }))).toBeNull();
  expect(pictureScale(aPicture("p", { apart: 0 }))).toBeNull();
});

test("a picture that gives no scale says what to press or write", () => {
  expect(pictureProblem(aPicture("p"))).toBeNull();
  expect(pictureProblem(aPicture("p", { otherX: 100 }))?.path).toBe("otherX");
  expect(pictureProblem(aPicture("p", { apart: 0 }))?.path).toBe("apart");
});

test("right on a picture with north up is east, up is north", () => {
  expect(spotOfPixel(aPicture("p"), { x: 300, y: 350 })).toEqual({ east: 2_000, north: 500 });
});

test("on a picture whose upper edge lies east, right is south", () => {
  const spot = spotOfPixel(aPicture("p", { up: 90 }), { x: 300, y: 350 });
  expect([Math.round(spot?.east ?? 0), Math.round(spot?.north ?? 0)]).toEqual([500, -2_000]);
});

test("a place goes to its pixel and back, however the picture lies", () => {
  const place = fc.integer({ min: -5_000, max: 5_000 });
  fc.assert(
    fc.property(place, place, fc.integer({ min: 0, max: 719 }), (east, north, twice) => {
      const picture = aPicture("p", { up: twice / 2 });
      const pixel = pixelOfSpot(picture, { east, north });
      const back = pixel && spotOfPixel(picture, pixel);
      expect(back?.east).toBeCloseTo(east, 6);
      expect(back?.north).toBeCloseTo(north, 6);
    }),
  );
});

test("corners are read from feet with a comma between, and written to the tenth", () => {
  expect(cornersOf("12,4; 52.25,4 52,-32.5")).toEqual([
    { east: 1_200, north: 400 },
    { east: 5_225, north: 400 },
    { east: 5_200, north: -3_250 },
  ]);
  expect(outlineOf([{ east: 1_204, north: -398 }])).toBe("12.0,-4.0");
});

test.each(["", "12,4", "12;4", "a,b; c,d", "1,2,3; 4,5", "1.234,5; 6,7"])(
  "takes %j as no outline",
  (typed) => {
    expect(cornersOf(typed)).toEqual([]);
  },
);
