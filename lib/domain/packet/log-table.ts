import type { LineFile } from "../facts/line-file.ts";
import { FITTING_WORDS, MATERIAL_WORDS, SIDE_WORDS } from "../facts/line-words.ts";
import type { Observation, Run } from "../facts/run.ts";
import { FAULT_WORDS, OBSERVATION_WORDS } from "../facts/run-words.ts";
import { videoTime } from "../facts/video.ts";
import type { Report, StationedObservation } from "../findings/report.ts";
import { EN } from "../paper/words-en.ts";
import { madeWords } from "../run/way-words.ts";
import { feetCell, type LineTable, type TableCell } from "./line-table.ts";

/** Named as the log's own table names them, so that what was taken out can be brought in again. */
const HEAD = [
  "Run",
  "Counter",
  "To",
  "Read",
  "Uncertainty ±",
  "Station, ft from the main",
  "Station to, ft",
  "Station ± ft",
  "What",
  "Clock",
  "Side, looking upstream",
  "Side is sure",
  "Tie-in",
  "Defect",
  "Severity",
  "% blocked",
  "Water",
  "Size",
  "Material",
  "Fitting",
  "Video",
  "Office code",
  "Note",
  "Said",
] as const;

/** The log of every run for a spreadsheet, run by run along its counter, with what each reading comes to. */
export function logTable(file: LineFile, report: Report): LineTable {
  const placed = new Map(report.stations.map((each) => [each.observationId, each]));
  return {
    title: "Camera log",
    head: HEAD,
    rows: file.runs.flatMap((run) =>
      file.observations
        .filter(({ runId }) => runId === run.id)
        .toSorted((a, b) => a.counter - b.counter)
        .map((seen) => logRow(file, { run, seen, found: placed.get(seen.id) })),
    ),
    wide: new Set<string>(["Run", "Note", "Said"]),
    notes: file.runs.map(
      (run) => `${run.name || "A run"}, ${EN.day(run.ranOn)}. ${madeWords(run)}`,
    ),
  };
}

interface Logged {
  readonly run: Run;
  readonly seen: Observation;
  readonly found: StationedObservation | undefined;
}

function logRow({ tieIns }: LineFile, { run, seen, found }: Logged): TableCell[] {
  return [
    run.name,
    feetCell(seen.counter),
    feetCell(seen.toCounter),
    seen.reading === "between" ? "worked out by time" : "read",
    feetCell(seen.uncertainty),
    feetCell(found?.station ?? null),
    feetCell(found?.toStation ?? null),
    feetCell(found?.uncertainty ?? null),
    OBSERVATION_WORDS[seen.kind],
    seen.clock ?? "",
    ...sideCells(found),
    tieIns.find(({ id }) => id === seen.tieInId)?.label ?? "",
    ...badnessCells(seen),
    ...pipeCells(seen),
    seen.videoSecond === null ? "" : videoTime(seen.videoSecond),
    seen.code,
    seen.note,
    seen.quote,
  ];
}

/** A head that turns shows no true side; where no side is known there is nothing to be sure of. */
function sideCells(found: StationedObservation | undefined): TableCell[] {
  const { side = "unknown", unsureSide = "unknown" } = found ?? {};
  if (unsureSide !== "unknown") return [SIDE_WORDS[unsureSide], "no, the head turns"];
  return side === "unknown" ? ["", ""] : [SIDE_WORDS[side], "yes"];
}

function badnessCells({ fault, degree, reduction, waterDepth }: Observation): TableCell[] {
  return [
    fault === null ? "" : FAULT_WORDS[fault],
    degree ?? "",
    reduction ?? "",
    waterDepth ?? "",
  ];
}

function pipeCells({ diameter, material, fitting }: Observation): TableCell[] {
  return [
    diameter ?? "",
    material === "unknown" ? "" : MATERIAL_WORDS[material],
    fitting === "unknown" ? "" : FITTING_WORDS[fitting],
  ];
}
