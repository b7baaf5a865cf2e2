import fc from "fast-check";
import { expect, test } from "vitest";
import type { CoverageSpan } from "#lib/domain/findings/report.ts";
import { coverageOf, farthestLook, unseenPart, unseenStretches } from "#lib/domain/run/coverage.ts";
import { aFile, aGap, anAnchor, anObservation, aRun } from "#tests/support/file.ts";

test("coverageOf() says what a run saw, what it could not see and where none went", () => {
  const file = aFile({
    runs: [aRun("run", { toCounter: 8_800 })],
    anchors: [anAnchor("run")],
    gaps: [aGap("run", { fromCounter: 4_100, toCounter: 4_700 })],
  });
  expect(coverageOf(file, 10_000)).toEqual([
    { from: 0, to: 4_100, state: "seen" },
    { from: 4_100, to: 4_700, state: "under-water" },
    { from: 4_700, to: 8_800, state: "seen" },
    { from: 8_800, to: 10_000, state: "not-inspected" },
  ]);
});

test("coverageOf() lets a second run see what the first could not", () => {
  const file = aFile({
    runs: [aRun("a"), aRun("b", { looks: "downstream", toCounter: 6_000 })],
    anchors: [anAnchor("a"), anAnchor("b", { counter: 0, station: 6_000 })],
    gaps: [aGap("a", { fromCounter: 4_100, toCounter: 4_700 })],
  });
  expect(coverageOf(file, 10_000)).toEqual([{ from: 0, to: 10_000, state: "seen" }]);
});

test("coverageOf() ends a run without an end at the farthest thing noted in it", () => {
  const file = aFile({
    runs: [aRun("run", { toCounter: null })],
    anchors: [anAnchor("run")],
    observations: [anObservation("a", { counter: 2_000, toCounter: 2_600, kind: "fault" })],
  });
  expect(coverageOf(file, 3_000).map((span) => [span.to, span.state])).toEqual([
    [2_600, "seen"],
    [3_000, "not-inspected"],
  ]);
});

test("coverageOf() lets a relative-only run look nowhere", () => {
  expect(coverageOf(aFile({ runs: [aRun("run")] }), 3_000)).toEqual([
    { from: 0, to: 3_000, state: "not-inspected" },
  ]);
});

test("coverageOf() keeps a gap beyond the end of the run: the camera should have gone there", () => {
  const file = aFile({
    runs: [aRun("run", { toCounter: 3_000 })],
    anchors: [anAnchor("run")],
    gaps: [aGap("run", { fromCounter: 3_000, toCounter: 3_400, cause: "blocked" })],
  });
  expect(coverageOf(file, 4_000).map((span) => span.state)).toEqual([
    "seen",
    "blocked",
    "not-inspected",
  ]);
});

test("farthestLook() is where the farthest run ended", () => {
  const file = aFile({ runs: [aRun("run", { toCounter: 3_300 })], anchors: [anAnchor("run")] });
  expect(farthestLook(file)).toBe(3_300);
  expect(farthestLook(aFile())).toBe(0);
});

test("unseenPart() finds what hides part of a stretch, and nothing where all was seen", () => {
  const coverage = [
    { from: 0, to: 4_100, state: "seen" },
    { from: 4_100, to: 4_700, state: "under-water" },
    { from: 4_700, to: 9_000, state: "seen" },
  ] as const;
  expect(unseenPart(coverage, { from: 4_000, to: 4_110 })?.state).toBe("under-water");
  expect(unseenPart(coverage, { from: 4_000, to: 4_100 })).toBeNull();
  expect(unseenPart(coverage, { from: 5_000, to: 6_000 })).toBeNull();
});

test("unseenStretches() leaves out an end that a run may as well have reached, and nothing else", () => {
  const tail = (from: number, state: CoverageSpan["state"] = "not-inspected") =>
    unseenStretches([
      { from: 0, to: from, state: "seen" },
      { from, to: 16_500, state },
    ]);
  expect(tail(16_450)).toEqual([]);
  expect(tail(16_300)).toHaveLength(1);
  expect(tail(16_450, "under-water")).toHaveLength(1);
  const between = [
    { from: 0, to: 8_100, state: "seen" },
    { from: 8_100, to: 8_150, state: "not-inspected" },
    { from: 8_150, to: 16_500, state: "seen" },
  ] as const;
  expect(unseenStretches(between)).toEqual([between[1]]);
  expect(unseenStretches([{ from: 0, to: 50, state: "not-inspected" }])).toHaveLength(1);
});

test("coverageOf() covers the trunk once, and agrees foot by foot with looking at each run", () => {
  const counter = fc.integer({ min: 0, max: 30 }).map((feet) => feet * 100);
  const stretch = fc.tuple(counter, counter).map(([a, b]) => [Math.min(a, b), Math.max(a, b)]);
  const runs = fc.array(fc.record({ ran: stretch, gaps: fc.array(stretch, { maxLength: 3 }) }), {
    maxLength: 3,
  });
  fc.assert(
    fc.property(runs, (ran) => {
      const file = aFile({
        runs: ran.map(({ ran: [fromCounter = 0, toCounter = 0] }, index) =>
          aRun(`r${index}`, { fromCounter, toCounter }),
        ),
        anchors: ran.map((_, index) => anAnchor(`r${index}`)),
        gaps: ran.flatMap(({ gaps }, index) =>
          gaps.map(([fromCounter = 0, toCounter = 0], number) =>
            aGap(`r${index}`, { id: `g${index}-${number}`, fromCounter, toCounter }),
          ),
        ),
      });
      const spans = coverageOf(file, 3_000);
      expect(spans[0]?.from).toBe(0);
      expect(spans.at(-1)?.to).toBe(3_000);
      const inside = ([from = 0, to = 0]: number[], at: number) => from < at && at < to;
      for (let at = 50; at < 3_000; at += 100) {
        const seen = ran.some(
          (each) => inside(each.ran, at) && !each.gaps.some((gap) => inside(gap, at)),
        );
        const span = spans.filter(({ from, to }) => from < at && at < to);
        expect(span).toHaveLength(1);
        expect(span[0]?.state === "seen").toBe(seen);
      }
    }),
  );
});
