import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cornersOf } from "#lib/domain/plan/outline.ts";
import { pixelOfSpot } from "#lib/domain/plan/picture.ts";
import {
  fewestCorners,
  NO_FIT,
  nextToFit,
  pixelAt,
  pixelBeside,
  spotWords,
  tracedOutline,
  withCorner,
} from "#lib/domain/plan/tracing.ts";
import { aPicture } from "../../../support/plan.ts";

const SIZE = { width: 1_000, height: 800 };

describe("pixelAt()", () => {
  test("finds the pixel under a press, however large the picture is shown", () => {
    const shown = { left: 40, top: 100, width: 500, height: 400 };
    expect(pixelAt({ x: 290, y: 300 }, shown, SIZE)).toEqual({ x: 500, y: 400 });
  });

  test("keeps a press beside the edge on the picture", () => {
    const shown = { left: 40, top: 100, width: 500, height: 400 };
    expect(pixelAt({ x: 0, y: 9_000 }, shown, SIZE)).toEqual({ x: 0, y: 800 });
  });

  test("is null where nothing of the picture is shown", () => {
    expect(pixelAt({ x: 1, y: 1 }, { left: 0, top: 0, width: 0, height: 0 }, SIZE)).toBeNull();
  });

  test("gives back the pixel that is shown at a place, at any zoom", () => {
    const edge = fc.double({ min: -2_000, max: 2_000, noNaN: true });
    fc.assert(
      fc.property(
        fc.record({ x: fc.integer({ min: 0, max: 1_000 }), y: fc.integer({ min: 0, max: 800 }) }),
        edge,
        edge,
        fc.double({ min: 0.1, max: 8, noNaN: true }),
        (pixel, left, top, zoom) => {
          const shown = { left, top, width: 1_000 * zoom, height: 800 * zoom };
          const press = { x: left + pixel.x * zoom, y: top + pixel.y * zoom };
          expect(pixelAt(press, shown, SIZE)).toEqual(pixel);
        },
      ),
    );
  });
});

test("a picture is laid on the ground by two points and then the main, in any order of presses", () => {
  const at = { x: 1, y: 2 };
  expect(nextToFit(NO_FIT)).toBe("one");
  expect(nextToFit({ ...NO_FIT, one: at })).toBe("other");
  expect(nextToFit({ ...NO_FIT, one: at, main: at })).toBe("other");
  expect(nextToFit({ one: at, other: at, main: at })).toBeNull();
});

test("arrow keys stay on the picture", () => {
  expect(pixelBeside({ x: 995, y: 400 }, { x: 10, y: -10 }, SIZE)).toEqual({ x: 1_000, y: 390 });
  expect(pixelBeside({ x: 5, y: 0 }, { x: -10, y: -10 }, SIZE)).toEqual({ x: 0, y: 0 });
});

test("a press twice on one spot is one corner", () => {
  const one = { x: 1, y: 2 };
  expect(withCorner([one], { x: 1, y: 2 })).toEqual([one]);
  expect(withCorner([one], { x: 3, y: 2 })).toEqual([one, { x: 3, y: 2 }]);
});

test("a building has three corners at least, a line two", () => {
  expect(fewestCorners("building")).toBe(3);
  expect(fewestCorners("street-edge")).toBe(2);
  expect(fewestCorners("lot-line")).toBe(2);
});

test("a house on the picture becomes its corners in feet from the main", () => {
  // Ten hundredths of a foot to a pixel, the main at 100, 400, north up.
  const corners = [
    { x: 220, y: 360 },
    { x: 620, y: 360 },
    { x: 620, y: 640 },
  ];
  expect(tracedOutline(aPicture("p"), corners)).toBe("12.0,4.0; 52.0,4.0; 52.0,-24.0");
  expect(tracedOutline(aPicture("p", { apart: 0 }), corners)).toBe("");
});

test("a traced shape lies on the picture where it was pressed, to the tenth of a foot that is kept", () => {
  const pixel = fc.record({
    x: fc.integer({ min: 0, max: 1_000 }),
    y: fc.integer({ min: 0, max: 800 }),
  });
  fc.assert(
    fc.property(
      fc.array(pixel, { minLength: 2, maxLength: 30 }),
      fc.record({ one: pixel, other: pixel, main: pixel }),
      fc.integer({ min: 100, max: 40_000 }),
      fc.integer({ min: 0, max: 719 }),
      (pressed, { one, other, main }, apart, twice) => {
        fc.pre(one.x !== other.x || one.y !== other.y);
        const picture = aPicture("p", {
          oneX: one.x,
          oneY: one.y,
          otherX: other.x,
          otherY: other.y,
          mainX: main.x,
          mainY: main.y,
          apart,
          up: twice / 2,
        });
        const scale = apart / Math.hypot(one.x - other.x, one.y - other.y);
        const kept = cornersOf(tracedOutline(picture, pressed));
        expect(kept).toHaveLength(pressed.length);
        for (const [index, spot] of kept.entries()) {
          const shown = pixelOfSpot(picture, spot);
          const off = Math.hypot(
            (shown?.x ?? 0) - (pressed[index]?.x ?? 0),
            (shown?.y ?? 0) - (pressed[index]?.y ?? 0),
          );
          expect(off * scale).toBeLessThanOrEqual(Math.hypot(5, 5) + 1e-6);
        }
      },
    ),
  );
});

test("a spot is said from the main, with its directions", () => {
  expect(spotWords({ east: 1_238, north: -304 })).toBe("12.4 ft east, 3.0 ft south of the main");
  expect(spotWords({ east: -2, north: 4 })).toBe("at the main");
  expect(spotWords({ east: -510, north: 0 })).toBe("5.1 ft west of the main");
});
