import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawPlan, drawPlans, planTiling } from "#lib/domain/strip/draw-plan.ts";
import { planAnswer } from "#lib/domain/strip/plan-words.ts";
import type { Point, Shape } from "#lib/domain/strip/strip-shape.ts";
import { aFile, aPoint, aProperty, aScopeItem, aTieIn } from "#tests/support/file.ts";
import { aBend, aFixedPoint, aShape, aTie } from "#tests/support/plan.ts";

const FRAME = { width: 704, height: 430 };

/** A line of 100 ft due east with a branch to the north at 40 ft and one to the south at 60 ft. */
function plan(rest: Parameters<typeof aFile>[0] = {}) {
  const file: LineFile = aFile({
    line: { bearing: 90, upperEnd: 10_000 },
    tieIns: [
      aTieIn("T1", { station: 4_000, side: "left", propertyId: "12", ownerAccepted: true }),
      aTieIn("T2", { station: 6_000, side: "right", kind: "unknown" }),
    ],
    ...rest,
  });
  const view = drawPlan(file, reportOn(file, "2026-11-25"), FRAME);
  if (view === null) throw new Error("no plan");
  return view;
}

function wordsOf(shapes: readonly Shape[]): string[] {
  return shapes.flatMap((shape) => (shape.kind === "words" ? [shape.text] : []));
}

function trunkOf(shapes: readonly Shape[]) {
  const found = shapes.find((shape) => shape.kind === "line" && shape.width === 2.2);
  return found?.kind === "line" ? found.points : [];
}

test("without a bearing nothing is drawn, and the page says why", () => {
  const file = aFile();
  expect(drawPlan(file, reportOn(file, "2026-11-25"), FRAME)).toBeNull();
  expect(planAnswer(file, { ties: [] })).toBe(
    "No bearing is entered, so no one knows which side is north",
  );
});

test("it is drawn to the scale that it names", () => {
  const view = plan();
  const [first, last] = trunkOf(view.shapes);
  const inches = ((last?.[0] ?? 0) - (first?.[0] ?? 0)) / 72;
  expect(inches * view.feetPerInch).toBeCloseTo(100, 6);
  expect(view.feetPerInch).toBe(20);
});

test("north is up: a line due east runs to the right, one due north upwards", () => {
  const [first, last] = trunkOf(plan().shapes);
  expect(last?.[1]).toBeCloseTo(first?.[1] ?? 0, 6);
  const [low, high] = trunkOf(plan({ line: { bearing: 0, upperEnd: 10_000 } }).shapes);
  expect(high?.[0]).toBeCloseTo(low?.[0] ?? 0, 6);
  expect(high?.[1]).toBeLessThan(low?.[1] ?? 0);
});

test("a bend turns the drawing and says itself", () => {
  const view = plan({ bends: [aBend("b", 5_000, { turn: "left", degrees: 90 })] });
  const path = trunkOf(view.shapes);
  expect(path).toHaveLength(3);
  expect(path[2]?.[0]).toBeCloseTo(path[1]?.[0] ?? 0, 6);
  expect(wordsOf(view.shapes)).toContain("bend 90° left, 50.0 ft");
});

test("tie-ins, points, work, fixed points, tapes and shapes stand on it with their words", () => {
  const view = plan({
    points: [aPoint("row", { kind: "right-of-way-line", station: 1_200 })],
    scope: [aScopeItem("w", { title: "Line it", kind: "line", from: 2_000, to: 5_000 })],
    fixedPoints: [
      aFixedPoint("A", { name: "hydrant", east: 0, north: 3_000 }),
      aFixedPoint("B", { name: "corner of 12", east: 8_000, north: 3_000 }),
    ],
    ties: [aTie("t", { fromDistance: 5_000, otherDistance: 5_000, side: "right" })],
    properties: [aProperty("12")],
    planShapes: [
      aShape("h", "30,20; 60,20; 60,50; 30,50", { name: "House", propertyId: "12" }),
      aShape("shed", "70,20; 80,20; 80,30; 70,30", { name: "Shed" }),
    ],
  });
  const said = wordsOf(view.shapes);
  for (const text of [
    "T1 40.0 ft",
    "T2 60.0 ft undocumented",
    "right-of-way line 12.0 ft",
    "Line it, 20.0 to 50.0 ft",
    "hydrant",
    "corner of 12",
    "50.0 ft",
    "12",
    "Fennel Row",
    "House",
    "Shed",
    "public main",
    "N",
    "due east",
  ])
    expect(said).toContain(text);
  expect(view.sentence).toBe(
    "Plan view, north up: the line leaves the main due east and runs 100.0 ft. T1 at 40.0 ft on the north side; T2 at 60.0 ft on the south side.",
  );
});

test("what is undocumented has another sign than what is on record", () => {
  const loud = plan().shapes.filter((shape) => shape.kind === "area" && shape.fill === "loud");
  expect(loud).toHaveLength(1);
});

test("whatever is entered lies on the sheet", () => {
  const bends = fc.array(
    fc.record({
      station: fc.integer({ min: 100, max: 9_900 }),
      degrees: fc.integer({ min: 1, max: 180 }),
    }),
    { maxLength: 4 },
  );
  const stations = fc.uniqueArray(fc.integer({ min: 0, max: 10_000 }), { maxLength: 8 });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 719 }), bends, stations, (twice, turns, places) => {
      const view = plan({
        line: { bearing: twice / 2, upperEnd: 10_000 },
        bends: turns.map(({ station, degrees }, at) => aBend(`b${at}`, station, { degrees })),
        tieIns: places.map((station, at) => aTieIn(`T${at + 1}`, { station })),
      });
      expect(view.height).toBeLessThanOrEqual(FRAME.height);
      for (const shape of view.shapes)
        for (const [x, y] of shape.kind === "words" ? [shape.at] : shape.points) {
          expect(x).toBeGreaterThanOrEqual(-0.5);
          expect(x).toBeLessThanOrEqual(view.width + 0.5);
          expect(y).toBeGreaterThanOrEqual(-0.5);
          expect(y).toBeLessThanOrEqual(view.height + 0.5);
        }
    }),
    { numRuns: 60 },
  );
});

