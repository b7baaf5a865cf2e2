import { describe, expect, test } from "vitest";
import { drawingPages } from "#lib/documents/drawing-pages.ts";
import type { StripDrawing } from "#lib/domain/strip/drawing.ts";

function drawingOf(extent: number): StripDrawing {
  return {
    extent,
    ticks: [],
    above: [],
    below: [],
    onPipe: [],
    joins: [],
    pipes: [{ from: 0, to: extent, material: "pvc", words: "PVC" }],
    bands: [],
    title: "",
  };
}

describe("drawingPages()", () => {
  test("cuts a line of 400 ft into sheets that follow on each other, to scale", () => {
    const { feetPerInch, pages } = drawingPages(drawingOf(40_000));
    expect(feetPerInch).toBe(20);
    expect(pages.map((page) => [page.from, page.to])).toEqual([
      [0, 14_000],
      [14_000, 28_000],
      [28_000, 40_000],
    ]);
  });

  test("draws a match line on both sheets where one is cut, and none at the ends of the line", () => {
    const { feetPerInch, pages } = drawingPages(drawingOf(40_000));
    const matches = pages.map(({ plan }) =>
      plan.shapes.flatMap((shape) => {
        if (shape.kind !== "line" || !shape.dash) return [];
        const [one, other] = shape.points;
        const whole = one?.[1] === 0 && other?.[1] === plan.height && one[0] === other[0];
        return whole ? [one[0]] : [];
      }),
    );
    const right = 6 + (140 * 72) / feetPerInch;
    expect(matches).toEqual([[right], [6, right], [6]]);
  });

  test("draws no match line where one sheet is enough", () => {
    const { pages } = drawingPages(drawingOf(5_000));
    expect(pages).toHaveLength(1);
    expect(pages[0]?.plan.shapes.some((shape) => shape.kind === "line" && shape.dash)).toBe(false);
  });
});
