import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawingPages, PLAN_WIDTH } from "#lib/documents/drawing-pages.ts";
import { textWidth } from "#lib/domain/say/text-width.ts";
import type { StripDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import type { StripPlan } from "#lib/domain/strip/strip-shape.ts";

const letters = fc.constantFrom(..."abcdefghij mnorstuvw0123456789.");

function aMark(station: number, label: string, detail: string): StripMark {
  return {
    id: `at-${station}`,
    kind: "tie-in",
    station,
    toStation: null,
    whisker: 0,
    side: "left",
    label,
    detail,
    loud: false,
    sentence: "",
  };
}

/** Words off the sheet, or of the drawing across a match line. */
function tornWords({ shapes, foot }: StripPlan): string[] {
  const lines = shapes.filter((shape) => shape.kind === "line" && shape.dash);
  const cuts = lines.map((shape) => (shape.kind === "line" ? (shape.points[0]?.[0] ?? 0) : 0));
  const words = shapes.filter((shape) => shape.kind === "words");
  const torn = words.filter(({ at: [x, y], text, size, strong, anchor }) => {
    const width = textWidth(text, size, strong);
    const left = x - { start: 0, middle: width / 2, end: width }[anchor];
    const isOff = left < 0 || left + width > PLAN_WIDTH;
    return isOff || (y <= foot && cuts.some((cut) => left < cut && cut < left + width));
  });
  return torn.map(({ text }) => text);
}

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
    expect(feetPerInch).toBe(30);
    expect(pages.map((page) => [page.from, page.to])).toEqual([
      [0, 20_000],
      [20_000, 40_000],
    ]);
  });

  test("draws a match line on both sheets where one is cut, and none at the ends of the line", () => {
    const { feetPerInch, pages } = drawingPages(drawingOf(40_000));
    const matches = pages.map(({ plan }) =>
      plan.shapes.flatMap((shape) => {
        if (shape.kind !== "line" || !shape.dash) return [];
        const [one, other] = shape.points;
        const whole = one?.[1] === 0 && other?.[1] === plan.foot && one[0] === other[0];
        return whole ? [one[0]] : [];
      }),
    );
    const right = 6 + (200 * 72) / feetPerInch;
    expect(matches).toEqual([[right], [6]]);
  });

  test("takes one sheet for what fits on one, at the largest scale that does", () => {
    const asked = [9_600, 16_500, 28_000, 38_000].map((extent) => drawingPages(drawingOf(extent)));
    expect(asked.map(({ pages }) => pages.length)).toEqual([1, 1, 1, 1]);
    expect(asked.map(({ feetPerInch }) => feetPerInch)).toEqual([10, 20, 30, 40]);
  });

  test("takes no scale but those that the authority allows, over as many sheets as that needs", () => {
    const asked = [9_600, 16_500, 40_000].map((extent) =>
      drawingPages(drawingOf(extent), [15, 20]),
    );
    expect(asked.map(({ feetPerInch, pages }) => [feetPerInch, pages.length])).toEqual([
      [15, 1],
      [20, 1],
      [15, 3],
    ]);
    const tiny = drawingPages(drawingOf(9_600), [1]);
    expect([tiny.feetPerInch, tiny.pages.at(-1)?.to]).toEqual([1, 9_600]);
  });

  test("keeps to the allowed scale where much stands close together", () => {
    const below = Array.from({ length: 40 }, (_, at) => aMark(at * 20, `T${at}`, "Fennel Row 12"));
    expect(drawingPages({ ...drawingOf(5_000), below }, [25]).feetPerInch).toBe(25);
  });

  test("cuts where nothing is marked", () => {
    const below = [19_900, 20_100, 20_300].map((station) => aMark(station, "T", ""));
    const { pages } = drawingPages({ ...drawingOf(40_000), below });
    expect(pages.map(({ to }) => to)).toEqual([19_000, 40_000]);
  });

  test("lets no words of the drawing lie across a cut, nor any off the sheet", () => {
    const mark = fc.record({
      station: fc.integer({ min: 0, max: 40_000 }),
      label: fc.string({ minLength: 1, maxLength: 14, unit: letters }),
      detail: fc.string({ maxLength: 30, unit: letters }),
    });
    const marks = fc.array(mark, { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(marks, marks, (one, other) => {
        const above = one.map(({ station, label, detail }) => aMark(station, label, detail));
        const below = other.map(({ station, label, detail }) => aMark(station, label, detail));
        const stations = [...above, ...below].map(({ station }) => station).sort((a, b) => a - b);
        const cells = stations.map((from, index) => ({
          from,
          to: stations[index + 1] ?? 40_000,
          words: "Camera saw it",
          loud: false,
          hatch: "none" as const,
        }));
        const ticks = Array.from({ length: 41 }, (_, index) => index * 1_000);
        const bands = [{ title: "What the camera saw", cells }];
        const { pages } = drawingPages({ ...drawingOf(40_000), above, below, ticks, bands });
        for (const { plan } of pages) expect(tornWords(plan)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test("draws no match line where one sheet is enough", () => {
    const { pages } = drawingPages(drawingOf(5_000));
    expect(pages).toHaveLength(1);
    expect(pages[0]?.plan.shapes.some((shape) => shape.kind === "line" && shape.dash)).toBe(false);
  });
});
