import fc from "fast-check";
import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawPlan, planAnswer } from "#lib/domain/strip/draw-plan.ts";
import type { Shape } from "#lib/domain/strip/strip-shape.ts";
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
