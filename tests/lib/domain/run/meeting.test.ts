import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { meetingsOf } from "#lib/domain/run/meeting.ts";
import { stationObservations } from "#lib/domain/run/observe.ts";
import { aFile, aGap, anAnchor, anObservation, aRun, aTieIn } from "#tests/support/file.ts";

/** Run A from the main up to 70 ft; Run B from a cleanout at 100 ft down to 20 ft. */
const RUNS = [
  aRun("a", { name: "Run A", looks: "upstream", measuredFrom: "main", toCounter: 7_000 }),
  aRun("b", { name: "Run B", looks: "downstream", measuredFrom: "access", toCounter: 8_000 }),
];
const ANCHORS = [anAnchor("b", { kind: "cleanout", counter: 0, station: 10_000 })];

function meet(observations: LineFile["observations"], rest: Partial<LineFile> = {}) {
  const { line: _line, ...parts } = rest;
  const file = aFile({
    runs: RUNS,
    anchors: ANCHORS,
    tieIns: [aTieIn("T1"), aTieIn("T2")],
    observations,
    ...parts,
  });
  return meetingsOf(file, stationObservations(file));
}

const T1A = anObservation("a1", { runId: "a", counter: 3_000, tieInId: "T1" });
const T1B = anObservation("b1", { runId: "b", counter: 6_980, tieInId: "T1" });
const T2A = anObservation("a2", { runId: "a", counter: 5_000, tieInId: "T2" });
const T2B = anObservation("b2", { runId: "b", counter: 5_000, tieInId: "T2" });

test("runs from both ends meet where both saw the pipe, and agree on what they saw", () => {
  const [found, ...others] = meet([T1A, T1B, T2A, T2B]);
  expect(others).toEqual([]);
  expect(found?.stretch).toEqual({ from: 2_000, to: 7_000 });
  expect(found?.common).toEqual([
    { tieInId: "T1", difference: 20 },
    { tieInId: "T2", difference: 0 },
  ]);
  expect(found?.agrees).toBe(true);
  expect(found?.sentences).toEqual([
    "Run A and Run B both saw 20.0 to 70.0 ft, from opposite ends.",
    "They agree: T1 and T2 lie within 0.2 ft by both.",
  ]);
});

test("the disagreement in length is named, with which run puts it where", () => {
  const [found] = meet([T1A, { ...T1B, counter: 6_600 }, T2A, { ...T2B, counter: 4_600 }]);
  expect(found?.disagreement).toBe(400);
  expect(found?.agrees).toBe(false);
  expect(found?.sentences[1]).toBe(
    "Their lengths disagree: Run B puts their 2 common tie-ins 4.0 ft farther up than Run A. Check both zeros, and tie both runs to one point that both passed.",
  );
});

test("a tie-in that only one of them saw is named, unless the other could not see there", () => {
  expect(meet([T1A, T1B, T2A])[0]?.sentences).toContain(
    "T2 was seen by Run A and not by Run B, which saw the pipe there: check its video.",
  );
  const gaps = [aGap("b", { fromCounter: 4_500, toCounter: 5_500 })];
  expect(meet([T1A, T1B, T2A], { gaps })[0]?.onlyFirst).toEqual([]);
});

test("other materials at one place are named", () => {
  const change = (id: string, runId: string, counter: number, material: "pvc" | "concrete") =>
    anObservation(id, { runId, kind: "material", counter, material, tieInId: null });
  const seen = [change("m1", "a", 4_000, "pvc"), change("m2", "b", 6_000, "concrete")];
  expect(meet([T1A, T1B, ...seen])[0]?.sentences).toContain(
    "At 40.0 ft Run A noted PVC going up, and Run B concrete: check both videos.",
  );
});

test("nothing in common shows nothing, and says so", () => {
  expect(meet([])[0]?.sentences[1]).toBe(
    "They have no tie-in in common, so nothing shows whether their lengths match.",
  );
});

test("runs from one end, runs that do not reach one another, and relative ones meet nowhere", () => {
  expect(meet([T1A], { runs: RUNS.map((run) => ({ ...run, measuredFrom: "main" })) })).toEqual([]);
  const short = RUNS.map((run) => (run.id === "b" ? { ...run, toCounter: 2_000 } : run));
  expect(meet([], { runs: short })).toEqual([]);
  expect(meet([T1A, T1B], { anchors: [] })).toEqual([]);
});
