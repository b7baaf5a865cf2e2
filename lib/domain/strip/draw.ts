import type { TieIn } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Observation } from "../facts/run.ts";
import type {
  EntryFinding,
  Report,
  StationedObservation,
  TieInFinding,
} from "../findings/report.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { sideWords } from "../plan/side-words.ts";
import { faultsSeen } from "../run/faults.ts";
import { capital } from "../say/capital.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { isOwnerOpen, isUnsettled } from "../tiein/open-question.ts";
import { bandsOn } from "./bands.ts";
import { type FileDrawing, STRIP_TOPICS, type StripMark, type StripTopic } from "./drawing.ts";
import { holdMarks, holdSpots } from "./hold-marks.ts";
import { choicesOf, joinsOf } from "./joins.ts";
import { northOf } from "./north.ts";
import { pipesOf } from "./pipes.ts";
import { plainMark } from "./plain-mark.ts";
import { besideStrip, runRows } from "./run-rows.ts";
import { streetName } from "./short-name.ts";
import { spotsOf } from "./spots.ts";
import { FAULT_LABELS, POINT_LABELS, SEEN_LABELS, STANDING_LABELS } from "./words.ts";

const NO_EXTENT: Cft = 1000;

/**
 * The strip of a line: the record above the pipe as it is written, what the camera saw below at its
 * station, what was paired joined, and the bands that belong to the page. In stations throughout.
 */
export function drawStrip(file: LineFile, report: Report, topic: StripTopic): FileDrawing {
  const extent = extentOf(file, report);
  const spots = spotsOf(file, report);
  const calm = !hasLooked(file);
  const holds = holdMarks(report, spots).map((mark) => (calm ? { ...mark, loud: false } : mark));
  return {
    extent,
    ticks: ticksTo(extent),
    above: entryMarks(file, report, calm),
    below: tieInMarks(file, report),
    onPipe: [mainMark(), ...pointMarks(file), ...seenMarks(file, report), ...endMark(file)],
    joins: joinsOf(report),
    pipes: pipesOf(file, report, extent),
    bands: bandsOn(file, report, topic),
    title: `${file.line.name}: ${formatFeet(extent)} from the main connection upstream`,
    north: northOf(file.line.bearing),
    holds,
    work: workOn(file, topic),
    runs: runRows(file, report),
    spots: [...spots, ...holdSpots(report, holds)],
    beside: besideStrip(file, report),
    choices: choicesOf(report),
  };
}

/**
 * The same strip as each page shows it. They share all but their bands and the priced work, so that
 * handing over all of them costs little more than one.
 */
export function drawStrips(file: LineFile, report: Report): Record<StripTopic, FileDrawing> {
  const whole = drawStrip(file, report, "all");
  const drawn = STRIP_TOPICS.map((topic) => [
    topic,
    { ...whole, bands: bandsOn(file, report, topic), work: workOn(file, topic) },
  ]);
  return Object.fromEntries(drawn) as Record<StripTopic, FileDrawing>;
}

function workOn(file: LineFile, topic: StripTopic): StripMark[] {
  return topic === "cost" ? workMarks(file) : [];
}

/** A camera saw something: before that nothing is alarming, and a record is just a record. */
function hasLooked({ runs, observations }: LineFile): boolean {
  return observations.length > 0 || runs.some(({ toCounter }) => toCounter !== null);
}

/** As far as anything on file reaches: the pipe, what was seen, the records, the lots that are crossed. */
function extentOf(file: LineFile, report: Report): Cft {
  const farthest = Math.max(
    report.extent,
    // What a record gives as its length counts while nobody has measured the pipe itself.
    ...(file.line.upperEnd === null ? file.records.map(({ length }) => length ?? 0) : []),
    ...file.crossings.map(({ to }) => to),
    ...file.points.map(({ station }) => station),
    ...report.entries.map((entry) => entry.recordStation ?? 0),
    ...report.tieIns.map((found) => found.station ?? 0),
  );
  return farthest > 0 ? farthest : NO_EXTENT;
}

/** Round stations, at most a dozen of them. */
export function ticksTo(extent: Cft): Cft[] {
  const step = [500, 1000, 2000, 2500, 5000].find((one) => extent / one <= 12) ?? 10_000;
  return Array.from({ length: Math.floor(extent / step) + 1 }, (_, index) => index * step);
}

