import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawStrip } from "#lib/domain/strip/draw.ts";
import { layStrip } from "#lib/domain/strip/layout.ts";
import { across, joinsOn, type StripAxis, xOn } from "#lib/domain/strip/places.ts";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import { sampleLine } from "#tests/support/sample-line.ts";

const AXIS: StripAxis = { left: 10, right: 110, from: 2_000, to: 12_000, perHundredth: 0.01 };

function drawn() {
  const { file } = sampleLine();
  return drawStrip(file, reportOn(file, "2026-11-25"), "all");
}

test("xOn() puts the first station shown at the left end, and the last at the right", () => {
  expect(xOn(AXIS, 2_000)).toBe(10);
  expect(xOn(AXIS, 12_000)).toBe(110);
  expect(xOn(AXIS, 7_000)).toBe(60);
});

test("across() keeps of a stretch what is shown, and nothing where none is", () => {
  expect(across(AXIS, { from: 0, to: 7_000 })).toEqual({ left: 10, right: 60 });
  expect(across(AXIS, { from: 7_000, to: 90_000 })).toEqual({ left: 60, right: 110 });
  expect(across(AXIS, { from: 0, to: 2_000 })).toBeNull();
  expect(across(AXIS, { from: 5_000, to: 5_000 })).toBeNull();
});

test("joinsOn() leaves out a pairing of which one end is not on the sheet", () => {
  const drawing = drawn();
  const whole = { ...AXIS, from: 0, to: drawing.extent };
  const all = joinsOn(whole, drawing);
  expect(all.length).toBe(drawing.joins.length);
  expect(all.length).toBeGreaterThan(0);
  const last = Math.max(
    ...drawing.below
      .filter(({ id }) => all.some(({ join }) => join.tieInId === id))
      .map(({ station }) => station),
  );
  expect(joinsOn({ ...whole, to: last - 1 }, drawing).length).toBeLessThan(all.length);
});

test("a pairing stands at the same share of the line on screen and on paper", () => {
  const drawing = drawn();
  const laid = layStrip(drawing, { width: 1_000, size: "large", zoom: 1 });
  const plan = planStrip(drawing, {
    ...{ width: 500, scale: null, height: null },
    from: 0,
    to: drawing.extent,
  });
  const wide = plan.shapes.find((shape) => shape.kind === "line" && shape.width === 1.1);
  if (wide?.kind !== "line") throw new Error("The plan has no wall");
  const [[left], [right]] = wide.points as [[number, number], [number, number]];
  const onPaper = plan.shapes.flatMap((shape) =>
    shape.kind === "line" && shape.width === 1 && shape.points.length === 2 && shape.tone === "ink"
      ? [shape.points.map(([x]) => (x - left) / (right - left))]
      : [],
  );
  const onScreen = laid.joins.map(({ fromX, toX }) =>
    [fromX, toX].map((x) => (x - laid.left) / (laid.right - laid.left)),
  );
  for (const shares of onScreen)
    expect(
      onPaper.some((other) =>
        other.every((share, end) => Math.abs(share - (shares[end] ?? 2)) < 1e-9),
      ),
    ).toBe(true);
});
