import { expect, test } from "vitest";
import { FRAME, sectionShape } from "#app/lines/[lineId]/camera/capacity/section-shape.ts";
import { levelFindings } from "#lib/domain/capacity/levels.ts";
import { slopeFindings } from "#lib/domain/capacity/slopes.ts";
import type { Level } from "#lib/domain/facts/capacity.ts";
import { aLevel, NO_CAPACITY } from "#tests/support/capacity.ts";

function shapeOf(...levels: Level[]) {
  const found = levelFindings(levels);
  const rule = { code: null, chosen: null, water: [], diametersBetween: () => [6] };
  const slopes = slopeFindings(found, rule);
  return sectionShape({ ...NO_CAPACITY, levels: found, slopes });
}

const LOW = aLevel("low", { ground: 10_000, depth: 700 });

test("there is no long section before two inverts are known", () => {
  expect(shapeOf(LOW)).toBeNull();
  expect(shapeOf(LOW, aLevel("bare", { station: 4_000, depth: 600 }))).toBeNull();
});

test("the long section spans the frame, with ground and whiskers inside of it", () => {
  const shape = shapeOf(LOW, aLevel("top", { station: 9_600, invert: 9_500 }));
  const [first, last] = shape?.points ?? [];
  expect(first?.x).toBe(FRAME.left);
  expect(last?.x).toBe(FRAME.width - FRAME.right);
  expect(last?.groundY).toBeNull();
  expect(first?.groundY).toBe(FRAME.top);
  expect(first?.lowY).toBe(FRAME.height - FRAME.bottom);
  expect(first?.highY).toBeLessThan(first?.invertY ?? 0);
  expect(shape?.slopes).toHaveLength(1);
});

test("stations and slopes that stand too close to read are left to the table", () => {
  const shape = shapeOf(
    LOW,
    aLevel("next", { station: 100, invert: 9_310 }),
    aLevel("middle", { station: 5_000, invert: 9_400 }),
    aLevel("top", { station: 9_600, invert: 9_500 }),
  );
  expect(shape?.points.map(({ named }) => named)).toEqual([true, false, true, true]);
  expect(shape?.slopes.map(({ at }) => at)).toEqual([1, 2]);
});
