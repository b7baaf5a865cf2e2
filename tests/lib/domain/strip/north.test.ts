import fc from "fast-check";
import { expect, test } from "vitest";
import { textWidth } from "#lib/domain/say/text-width.ts";
import type { StripDrawing } from "#lib/domain/strip/drawing.ts";
import { northArrow, northOf } from "#lib/domain/strip/north.ts";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import type { Shape } from "#lib/domain/strip/strip-shape.ts";

test("north points where the line's bearing puts it, with upstream to the right", () => {
  expect(northOf(90)?.turn).toBe(0);
  expect(northOf(0)?.turn).toBe(90);
  expect(northOf(180)?.turn).toBe(270);
  expect(northOf(76)?.sentence).toBe(
    "North points up on this drawing: at the main connection the line runs N 76° E upstream, which is drawn to the right. Above and below the pipe stand record and camera, not sides of the line.",
  );
  expect(northOf(45)?.sentence).toMatch(/^North points up and to the right/);
  expect(northOf(225)?.sentence).toMatch(/^North points down and to the left/);
});

test("no bearing, no north", () => {
  expect(northOf(null)).toBeNull();
});

test("the arrow lies as the ground does: turned so that upstream is right, right of the line is down", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 719 }), (twice) => {
      const bearing = twice / 2;
      const { tip, tail } = northArrow(northOf(bearing)?.turn ?? Number.NaN, [50, 40], 12);
      const way = (bearing * Math.PI) / 180;
      // One foot to the north is so far along the line, and so far to the right of it.
      const along = Math.cos(way);
      const right = -Math.sin(way);
      expect(tip[0]).toBeCloseTo(50 + 12 * along, 9);
      expect(tip[1]).toBeCloseTo(40 + 12 * right, 9);
      expect(tail[0]).toBeCloseTo(50 - 12 * along, 9);
      expect(tail[1]).toBeCloseTo(40 - 12 * right, 9);
    }),
  );
});

function aDrawing(bearing: number | null): StripDrawing {
  return {
    extent: 10_000,
    ticks: [0, 2_000, 4_000, 6_000, 8_000, 10_000],
    above: [],
    below: [],
    onPipe: [],
    joins: [],
    pipes: [{ from: 0, to: 10_000, material: "pvc", words: "PVC" }],
    bands: [
      {
        title: "Camera",
        cells: [{ from: 0, to: 10_000, words: "seen", loud: false, hatch: "none" }],
      },
    ],
    title: "",
    north: northOf(bearing),
  };
}

const FRAME = { width: 468, scale: null, from: 0, to: 10_000, height: null };

type Words = Extract<Shape, { kind: "words" }>;

function wordsOf(shapes: readonly Shape[]): Words[] {
  return shapes.filter((shape) => shape.kind === "words");
}

function textsOf(shapes: readonly Shape[]): string[] {
  return wordsOf(shapes).map(({ text }) => text);
}

test("planStrip() draws north where the main is on the page, and says the bearing", () => {
  const { shapes } = planStrip(aDrawing(76), FRAME);
  expect(textsOf(shapes)).toEqual(
    expect.arrayContaining([
      "N",
      "Line at the main, looking upstream: N 76° E",
      "Above and below the pipe stand record and camera, not sides of the line.",
    ]),
  );
  const next = planStrip(aDrawing(76), { ...FRAME, from: 5_000 });
  expect(textsOf(next.shapes)).not.toContain("N");
});

test("planStrip() draws no north where the bearing is unknown", () => {
  const unknown = planStrip(aDrawing(null), FRAME);
  const { north: _, ...older } = aDrawing(76);
  expect(unknown).toEqual(planStrip(older, FRAME));
  expect(textsOf(unknown.shapes)).not.toContain("N");
});

test("planStrip() keeps the words of north on a short page, or leaves them out", () => {
  const { shapes } = planStrip(aDrawing(76), { ...FRAME, scale: 7.2, to: 1_000 });
  expect(textsOf(shapes)).toContain("N");
  for (const { at, text, size, strong, anchor } of wordsOf(shapes))
    if (anchor === "start" && /^(Line|Above)/.test(text))
      expect(at[0] + textWidth(text, size, strong)).toBeLessThanOrEqual(6 + 72);
});

test("planStrip() lets no words of north touch others, whichever way it points", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 719 }), (twice) => {
      const boxes = wordsOf(planStrip(aDrawing(twice / 2), FRAME).shapes).map(boxOf);
      for (const [index, one] of boxes.entries())
        for (const other of boxes.slice(index + 1)) {
          const apart =
            one.right <= other.left ||
            other.right <= one.left ||
            one.bottom <= other.top ||
            other.bottom <= one.top;
          expect(apart).toBe(true);
        }
    }),
  );
});

function boxOf({ at: [x, y], text, size, strong, anchor }: Words) {
  const width = textWidth(text, size, strong);
  const left = { start: x, middle: x - width / 2, end: x - width }[anchor];
  return { left, right: left + width, top: y - size * 0.8, bottom: y + size * 0.2 };
}