function mainMark(): StripMark {
  return {
    ...plainMark("main", "main", 0),
    label: "public main",
    sentence: "The main connection, station 0.",
  };
}

function endMark(file: LineFile): StripMark[] {
  const { upperEnd } = file.line;
  if (upperEnd === null) return [];
  return [
    {
      ...plainMark("upper-end", "upper-end", upperEnd),
      label: "upper end",
      detail: formatFeet(upperEnd),
      sentence: `The upper end of the shared line at ${formatFeet(upperEnd)}.`,
    },
  ];
}

function pointMarks(file: LineFile): StripMark[] {
  return file.points.map((point) => {
    const label = POINT_LABELS[point.kind];
    return {
      ...plainMark(point.id, "point", point.station),
      label,
      detail: formatFeet(point.station),
      sentence: `${capital(label)} at ${formatFeet(point.station)}.`,
    };
  });
}

function entryMarks(file: LineFile, report: Report, calm: boolean): StripMark[] {
  const held = calm ? new Set<string>() : heldSubjects(report);
  return report.entries.flatMap((finding) => {
    const entry = file.entries.find((one) => one.id === finding.entryId);
    const station = finding.recordStation ?? finding.station;
    if (entry === undefined || station === null) return [];
    return [
      {
        ...plainMark(entry.id, "entry", station),
        side: entry.side,
        label: entry.label === "" ? "entry" : entry.label,
        detail: calm ? formatFeet(station) : entryDetail(finding, station),
        brief: calm || finding.tieInId !== null ? "" : entryWord(finding),
        loud: held.has(entry.id),
        sentence: `${entry.label}, on record at ${formatFeet(station)}: ${finding.sentence}`,
      },
    ];
  });
}

function entryDetail(finding: EntryFinding, station: Cft): string {
  const paired = finding.tieInId !== null;
  return paired ? formatFeet(station) : `${formatFeet(station)}, ${entryWord(finding)}`;
}

function entryWord({ standing }: EntryFinding): string {
  if (standing === "on-record-not-seen") return "not seen";
  if (standing === "on-record-not-inspected") return "not inspected";
  if (standing === "on-record-place-unclear") return "place not clear";
  return STANDING_LABELS[standing];
}

function tieInMarks(file: LineFile, report: Report): StripMark[] {
  const held = heldSubjects(report);
  const names = new Map(file.properties.map((property) => [property.id, streetName(property)]));
  return report.tieIns.flatMap((finding) => {
    const root = rootOf(finding, report);
    const station = root.station;
    if (station === null) return [];
    const { tieIn } = finding;
    const owner = finding.propertyId === null ? null : (names.get(finding.propertyId) ?? null);
    return [
      {
        ...plainMark(tieIn.id, "tie-in", station),
        whisker: root.uncertainty ?? 0,
        side: finding.side,
        label: root === finding ? tieIn.label : `${tieIn.label} on ${root.tieIn.label}`,
        detail: tieInDetail(finding, owner),
        brief: tieInBrief(finding, owner),
        loud: isOwnerOpen(finding) || held.has(tieIn.id),
        sentence: tieInSentence(finding, { station, owner }),
      },
    ];
  });
}

function tieInDetail(finding: TieInFinding, owner: string | null): string {
  const { standing, tieIn } = finding;
  if (standing === "inactive") return "inactive";
  if (standing === "not-a-sanitary-branch") return TIE_IN_WORDS[tieIn.kind];
  if (standing !== "undocumented") return owner ?? "owner unknown";
  if (!finding.live) return `not on record, ${TIE_IN_WORDS[tieIn.kind]}`;
  if (isUnsettled(finding)) return "not on record, shown by tests";
  if (isOwnerOpen(finding) || owner === null)
    return `undocumented, ${owner === null ? "owner unknown" : `perhaps ${owner}`}`;
  return `${owner}, not on record`;
}

function tieInBrief(finding: TieInFinding, owner: string | null): string {
  if (isOwnerOpen(finding)) return "undocumented";
  return tieInDetail(finding, owner === null ? null : owner.replace(/^(\d+) .*$/, "no. $1"));
}

