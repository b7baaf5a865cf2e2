import type { LineFile } from "../facts/line-file.ts";
import {
  FITTING_WORDS,
  MATERIAL_WORDS,
  SIDE_WORDS,
  TIE_IN_KIND_WORDS,
} from "../facts/line-words.ts";
import type { RecordEntry } from "../facts/record.ts";
import type { EntryFinding, Report, TieInFinding } from "../findings/report.ts";
import { formatFeet, plainFeet } from "../length/station.ts";
import { EN } from "../paper/words-en.ts";
import { sayProperty } from "../party/say.ts";
import { upTheLine } from "../tiein/up-the-line.ts";
import { feetCell, type LineTable, type TableCell } from "./line-table.ts";

const HEAD = [
  "Tie-in",
  "Station, ft from the main",
  "Station ± ft",
  "Read from",
  "Side, looking upstream",
  "Faces",
  "Serves",
  "Size, in",
  "Material",
  "Fitting",
  "Record entry",
  "Record",
  "Recorded, ft from the main",
  "Recorded ± ft",
  "Recorded side, looking upstream",
  "Property",
  "Status",
  "Match",
  "Why",
] as const;

/**
 * The schedule of connections for a spreadsheet, as the packet prints it, up the line: each tie-in with
 * how far off its station may be and what that rests on, then what is on record and has no tie-in.
 */
export function connectionTable(file: LineFile, report: Report): LineTable {
  const seen = upTheLine(report.tieIns);
  const alone = report.entries.filter(({ tieInId }) => tieInId === null);
  return {
    title: "Schedule of connections",
    head: HEAD,
    rows: [
      ...seen.map((finding) => tieInRow(file, report, finding)),
      ...alone.map((finding) => entryRow(file, finding)),
    ],
    wide: new Set<string>(["Read from", "Record", "Property", "Status", "Why"]),
    notes: report.alignment === null ? [] : [report.alignment.sentence],
  };
}

function tieInRow(file: LineFile, report: Report, finding: TieInFinding): TableCell[] {
  const { tieIn, station, uncertainty, side, compass } = finding;
  const entry = file.entries.find(({ id }) => id === finding.entryId);
  const found = report.entries.find(({ entryId }) => entryId === finding.entryId);
  return [
    tieIn.label,
    feetCell(station),
    feetCell(uncertainty),
    basisWords(file, finding),
    SIDE_WORDS[side],
    compass ?? "",
    TIE_IN_KIND_WORDS[tieIn.kind],
    tieIn.diameter ?? "",
    MATERIAL_WORDS[tieIn.material],
    FITTING_WORDS[tieIn.fitting],
    ...recordCells(file, entry, found),
    finding.propertyId === null ? "" : sayProperty(file, finding.propertyId),
    EN.standing[finding.standing],
    matchWord(finding),
    finding.sentence,
  ];
}

/** Whether a named person stands behind the match; empty where there is none to decide on. */
function matchWord({ entryId, decided }: TieInFinding): string {
  if (entryId === null) return "";
  return decided ? "accepted" : "proposed";
}

/** An entry that no tie-in answers to. */
function entryRow(file: LineFile, finding: EntryFinding): TableCell[] {
  const entry = file.entries.find(({ id }) => id === finding.entryId);
  const { diameter = null, material = "unknown", fitting = "unknown" } = entry ?? {};
  return [
    ...["", "", "", "", "", finding.compass ?? "", ""],
    diameter ?? "",
    MATERIAL_WORDS[material],
    FITTING_WORDS[fitting],
    ...recordCells(file, entry, finding),
    entry?.propertyId ? sayProperty(file, entry.propertyId) : "",
    EN.standing[finding.standing],
    "",
    finding.sentence,
  ];
}

function recordCells(
  file: LineFile,
  entry: RecordEntry | undefined,
  found: EntryFinding | undefined,
): TableCell[] {
  if (entry === undefined) return ["", "", "", "", ""];
  const record = file.records.find(({ id }) => id === entry.recordId);
  return [
    entry.label,
    [record?.title, record?.number].filter(Boolean).join(", No. "),
    feetCell(found?.recordStation ?? null),
    feetCell(entry.uncertainty),
    SIDE_WORDS[entry.side],
  ];
}

/** What a tie-in's station rests on: `Run 1: 31.5 ft on the counter, worked out by time, ± 2.9 ft`. */
function basisWords(file: LineFile, { tieIn, station, sightings }: TieInFinding): string {
  const read = sightings.map(({ observationId, uncertainty }) => {
    const seen = file.observations.find(({ id }) => id === observationId);
    const run = file.runs.find(({ id }) => id === seen?.runId);
    if (seen === undefined) return "";
    const how = seen.reading === "between" ? "worked out by time" : "read";
    const off = uncertainty === null ? "" : `, ± ${formatFeet(uncertainty)}`;
    return `${run?.name || "A run"}: ${plainFeet(seen.counter)} ft on the counter, ${how}${off}`;
  });
  const set = tieIn.station === null ? [] : ["station set by hand"];
  const words = [...set, ...read].filter((each) => each !== "");
  return words.length === 0 && station === null ? "no station" : words.join("; ");
}
