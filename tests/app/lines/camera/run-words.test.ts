import { describe, expect, test } from "vitest";
import {
  coverageWords,
  isTied,
  problemsOfRun,
  residualsOf,
  sawWords,
  tiedWords,
} from "#app/lines/[lineId]/camera/run-words.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Anchor, Observation, Run } from "#lib/domain/facts/run.ts";

const RUN = { id: "r1", name: "Run 1", fromCounter: 0, toCounter: 9_650 } as Run;

function anchor(id: string, runId: string): Anchor {
  return { id, runId, kind: "cleanout", counter: 0, station: 0, note: "" };
}

function seen(runId: string, kind: Observation["kind"]): Observation {
  return { id: `${runId}-${kind}`, runId, kind } as Observation;
}

describe("tiedWords()", () => {
  test("tiedWords() counts only the run's own known points", () => {
    const start = (anchors: Anchor[]) => tiedWords(RUN, { anchors }).split(/[,;]/)[0];
    expect(start([anchor("a", "r2")])).toBe("This run isn’t tied to the line yet");
    expect(start([anchor("a", "r1")])).toBe("Tied at one point");
    expect(start([anchor("a", "r1"), anchor("b", "r1")])).toBe("Tied at 2 points");
  });
});

test("tiedWords() says what a reading from the main is, and that it needs no known point", () => {
  const back: Run = { ...RUN, looks: "downstream", measuredFrom: "main" };
  const said = "Tied at its zero, the main: 31.5 ft on the counter is 31.5 ft from the main.";
  expect(tiedWords(back, { anchors: [] })).toContain(said);
  expect(tiedWords(back, { anchors: [anchor("a", "r1")] })).toContain("prorated");
  expect(isTied(back, { anchors: [] })).toBe(true);
  expect(isTied({ ...back, measuredFrom: "access" }, { anchors: [anchor("a", "r2")] })).toBe(false);
});

describe("residualsOf()", () => {
  test("residualsOf() tells nothing of a single known point, which has no other to be held against", () => {
    const told = (anchorId: string, runId: string) => ({
      anchorId,
      runId,
      residual: 0,
      sentence: anchorId,
    });
    const residuals = [told("a", "r1"), told("b", "r2"), told("c", "r2")];
    expect(residualsOf(RUN, { residuals })).toEqual([]);
    expect(residualsOf({ ...RUN, id: "r2" }, { residuals })).toEqual(["b", "c"]);
  });
});

describe("coverageWords()", () => {
  test("coverageWords() finds the run’s own sentence", () => {
    const told = (runId: string) => ({ runId, spans: [], from: 0, to: 1, sentence: `${runId}.` });
    expect(coverageWords(RUN, { runCoverage: [told("r2"), told("r1")] })).toBe("r1.");
    expect(coverageWords(RUN, { runCoverage: [] })).toBe("");
  });
});

describe("sawWords()", () => {
  test("sawWords() counts tie-ins, defects and the rest", () => {
    const observations = [seen("r1", "tie-in"), seen("r1", "water"), seen("r2", "fault")];
    expect(sawWords(RUN, { observations })).toBe("1 tie-in and 1 other observation.");
    expect(sawWords(RUN, { observations: [] })).toBe("No observations yet.");
  });
});

describe("problemsOfRun()", () => {
  const file: Pick<LineFile, "runs" | "anchors" | "gaps" | "observations"> = {
    runs: [{ ...RUN, id: "r2" }, RUN],
    anchors: [anchor("a2", "r2"), anchor("a1", "r1")],
    gaps: [],
    observations: [],
  };

  test("problemsOfRun() finds what lies in the run or in anything of it, each sentence once", () => {
    const problems = [
      { path: "anchors.1.station", reason: "below-main", sentence: "Below the main." },
      { path: "runs.1.toCounter", reason: "x", sentence: "Below the main." },
      { path: "runs.0.toCounter", reason: "x", sentence: "Another run." },
      { path: "tieIns.1.station", reason: "x", sentence: "A tie-in." },
    ];
    expect(problemsOfRun(RUN, file, { problems })).toEqual(["Below the main."]);
  });
});
