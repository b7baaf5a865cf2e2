import { expect, test } from "vitest";
import { FOLD, NUMBER_TEN, visibleBox } from "#lib/documents/window.ts";

/*
 * Sources. USPS Publication 28 appendix A1 (http://pe.usps.gov/text/pub28/28apa_002.htm) and DMM
 * 601.6.3: the address must show with 1/8 in around it through the insert's full movement.
 * #10 envelope 4-1/8 × 9-1/2 in; window 1/2 in from the bottom: published. Window 1-1/8 × 4-1/2 in,
 * 7/8 in from the left: from memory, the usual catalog size.
 * The boxes are computed from those sizes.
 */

function inches(points: number): number {
  return Math.round((points / 72) * 10_000) / 10_000;
}

test("visibleBox() of an equal third leaves 5/12 in of height, two and a half lines of 12 points", () => {
  const box = visibleBox(NUMBER_TEN, 11 / 3);
  expect(inches(box.left)).toBe(1);
  expect(inches(box.right)).toBe(4.25);
  expect(inches(box.top)).toBe(2.625);
  expect(inches(box.bottom)).toBe(3.0417);
  expect(inches(box.bottom - box.top)).toBe(0.4167);
});

test("visibleBox() of an equal third is x 72 to 306 and y 189 to 219 points", () => {
  const box = visibleBox(NUMBER_TEN, 11 / 3);
  expect(box.left).toBe(72);
  expect(box.right).toBe(306);
  expect(box.top).toBe(189);
  expect(Math.round(box.bottom)).toBe(219);
});

test("visibleBox() is as high as the fold less 3.25 in", () => {
  for (const fold of [3.5, 3.917, FOLD, 4.1]) {
    const box = visibleBox(NUMBER_TEN, fold);
    expect(inches(box.bottom - box.top)).toBeCloseTo(fold - 3.25, 3);
  }
});

test("visibleBox() holds four lines of 12 points from a fold of 3.917 in on", () => {
  const four = 48;
  const height = (fold: number) => {
    const box = visibleBox(NUMBER_TEN, fold);
    return box.bottom - box.top;
  };
  expect(height(3.917)).toBeGreaterThanOrEqual(four);
  expect(height(3.91)).toBeLessThan(four);
});

test("visibleBox() of our own fold is wide 3-1/4 in and high 3/4 in", () => {
  const box = visibleBox(NUMBER_TEN, FOLD);
  expect(inches(box.right - box.left)).toBe(3.25);
  expect(inches(box.bottom - box.top)).toBe(0.75);
});
