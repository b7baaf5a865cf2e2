import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { loadBand, slopeBand } from "#lib/domain/strip/capacity-band.ts";
import { drawStrip } from "#lib/domain/strip/draw.ts";
import { layStrip } from "#lib/domain/strip/layout.ts";
import { aFixture, aLevel } from "#tests/support/capacity.ts";
import { aFile, anAnchor, anObservation, aProperty, aRun, aTieIn } from "#tests/support/file.ts";

const LINE = {
  line: { plumbingCode: "ipc" },
  properties: [aProperty("p12")],
  tieIns: [aTieIn("T1", { station: 6_000, propertyId: "p12" })],
} as const;

const LEVELS = [
  aLevel("low", { station: 1_000, invert: 0, method: "level" }),
  aLevel("top", { station: 10_000, invert: 60, method: "level" }),
];

function answersOn(overrides: Parameters<typeof aFile>[0]) {
  const file = aFile({ ...LINE, ...overrides });
  return { file, report: reportOn(file, "2026-11-25") };
}

test("slopeBand() has a cell from level to level, crossed where the slope fails", () => {
  const { report } = answersOn({ levels: LEVELS });
  expect(slopeBand(report).cells).toEqual([
    {
      from: 1_000,
      to: 10_000,
      words: "0.67%, too flat",
      brief: "0.67%",
      loud: false,
      hatch: "cross",
      id: "slope:1000",
    },
  ]);
});

test("loadBand() has cells only where fixtures are counted, sparse where the load is open", () => {
  const { report } = answersOn({ fixtures: [aFixture("p12")] });
  const cells = loadBand(report).cells.map(({ from, to, words, hatch }) => [
    from,
    to,
    words,
    hatch,
  ]);
  expect(cells).toEqual([[0, 6_000, "5 units, within the code limit", "none"]]);
  const open = answersOn({
    fixtures: [aFixture("p12")],
    tieIns: [...LINE.tieIns, aTieIn("T2", { station: 8_000 })],
  });
  const [first] = loadBand(open.report).cells;
  expect(first).toMatchObject({
    words: "at least 5 units, can’t be determined",
    brief: "5+",
    hatch: "sparse",
    loud: false,
  });
});

test("a line without levels and fixtures has no such bands, and no spots for them", () => {
  const { file, report } = answersOn({});
  const drawing = drawStrip(file, report, "all");
  const titles = drawing.bands.map(({ title }) => title);
  expect(titles).not.toContain("Slope");
  expect(titles).not.toContain("Load");
  expect(drawing.spots.filter(({ id }) => /^(slope|load):/.test(id))).toEqual([]);
});

test("the small strip of the camera page keeps its runs, and has room for the slope", () => {
  const { file, report } = answersOn({
    levels: LEVELS,
    fixtures: [aFixture("p12")],
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
  });
  const drawing = drawStrip(file, report, "camera");
  const layout = layStrip(drawing, { width: 900, size: "small", zoom: 1 });
  expect(layout.runs).toHaveLength(1);
  expect(layout.bands.map(({ title }) => title)).toEqual(["Slope"]);
});

test("every cell of the two bands has a spot under its id", () => {
  const { file, report } = answersOn({ levels: LEVELS, fixtures: [aFixture("p12")] });
  const drawing = drawStrip(file, report, "camera");
  const spots = new Set(drawing.spots.map(({ id }) => id));
  const cells = drawing.bands
    .filter(({ title }) => title !== "Camera")
    .flatMap(({ cells }) => cells);
  expect(cells.length).toBeGreaterThan(2);
  expect(cells.every(({ id }) => id !== undefined && spots.has(id))).toBe(true);
});

test("slopeBand() calls a slope over standing water an average, and never steep enough", () => {
  const { report } = answersOn({
    levels: [
      aLevel("low", { station: 1_000, invert: 0, method: "level" }),
      aLevel("steep", { station: 10_000, invert: 360, method: "level" }),
    ],
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
    observations: [anObservation("w", { kind: "water", counter: 4_000, toCounter: 4_600 })],
  });
  expect(slopeBand(report).cells[0]).toMatchObject({
    words: "4.00%, average only: standing water",
    brief: "average 4.00%",
    hatch: "sparse",
  });
});
