import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Run } from "#lib/domain/facts/run.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { anchorProblems } from "#lib/domain/run/convert.ts";
import { readingWords } from "#lib/domain/run/footage.ts";
import { counted, listed } from "../names.ts";

/** What a run is tied to, and what follows for its readings. */
export function tiedWords(run: Run, { anchors }: Pick<LineFile, "anchors">): string {
  const count = anchors.filter((anchor) => anchor.runId === run.id).length;
  if (run.measuredFrom === "main") return fromMainWords(run, count);
  if (count === 0)
    return "This run isn’t tied to the line yet, so its readings have no stations. Enter a known point below.";
  if (count === 1)
    return "Tied at one point; readings are shifted to it. A second point would also show whether the counter ran long or short.";
  return `Tied at ${count} points; readings between them are prorated.`;
}

/** Whether a run's known points contradict what it says of itself: then how it was made is asked anew. */
export function isAgainstItself(run: Run, { anchors }: Pick<LineFile, "anchors">): boolean {
  return anchorProblems(run, anchors).some(
    ({ reason }) => reason !== "below-main" && reason !== "anchors-stretched",
  );
}

/** Whether anything ties a run to the line: a known point, or a zero at the main. */
export function isTied(run: Run, { anchors }: Pick<LineFile, "anchors">): boolean {
  return run.measuredFrom === "main" || anchors.some((anchor) => anchor.runId === run.id);
}

function fromMainWords(run: Run, count: number): string {
  const said = `Tied at its zero, the main: ${readingWords(run, 3_150)}`;
  if (count === 0)
    return `${said} A known point farther up would also show whether the counter ran long or short.`;
  const points = count === 1 ? "the known point" : `the ${count} known points`;
  return `${said} Readings between there and ${points} are prorated.`;
}

/** Where a run went in, which way, where it could not see, and how it ended. */
export function coverageWords(run: Run, { runCoverage }: Pick<Report, "runCoverage">): string {
  return runCoverage.find(({ runId }) => runId === run.id)?.sentence ?? "";
}

/** What each known point of a run is worth beside its others; nothing where there is only one. */
export function residualsOf(run: Run, { residuals }: Pick<Report, "residuals">): string[] {
  const own = residuals.filter(({ runId }) => runId === run.id);
  return own.length < 2 ? [] : own.map(({ sentence }) => sentence);
}

/** The counts of what a run saw: `7 tie-ins, 3 defects and 2 other observations.`. */
export function sawWords(run: Run, { observations }: Pick<LineFile, "observations">): string {
  const own = observations.filter((seen) => seen.runId === run.id);
  if (own.length === 0) return "No observations yet.";
  const tieIns = own.filter((seen) => seen.kind === "tie-in").length;
  const defects = own.filter((seen) => seen.kind === "fault").length;
  const rest = own.length - tieIns - defects;
  const parts = [
    tieIns === 0 ? "" : counted(tieIns, "tie-in"),
    defects === 0 ? "" : counted(defects, "defect"),
    rest === 0 ? "" : counted(rest, "other observation"),
  ].filter((part) => part !== "");
  return `${listed(parts)}.`;
}

/** Problems of the file that lie in one run: in itself, its anchors, gaps or observations. */
export function problemsOfRun(
  run: Run,
  file: Pick<LineFile, "runs" | "anchors" | "gaps" | "observations">,
  { problems }: Pick<Report, "problems">,
): string[] {
  const mine = problems.filter(({ path }) => {
    const [list = "", row = ""] = path.split(".");
    if (list === "runs") return file.runs[Number(row)]?.id === run.id;
    if (list !== "anchors" && list !== "gaps" && list !== "observations") return false;
    return file[list][Number(row)]?.runId === run.id;
  });
  return [...new Set(mine.map((problem) => problem.sentence))];
}
