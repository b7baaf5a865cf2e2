import { expect, test } from "vitest";
import { RUN_ENDS } from "#lib/domain/facts/run.ts";
import { runCoverageOf } from "#lib/domain/run/run-coverage.ts";
import { aFile, aGap, anAnchor, anObservation, aRun } from "#tests/support/file.ts";

const ANCHORS = [anAnchor("run", { counter: 0, station: 600 })];

test("runCoverageOf() tells where a run went in, where it was blind, where it saw again and how it ended", () => {
  const [found] = runCoverageOf({
    runs: [aRun("run", { toCounter: 8_000, ended: "blocked" })],
    anchors: ANCHORS,
    gaps: [aGap("run", { fromCounter: 3_000, toCounter: 3_600 })],
    observations: [],
  });
  expect(found).toEqual({
    runId: "run",
    from: 600,
    to: 8_600,
    spans: [
      { from: 600, to: 3_600, state: "seen" },
      { from: 3_600, to: 4_200, state: "under-water" },
      { from: 4_200, to: 8_600, state: "seen" },
    ],
    sentence:
      "Went in at Alley cleanout (6.0 ft) and looked upstream to 86.0 ft, where it was blocked. It could not see from 36.0 to 42.0 ft: under water; it saw again from there.",
  });
});

test("runCoverageOf() tells gaps in the order in which a camera going downstream met them", () => {
  const [found] = runCoverageOf({
    runs: [aRun("run", { looks: "downstream", toCounter: 9_000, ended: "reached-main" })],
    anchors: [anAnchor("run", { counter: 9_000, station: 0 })],
    gaps: [
      aGap("run", { fromCounter: 7_000, toCounter: 9_000, cause: "blocked" }),
      aGap("run", { fromCounter: 1_000, toCounter: 2_000, cause: "not-in-view" }),
    ],
    observations: [],
  });
  expect(found?.sentence).toBe(
    "Went in at Alley cleanout (90.0 ft) and looked downstream to 0.0 ft, where it reached the main. It could not see from 80.0 to 70.0 ft: out of view; it saw again from there. It could not see from 20.0 to 0.0 ft: blocked.",
  );
  expect(found).toMatchObject({ from: 9_000, to: 0 });
});

test("runCoverageOf() tells a run that nothing ties to the line in counter readings, without spans", () => {
  const [found] = runCoverageOf({
    runs: [aRun("run", { accessPoint: "", toCounter: null, ended: "turned-back" })],
    anchors: [],
    gaps: [],
    observations: [anObservation("o", { counter: 5_500 })],
  });
  expect(found).toMatchObject({ spans: [], from: null, to: null });
  expect(found?.sentence).toBe(
    "Went in and looked upstream from 0.0 to 55.0 ft on the counter, where it was turned back. It is not tied to the line, so it has no stations.",
  );
});

test.each(RUN_ENDS)(
  "runCoverageOf() has a sentence of its own for a run that ended as %s",
  (ended) => {
    const told = RUN_ENDS.map((each) => {
      const runs = [aRun("run", { ended: each })];
      return (
        runCoverageOf({ runs, anchors: ANCHORS, gaps: [], observations: [] })[0]?.sentence ?? ""
      );
    });
    const own = told[RUN_ENDS.indexOf(ended)] ?? "";
    expect(own).toMatch(/ to 106\.0 ft[,;] .+\./);
    expect(told.filter((sentence) => sentence === own)).toHaveLength(1);
  },
);

test("runCoverageOf() tells a pull-back as it was made, and covers the same pipe", () => {
  const back = aRun("run", {
    looks: "downstream",
    measuredFrom: "main",
    accessPoint: "House cleanout",
    toCounter: 6_200,
    ended: "reached-upper-end",
  });
  const [told] = runCoverageOf(aFile({ runs: [back] }));
  expect(told?.sentence).toBe(
    "Went in at House cleanout and pulled back, looking downstream, from 0.0 ft to 62.0 ft, where it reached the upper end of the line; its footage is measured from the main. It saw the whole pipe.",
  );
  expect(told?.spans).toEqual([{ from: 0, to: 6_200, state: "seen" }]);
  expect([told?.from, told?.to]).toEqual([0, 6_200]);
  // That it reached the main was before it was pulled back: the drawing marks that at the main.
  const [unsaid] = runCoverageOf(aFile({ runs: [{ ...back, ended: "unknown" }] }));
  expect(unsaid?.sentence).toContain("from 0.0 ft to 62.0 ft; its footage is measured");
  const [pushed] = runCoverageOf(aFile({ runs: [{ ...back, ended: "reached-main" }] }));
  expect([pushed?.from, pushed?.to]).toEqual([6_200, 0]);
  expect(pushed?.sentence).toContain("from 0.0 ft to 62.0 ft; its footage is measured");
  const torn = { ...back, accessPoint: "" };
  const anchors = [anAnchor("run", { counter: 9_200, station: 0 })];
  expect(runCoverageOf(aFile({ runs: [torn], anchors }))[0]?.sentence).toContain(
    "Went in and pulled back, looking downstream, from the main; its footage is measured from the main. Its known points contradict that, so it has no stations.",
  );
});
