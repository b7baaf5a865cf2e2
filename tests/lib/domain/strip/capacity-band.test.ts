import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/file/report-on.ts";
import { capacityBand } from "#lib/domain/strip/capacity-band.ts";
import { drawStrip } from "#lib/domain/strip/draw.ts";
import { aFixture, aLevel } from "#tests/support/capacity.ts";
import { aFile, aProperty, aTieIn } from "#tests/support/file.ts";

const LINE = {
  line: { plumbingCode: "ipc" },
  properties: [aProperty("p12")],
  tieIns: [aTieIn("T1", { station: 6_000, propertyId: "p12" })],
} as const;

const LEVELS = [
  aLevel("low", { station: 1_000, invert: 0, method: "level" }),
  aLevel("top", { station: 10_000, invert: 60, method: "level" }),
];

function bandOf(overrides: Parameters<typeof aFile>[0]) {
  const file = aFile({ ...LINE, ...overrides });
  return { file, band: capacityBand(reportOn(file, "2026-11-25")) };
}

test("the band has cells only where slope or load is known, crossed where one of them fails", () => {
  const { band } = bandOf({ levels: LEVELS, fixtures: [aFixture("p12")] });
  expect(
    band.cells.map(({ from, to, words, brief, hatch }) => [from, to, words, brief, hatch]),
  ).toEqual([
    [0, 1_000, "5 fixture units, within the table", "5", "none"],
    [1_000, 6_000, "0.67%, too flat; 5 fixture units, not in the table", "0.67%", "cross"],
    [6_000, 10_000, "0.67%, too flat", "0.67%", "cross"],
  ]);
  expect(band.cells.every(({ loud }) => !loud)).toBe(true);
});

test("a line without levels and fixtures has no such band", () => {
  const { file, band } = bandOf({});
  expect(band.cells).toEqual([]);
  const titles = drawStrip(file, reportOn(file, "2026-11-25"), "all").bands.map(
    ({ title }) => title,
  );
  expect(titles).not.toContain(band.title);
});
