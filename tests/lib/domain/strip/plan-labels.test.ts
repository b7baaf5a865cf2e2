import fc from "fast-check";
import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawPlan } from "#lib/domain/strip/draw-plan.ts";
import { type Label, placeLabels } from "#lib/domain/strip/plan-labels.ts";
import { PLAN_FRAME } from "#lib/domain/strip/plan-scale.ts";
import type { Point } from "#lib/domain/strip/strip-shape.ts";
import { demoLines } from "#tests/support/demo.ts";
import { crossings, patches, tangles } from "#tests/support/plan-words.ts";

const SHEET = { width: 300, height: 200 };

/** A garage between a tie-in’s name and the pipe: there is no room for its name inside. */
const TIE_IN: Label = {
  at: [150, 100],
  text: "T2 24.0 ft",
  size: 7,
  strong: true,
  toward: [0, -1],
};
const GARAGE: Label = {
  at: [150, 88],
  text: "1316\nJuniper Court\ngarage",
  size: 6.5,
  tone: "soft",
  toward: null,
  or: [
    [146, 90],
    [154, 90],
  ],
};

function overlap(one: readonly Point[] = [], other: readonly Point[] = []): boolean {
  const ends = (points: readonly Point[], axis: 0 | 1) => {
    const all = points.map((point) => point[axis]);
    return [Math.min(...all), Math.max(...all)] as const;
  };
  return ([0, 1] as const).every((axis) => {
    const [from, to] = ends(one, axis);
    const [low, high] = ends(other, axis);
    return from < high && low < to;
  });
}

test("a building’s name that has no room over it goes beside it, and covers no tie-in’s", () => {
  const words = patches(placeLabels([TIE_IN, GARAGE], SHEET, []));
  expect([...words.keys()]).toEqual(["T2 24.0 ft", "1316", "Juniper Court", "garage"]);
  for (const line of ["1316", "Juniper Court", "garage"])
    expect(overlap(words.get("T2 24.0 ft"), words.get(line)), line).toBe(false);
});

test("a building’s name stays over it where there is room", () => {
  const words = patches(placeLabels([GARAGE], SHEET, []));
  const middle = words.get("Juniper Court") ?? [];
  const across = middle.map(([x]) => x);
  expect((Math.min(...across) + Math.max(...across)) / 2).toBeCloseTo(150, 6);
});

test("words lie over no other label’s line, and theirs goes under none", () => {
  const spot = fc.tuple(fc.integer({ min: 130, max: 170 }), fc.integer({ min: 90, max: 110 }));
  const some = fc.uniqueArray(spot, { minLength: 2, maxLength: 4, selector: String });
  fc.assert(
    fc.property(some, (spots) => {
      const labels = spots.map((at, nth): Label => {
        const toward: Point = [0, nth % 2 === 0 ? -1 : 1];
        return { at, text: `T${nth} 24.0 ft`, size: 7, strong: true, toward };
      });
      expect(crossings(placeLabels(labels, SHEET, []))).toEqual([]);
    }),
  );
});

test("lines from words to their places do not cross one another on a crowded line", async () => {
  const { fennel } = await demoLines();
  const report = reportOn(fennel, "2026-11-25");
  const crossed = [PLAN_FRAME.width, 620, 530, 430, 350, 270].map((width) => {
    const view = drawPlan(fennel, report, { ...PLAN_FRAME, width });
    return [width, tangles(view?.shapes ?? [])];
  });
  expect(crossed.filter(([, count]) => count !== 0)).toEqual([]);
});