const TIE_IN_WORDS: Record<TieIn["kind"], string> = {
  unknown: "not a building",
  building: "building",
  "yard-drain": "yard drain",
  "roof-drain": "roof drain",
  "cleanout-riser": "cleanout riser",
  "capped-stub": "capped stub",
  "old-septic-line": "old septic line",
};

function tieInSentence(
  finding: TieInFinding,
  { station, owner }: { station: Cft; owner: string | null },
): string {
  const { compass, side } = finding;
  const onSide = compass === null ? "" : `, ${sideWords(side, compass)}`;
  const at = `${finding.tieIn.label} at ${formatFeet(station)}${onSide}`;
  const unknown = isUnsettled(finding) ? "shown by tests, not settled" : "owner unknown";
  const whose = owner === null ? unknown : `serves ${owner}`;
  return finding.live ? `${at}, ${whose}: ${finding.sentence}` : `${at}: ${finding.sentence}`;
}

/** The tie-in on the trunk through which this one flows. Stops where the parents go round. */
function rootOf(finding: TieInFinding, report: Report): TieInFinding {
  let here = finding;
  for (let step = 0; step < report.tieIns.length; step += 1) {
    const parent = report.tieIns.find((one) => one.tieIn.id === here.tieIn.parentId);
    if (parent === undefined) return here;
    here = parent;
  }
  return here;
}

/** What was seen beside tie-ins, each once; a fault that several runs saw is one, over all that they saw. */
function seenMarks(file: LineFile, report: Report): StripMark[] {
  const stations = new Map(report.stations.map((one) => [one.observationId, one]));
  const faults = new Map(faultsSeen(file, report).map((one) => [one.observationId, one]));
  return file.observations.flatMap((seen) => {
    const found = stations.get(seen.id);
    const place = seen.kind === "fault" ? faults.get(seen.id) : placeOf(found);
    const label = seenLabel(seen);
    if (label === null || found === undefined || place === undefined || place.from === null)
      return [];
    return [seenMark(seen, { label, from: place.from, to: place.to, found })];
  });
}

/** The lower end first, whichever way the run went. */
function placeOf(
  found: StationedObservation | undefined,
): { readonly from: Cft | null; readonly to: Cft | null } | undefined {
  if (found === undefined || found.station === null || found.toStation === null)
    return found && { from: found.station, to: null };
  const [from, to] = ordered(found.station, found.toStation);
  return { from, to };
}

function seenLabel(seen: Observation): string | null {
  if (seen.kind === "fault") return seen.fault === null ? "defect" : FAULT_LABELS[seen.fault];
  return SEEN_LABELS[seen.kind] ?? null;
}

function seenMark(
  seen: Observation,
  place: { label: string; from: Cft; to: Cft | null; found: StationedObservation },
): StripMark {
  const { label, from, to, found } = place;
  const where = to === null ? formatFeet(from) : `${formatFeet(from)} to ${formatFeet(to)}`;
  return {
    ...plainMark(seen.id, seen.kind === "water" ? "water" : "fault", from),
    toStation: to,
    whisker: found.uncertainty ?? 0,
    side: found.side,
    label,
    detail: where,
    sentence: `${capital(label)}, ${where}${waterWords(seen)}${seen.note === "" ? "." : `: ${seen.note}`}`,
  };
}

/** How deep water stands there, where somebody told. */
function waterWords({ waterDepth }: Observation): string {
  return waterDepth === null ? "" : `, ${waterDepth} in of water standing`;
}

function workMarks(file: LineFile): StripMark[] {
  return scopeInForce(file).flatMap((item) => {
    if (item.from === null) return [];
    const { id, title, from, to } = item;
    const where = to === null ? formatFeet(from) : `${formatFeet(from)} to ${formatFeet(to)}`;
    return [
      {
        ...plainMark(id, "work", from),
        toStation: to,
        label: title,
        detail: where,
        sentence: `${title}, ${where}.`,
      },
    ];
  });
}

function ordered(one: Cft, other: Cft): [Cft, Cft] {
  return one <= other ? [one, other] : [other, one];
}

function heldSubjects(report: Report): ReadonlySet<string> {
  const holds = report.holds.filter((hold) => hold.waiver === null);
  return new Set(holds.map((hold) => hold.subjectId));
}