/** A line of so many feet on this bearing, with the edge of a street, on sheets to these scales. */
function sheets(feet: number, allowed: readonly number[], bearing = 90) {
  const file: LineFile = aFile({
    line: { bearing, upperEnd: feet * 100 },
    tieIns: [aTieIn("T1", { station: feet * 90, side: "left", propertyId: "12" })],
    planShapes: [aShape("street", "-20,30; 60,30", { kind: "street-edge" })],
  });
  const report = reportOn(file, "2026-11-25");
  const paper = { frame: FRAME, allowed };
  return { views: drawPlans(file, report, paper), tiling: planTiling(file, report, paper) };
}

/** Inches of trunk on all sheets together. */
function trunkInches(views: readonly { readonly shapes: readonly Shape[] }[]): number {
  const pieces = views
    .flatMap(({ shapes }) => shapes)
    .flatMap((shape) => (shape.kind === "line" && shape.width === 2.2 ? [shape.points] : []));
  const points = pieces.flatMap((piece) =>
    piece
      .slice(1)
      .map(([x, y], at) => Math.hypot(x - (piece[at]?.[0] ?? x), y - (piece[at]?.[1] ?? y))),
  );
  return points.reduce((sum, each) => sum + each, 0) / 72;
}

/** Its points that lie off a sheet. */
function offPaper(shape: Shape, { width, height }: { width: number; height: number }): Point[] {
  const points = shape.kind === "words" ? [shape.at] : shape.points;
  return points.filter(([x, y]) => Math.min(x, y, width - x, height - y) < -0.5);
}

describe("drawPlans() to the authority’s scales", () => {
  test("takes the largest that fits, and no usual one between them", () => {
    const scaleOf = (allowed: readonly number[]) =>
      sheets(100, allowed).views.map(({ feetPerInch, isAllowed }) => [feetPerInch, isAllowed]);
    expect(scaleOf([])).toEqual([[20, true]]);
    expect(scaleOf([10, 30, 60])).toEqual([[30, true]]);
    expect(scaleOf([15, 40])).toEqual([[15, true]]);
  });

  test("cuts the plan at match lines where the smallest does not fit one sheet, and loses nothing", () => {
    const { views, tiling } = sheets(300, [10, 20]);
    expect(tiling).toEqual({ feetPerInch: 20, columns: 2, rows: 1, isAllowed: true });
    expect(views.map(({ sheet, of, feetPerInch }) => [sheet, of, feetPerInch])).toEqual([
      [1, 2, 20],
      [2, 2, 20],
    ]);
    expect(trunkInches(views) * 20).toBeCloseTo(300, 6);
    const words = views.map(({ shapes }) => wordsOf(shapes));
    expect(words[0]).toContain("match line: see sheet 2");
    expect(words[1]).toContain("match line: see sheet 1");
    expect(words.map((each) => each.some((text) => text.startsWith("T1")))).toEqual([false, true]);
    expect(words.map((each) => each.includes("public main"))).toEqual([true, false]);
    expect(words.every((each) => each.includes("N") && each.includes("40 ft"))).toBe(true);
  });

  test("cuts the other way too, and leaves out sheets with nothing on them", () => {
    const { views, tiling } = sheets(400, [20], 45);
    expect([tiling?.columns, tiling?.rows]).toEqual([2, 4]);
    expect(views.length).toBeLessThan(8);
    expect(views.every(({ of }) => of === views.length)).toBe(true);
    expect(trunkInches(views) * 20).toBeCloseTo(400, 6);
  });

  test("leaves out a sheet that has ground and none of the line", () => {
    const file: LineFile = aFile({
      line: { bearing: 90, upperEnd: 8_000 },
      planShapes: [aShape("far", "400,300; 460,300; 460,340; 400,340", { kind: "building" })],
    });
    const report = reportOn(file, "2026-11-25");
    const views = drawPlans(file, report, { frame: FRAME, allowed: [20] });
    expect(views.length).toBeGreaterThan(0);
    for (const view of views) expect(trunkOf(view.shapes).length).toBeGreaterThan(1);
    expect(trunkInches(views) * 20).toBeCloseTo(80, 6);
  });

  test("is on several sheets whole, whatever way the line runs, with nothing off the paper", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 359 }),
        fc.integer({ min: 50, max: 400 }),
        (way, feet) => {
          const { views } = sheets(feet, [20], way);
          expect(views.every(({ feetPerInch }) => feetPerInch === 20)).toBe(true);
          expect(trunkInches(views) * 20).toBeCloseTo(feet, 4);
          for (const view of views)
            expect(view.shapes.flatMap((shape) => offPaper(shape, view))).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });

  test("that would take more than twelve sheets is drawn to a usual scale, and says that it is not allowed", () => {
    const { views } = sheets(2_000, [5]);
    expect(views.map(({ feetPerInch, isAllowed }) => [feetPerInch, isAllowed])).toEqual([
      [400, false],
    ]);
  });
});
