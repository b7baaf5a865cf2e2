import type { LineFile } from "../facts/line-file.ts";
import type { Anchor, Run } from "../facts/run.ts";
import type { AnchorResidual } from "../findings/report.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { anchorProblems, converterFor } from "./convert.ts";
import { knownPoints } from "./footage.ts";

type AnchorFacts = Pick<LineFile, "runs" | "anchors">;

/**
 * How far each anchor lies from where the run's other anchors put its counter reading, worked out
 * without it. Above zero: farther up the line than they say. Hundredths of a foot. Where leaving one
 * anchor out ends a contradiction, that one is the first to check.
 */
export function anchorResiduals(file: AnchorFacts): AnchorResidual[] {
  return file.anchors.flatMap((anchor) => {
    const run = file.runs.find((each) => each.id === anchor.runId);
    return run ? [residualOf(anchor, run, file.anchors)] : [];
  });
}

function residualOf(anchor: Anchor, run: Run, all: readonly Anchor[]): AnchorResidual {
  const own = all.filter((each) => each.runId === run.id);
  const others = own.filter((each) => each.id !== anchor.id);
  const common = { anchorId: anchor.id, runId: run.id };
  if (knownPoints(run, others).length === 0) return { ...common, residual: null, sentence: ALONE };
  const place = converterFor(run, others).toStation(anchor.counter);
  if (place === null) return { ...common, residual: null, sentence: TORN };
  const residual = anchor.station - place.station;
  const mends = contradicts(run, own) && !contradicts(run, others);
  const sentence = [
    residualWords(anchor, { ...place, residual }),
    ...(mends ? ["Without it the run’s known points agree: check this one first."] : []),
  ].join(" ");
  return { ...common, residual, sentence };
}

const ALONE = "The run’s only known point: nothing to check it against.";
const TORN =
  "The run’s other known points contradict each other, so it can’t be checked against them.";

function contradicts(run: Run, anchors: readonly Anchor[]): boolean {
  return anchorProblems(run, anchors).length > 0;
}

/** `Lies 0.4 ft farther up than the other points put it (30.2 ft); within the 1.0 ft …`. */
function residualWords(
  anchor: Anchor,
  found: { readonly station: Cft; readonly uncertainty: Cft; readonly residual: Cft },
): string {
  const { station, uncertainty, residual } = found;
  if (residual === 0)
    return `The other known points put reading ${formatFeet(anchor.counter)} at the same ${formatFeet(station)}.`;
  const way = residual > 0 ? "farther up" : "farther down";
  const limit = Math.abs(residual) <= uncertainty ? "within" : "beyond";
  return `The other known points put reading ${formatFeet(anchor.counter)} at ${formatFeet(station)}; this one is ${formatFeet(Math.abs(residual))} ${way}, ${limit} the ${formatFeet(uncertainty)} that the counter may be off.`;
}
