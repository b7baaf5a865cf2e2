import type { LineFile } from "../facts/line-file.ts";
import type { RunEnd } from "../facts/run.ts";
import type { Report } from "../findings/report.ts";
import { coverageCell, merged } from "./bands.ts";
import type { FileDrawing, StripRun } from "./drawing.ts";

const ENDINGS: Record<RunEnd, string> = {
  "reached-main": "main",
  "reached-upper-end": "upper end",
  blocked: "blocked",
  "under-water": "under water",
  "turned-back": "turned back",
  "out-of-cable": "out of cable",
  unknown: "",
};

/** One row for each run that is tied to the line, with what it saw and how it ended. */
export function runRows(file: LineFile, report: Report): StripRun[] {
  return report.runCoverage.flatMap((found): StripRun[] => {
    const at = file.runs.findIndex((one) => one.id === found.runId);
    const run = file.runs[at];
    if (run === undefined || found.spans.length === 0) return [];
    return [
      {
        id: run.id,
        name: run.name.trim() || `Run ${at + 1}`,
        from: found.from,
        to: found.to,
        ending: ENDINGS[run.ended],
        cells: merged(found.spans.map(coverageCell)),
        sentence: found.sentence,
      },
    ];
  });
}

/** Runs and tie-ins that nothing ties to the line. */
export function besideStrip(file: LineFile, report: Report): FileDrawing["beside"] {
  const runs = report.runCoverage
    .filter((found) => found.spans.length === 0)
    .flatMap(({ runId, sentence }) => {
      const run = file.runs.find((one) => one.id === runId);
      if (run === undefined) return [];
      const label = run.name.trim() || "a run";
      return [{ id: runId, label, sentence: `${label}: ${sentence}` }];
    });
  const tieIns = report.tieIns
    .filter((found) => found.station === null && found.tieIn.parentId === null)
    .map(({ tieIn }) => {
      const label = tieIn.label.trim() || "a tie-in";
      return { id: tieIn.id, label, sentence: `${label}: no station, relative only.` };
    });
  return [...runs, ...tieIns];
}
