import type { SheetKind } from "../facts/authority.ts";
import type { Material, Side } from "../facts/line.ts";
import type { RecordEntry } from "../facts/record.ts";
import type { Observation, Run } from "../facts/run.ts";
import { videoTime } from "../facts/video.ts";
import type { EntryFinding, StationedObservation, TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { feetWithin, plainFeet } from "../length/station.ts";
import { heading, list, paragraph, pictures, table } from "../paper/common.ts";
import type { LetterBlock, LetterPicture } from "../paper/letter.ts";
import { EN } from "../paper/words-en.ts";
import { streetOf } from "../party/stakeholders.ts";
import type { CompassPoint } from "../plan/compass.ts";
import { beginsLine } from "../reconcile/begins-line.ts";
import { counterTolerance } from "../run/convert.ts";
import { FOOTAGE_WORDS } from "../run/footage.ts";
import { pictureOf } from "../run/newest-picture.ts";
import { madeWords } from "../run/way-words.ts";
import { isOfCapacity } from "../strip/capacity-band.ts";
import { drawStrip } from "../strip/draw.ts";
import { drawPlans } from "../strip/draw-plan.ts";
import { sizeBands } from "../strip/pipes.ts";
import { allowedScales, PLAN_FRAME } from "../strip/plan-scale.ts";
import { rulingEffects } from "../tiein/ruling-effects.ts";
import { TEST_RESULT_WORDS } from "../tiein/test-words.ts";
import { upTheLine } from "../tiein/up-the-line.ts";
import { packetContents } from "./contents.ts";
import { shownBlocks } from "./drawing-checklist.ts";
import type { Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";
import { composed } from "./sheets-job.ts";

/** Bands that tell what another sheet tells: drawn where that one is asked for. */
const BAND_SHEETS: Readonly<Record<string, SheetKind>> = {
  Responsible: "responsibility",
  "Repaired by": "responsibility",
  Cost: "split",
};

/**
 * The strip to scale, on landscape pages. Slope and load stand on their own sheet, for want of room;
 * who answers and what it costs are drawn where the authority asks for their sheets.
 */
export function drawingSheet(input: PacketInput): Sheet {
  const { file, report } = input;
  const { kinds } = packetContents(input);
  const scales = allowedScales(file.authority);
  const { extent, ticks, above, below, onPipe, joins, pipes, bands, title, north } = drawStrip(
    file,
    report,
    "all",
  );
  const asked = bands.filter((band) => {
    const sheet = BAND_SHEETS[band.title];
    return !isOfCapacity(band) && (sheet === undefined || kinds.has(sheet));
  });
  return {
    kind: "line-drawing",
    title: "Line drawing",
    plans: drawPlans(file, report, { frame: PLAN_FRAME, allowed: scales }),
    scales,
    blocks: [...shownBlocks(input), ...tieBlocks(report)],
    drawing: {
      extent,
      ticks,
      above,
      below,
      onPipe,
      joins,
      pipes,
      bands: [...sizeBands(pipes), ...asked],
      title,
      north: north ?? null,
    },
    uploadId: null,
  };
}

/** Ties from fixed points, as an as-built gives them; those that do not close are not printed as places. */
export function tieBlocks({ ties }: PacketInput["report"]): LetterBlock[] {
  if (ties.length === 0) return [];
  return [
    heading("Ties from fixed points"),
    ...table(
      ["Point", "Station, ft", "Taped", "Check"],
      ties.map(({ subject, station, words, sentence }) => [
        subject,
        feet(station),
        words,
        sentence,
      ]),
      { numeric: [1] },
    ),
  ];
}

/** Record against camera, connection by connection. */
export function scheduleSheet(input: PacketInput): Sheet {
  const { report } = input;
  const seen = upTheLine(report.tieIns).map((finding) => tieInRow(input, finding));
  const unseen = report.entries
    .filter(({ tieInId }) => tieInId === null)
    .map((finding) => entryRow(input, finding));
  const rows = [...seen, ...unseen];
  const alignment = report.alignment === null ? [] : [paragraph(report.alignment.sentence)];
  return composed("schedule-of-connections", "Schedule of connections", [
    paragraph(
      "Record vs. camera. Stations are feet from the main connection; sides are looking upstream.",
    ),
    ...alignment,
    ...(rows.length === 0
      ? [paragraph("No connection is on file.")]
      : table(
          [
            "Tie-in",
            "Seen at, ft",
            "Record entry",
            "Recorded at, ft",
            "Side",
            "Size, material",
            "Property",
            "Status",
          ],
          rows,
          { numeric: [1, 3] },
        )),
    ...rulingBlocks(input),
    ...recordBlocks(input),
    ...runLines(input),
  ]);
}

function feet(length: Cft | null): string {
  return length === null ? "unknown" : plainFeet(length);
}

function tieInRow({ file, report }: PacketInput, finding: TieInFinding): string[] {
  const entry = file.entries.find(({ id }) => id === finding.entryId);
  const found = report.entries.find(({ entryId }) => entryId === finding.entryId);
  const property = file.properties.find(({ id }) => id === finding.propertyId);
  const { tieIn } = finding;
  const begins = beginsLine(file.line, finding);
  const standing = begins ? EN.finding.begins : EN.standing[finding.standing];
  return [
    tieIn.label,
    finding.station === null ? "unknown" : feetWithin(finding.station, finding.uncertainty),
    entry?.label ?? "none",
    entry ? recordedAt(found?.recordStation ?? null, entry) : "–",
    begins ? EN.finding.noSide : scheduleSide(finding.side, finding.compass),
    sizeWords(tieIn.diameter, tieIn.material),
    property ? streetOf(property.address) : "unknown",
    `${standing}${finding.decided ? "" : " (proposed)"}`,
  ];
}

/**
 * Where the record has it, with how far off it says that may be. A distance that gives no station is
 * no feet from the main, and says that it stands as written.
 */
function recordedAt(station: Cft | null, entry: RecordEntry | undefined): string {
  const off = entry?.uncertainty ?? null;
  if (station !== null) return feetWithin(station, off);
  const written = entry?.distance ?? null;
  return written === null ? feet(null) : `${feetWithin(written, off)} as written, not placed`;
}

/** `4 in clay`; what is not known of either is said. */
export function sizeWords(diameter: number | null, material: Material): string {
  const size = diameter === null ? "size unknown" : `${diameter} in`;
  return material === "unknown" ? `${size}, material unknown` : `${size} ${EN.material[material]}`;
}

/** `right, north`: as seen looking upstream, and by the compass where the line has a bearing. */
export function scheduleSide(side: Side, compass: CompassPoint | null): string {
  const plain = EN.sideShort[side];
  return compass === null ? plain : `${plain}, ${EN.compass[compass]}`;
}

function entryRow({ file }: PacketInput, finding: EntryFinding): string[] {
  const entry = file.entries.find(({ id }) => id === finding.entryId);
  const property = file.properties.find(({ id }) => id === entry?.propertyId);
  return [
    "none",
    "–",
    entry?.label ?? "",
    recordedAt(finding.recordStation, entry),
    scheduleSide(entry?.side ?? "unknown", finding.compass),
    sizeWords(entry?.diameter ?? null, entry?.material ?? "unknown"),
    property ? streetOf(property.address) : "unknown",
    entry && entry.explanation !== ""
      ? `${EN.standing[finding.standing]}: ${entry.explanation}`
      : EN.standing[finding.standing],
  ];
}

/** What the authority ruled on tie-ins, and what of it is still to be done. */
function rulingBlocks({ file, report }: PacketInput): LetterBlock[] {
  const rulings = rulingEffects(file, report.tieIns).map(({ printed }) => printed);
  return rulings.length === 0 ? [] : [heading("Rulings on tie-ins"), ...list(rulings)];
}

function recordBlocks({ file }: PacketInput): LetterBlock[] {
  const lines = file.records.map(({ title, number, dated }) =>
    [title, number === "" ? "" : `No. ${number}`, dated].filter((part) => part !== "").join(", "),
  );
  return lines.length === 0 ? [] : [heading("Records compared"), ...list(lines)];
}

/** What the camera's side of the schedule rests on: how each run was made. */
function runLines({ file }: PacketInput): LetterBlock[] {
  const lines = file.runs.map(
    (run) => `${run.name || "Run"}, ${EN.day(run.ranOn)}. ${madeWords(run)}`,
  );
  return lines.length === 0 ? [] : [heading("Camera runs compared"), ...list(lines)];
}

/** Every observation of every run, as it stands on the log. */
export function observationSheet(input: PacketInput): Sheet {
  const blocks = input.file.runs.flatMap((run) => runBlocks(input, run));
  const none = [paragraph("No camera run is on file.")];
  return composed("observation-log", "Observation log", blocks.length === 0 ? none : blocks);
}

function runBlocks(input: PacketInput, run: Run): LetterBlock[] {
  const { file } = input;
  const log = file.observations
    .filter(({ runId }) => runId === run.id)
    .toSorted((a, b) => a.counter - b.counter);
  const stills = log.filter((seen) => pictureOf(file, seen.pictureId) !== null);
  const rows = log.map((seen) => observationRow(input, seen, stills.indexOf(seen) + 1));
  const facts = [
    `${EN.day(run.ranOn)}, by ${run.operator === "" ? "unknown" : run.operator}`,
    `access: ${run.accessPoint === "" ? "unknown" : run.accessPoint}`,
    `looking ${run.looks}`,
    `footage from ${FOOTAGE_WORDS[run.measuredFrom]}`,
    `zero at ${run.zeroAt === "" ? "unknown" : run.zeroAt}`,
    ...(run.selfLeveling === "no" ? ["its head turns, so clock positions are unsure"] : []),
    `utility crossing: ${run.crossingSeen === "cannot-tell" ? "unknown" : run.crossingSeen}`,
  ];
  return [
    heading(/^run\b/i.test(run.name) ? run.name : `Run ${run.name}`),
    paragraph(`${facts.join("; ")}.`),
    ...(rows.length === 0
      ? [paragraph("Nothing is on this run’s log.")]
      : table(["Footage", "Station", "Clock", "What", "Size, material", "Video", "Note"], rows, {
          numeric: [0, 1],
        })),
    ...pictures(stills.map((seen, at) => still(input, { run, seen, number: at + 1 }))),
  ];
}

/** A still under the number that its row names. */
function still(
  { file, report }: PacketInput,
  { run, seen, number }: { run: Run; seen: Observation; number: number },
): LetterPicture {
  const found = report.stations.find(({ observationId }) => observationId === seen.id);
  const tieIn = file.tieIns.find(({ id }) => id === seen.tieInId);
  const station = found?.station ?? null;
  const parts = [
    tieIn?.label ?? whatSeen(seen),
    station === null ? `counter ${plainFeet(seen.counter)} ft` : `${plainFeet(station)} ft`,
    run.name,
    ...(seen.videoSecond === null ? [] : [videoTime(seen.videoSecond)]),
  ];
  const caption = `Still ${number}: ${parts.join(", ")}`;
  return { uploadId: seen.pictureId ?? "", caption, alt: EN.picture.alt(caption) };
}

function observationRow(
  { file, report }: PacketInput,
  seen: Observation,
  /** Of its picture below the table; 0 where it has none. */
  stillNumber: number,
): string[] {
  const found = report.stations.find(({ observationId }) => observationId === seen.id);
  const tieIn = file.tieIns.find(({ id }) => id === seen.tieInId);
  return [
    `${range(seen.counter, seen.toCounter)}${seen.reading === "between" ? " by time" : ""}`,
    found?.station == null ? "unknown" : stationWords(found),
    clockWords(seen.clock, found),
    tieIn ? `${whatSeen(seen)} ${tieIn.label}` : whatSeen(seen),
    [
      seen.diameter === null ? "" : `${seen.diameter} in`,
      seen.material === "unknown" ? "" : EN.material[seen.material],
    ]
      .filter((part) => part !== "")
      .join(" ") || "–",
    videoWords(seen, stillNumber),
    [seen.code, degreeWords(seen), seen.note].filter((part) => part !== "").join(" "),
  ];
}

/** `severe, 60% of the bore, 4 in of water` */
function degreeWords({ degree, reduction, waterDepth }: Observation): string {
  const share = reduction === null ? "" : `${reduction}% of the bore`;
  const water = waterDepth === null ? "" : `${waterDepth} in of water`;
  const words = [degree ?? "", share, water].filter((part) => part !== "").join(", ");
  return words === "" ? "" : `${words}.`;
}

/** `60.5`, or `60.5 ± 4.0` where the reading itself was less sure than the counter. */
function stationWords({ station, toStation, uncertainty }: StationedObservation): string {
  const at = upwards(station ?? 0, toStation);
  return uncertainty === null || uncertainty <= counterTolerance(station ?? 0)
    ? at
    : `${at} ± ${plainFeet(uncertainty)}`;
}

function clockWords(clock: number | null, found: StationedObservation | undefined): string {
  if (clock === null) return "–";
  return (found?.unsureSide ?? "unknown") === "unknown" ? String(clock) : `${clock} (unsure)`;
}

function videoWords({ videoSecond }: Observation, stillNumber: number): string {
  const parts = [
    ...(videoSecond === null ? [] : [videoTime(videoSecond)]),
    ...(stillNumber === 0 ? [] : [`still ${stillNumber}`]),
  ];
  return parts.length === 0 ? "–" : parts.join(", ");
}

function whatSeen(seen: Observation): string {
  if (seen.kind === "fault" && seen.fault !== null) return EN.fault[seen.fault];
  return seen.kind === "tie-in" ? "tie-in" : seen.kind;
}

function range(from: Cft, to: Cft | null): string {
  return to === null ? plainFeet(from) : `${plainFeet(from)}–${plainFeet(to)}`;
}

/** A stretch of the line from below up, whichever way the camera went. */
function upwards(from: Cft, to: Cft | null): string {
  return to === null ? plainFeet(from) : range(Math.min(from, to), Math.max(from, to));
}

/** Every test on whose a tie-in is, with what makes it strong or weak. */
export function testSheet({ file, report }: PacketInput): Sheet {
  const rows = file.tests.map((test) => {
    const property = file.properties.find(({ id }) => id === test.propertyId);
    const tieIn = file.tieIns.find(({ id }) => id === test.tieInId);
    return [
      tieIn?.label ?? "unknown",
      EN.day(test.performedOn),
      test.kind,
      property ? streetOf(property.address) : "unknown",
      [test.fixture, test.colour].filter((part) => part !== "").join(", "),
      test.startedAt === "" ? "–" : test.startedAt,
      test.firstSeenAt === "" ? "–" : test.firstSeenAt,
      test.controlResult === "not-run" ? "none" : test.controlResult,
      [test.dosedBy, test.watchedBy].filter((part) => part !== "").join(", "),
      TEST_RESULT_WORDS[test.result],
    ];
  });
  const levels = report.tieIns
    .filter(({ standing }) => standing === "undocumented")
    .map(({ tieIn, level, levelReason }) => `${tieIn.label}: level ${level}. ${levelReason}`);
  return composed("tests", "Tests", [
    ...(rows.length === 0
      ? [paragraph("No test is on file.")]
      : table(
          [
            "Tie-in",
            "Day",
            "Test",
            "At",
            "Where and dye color",
            "Start",
            "First seen",
            "Control",
            "Performed and observed by",
            "Result",
          ],
          rows,
        )),
    ...(levels.length === 0
      ? []
      : [heading("Evidence on undocumented tie-ins, levels 0 to 6"), ...list(levels)]),
    ...(rows.length === 0
      ? []
      : [
          paragraph(
            "A test that saw nothing is weak evidence: slow pipes, traps and blockages hide dye.",
          ),
        ]),
  ]);
}
