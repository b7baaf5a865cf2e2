import { type AsBuilt, asBuiltOf, BUILT_WORDS, type BuiltPart } from "../closing/built-parts.ts";
import { FITTING_WORDS } from "../facts/line-words.ts";
import { videoTime } from "../facts/video.ts";
import type { TieInFinding } from "../findings/report.ts";
import { formatFeet, plainFeet } from "../length/station.ts";
import { heading, list, paragraph, table } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { EN } from "../paper/words-en.ts";
import { formatAddress } from "../party/address.ts";
import { streetOf } from "../party/stakeholders.ts";
import { permitName, permitStateWords } from "../permit/say.ts";
import { permitStateOf } from "../permit/steps.ts";
import { depthWords, drawBuilt, planBuilt } from "../strip/draw-built.ts";
import { allowedScales, PLAN_FRAME } from "../strip/plan-scale.ts";
import type { Day } from "../time/day.ts";
import { officeLines } from "./compose.ts";
import { type DrawingCheck, drawingChecklist } from "./drawing-checklist.ts";
import type { Packet, Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";
import { composed } from "./sheets-job.ts";
import { scheduleSide, sizeWords, tieBlocks } from "./sheets-line.ts";

/**
 * The as-built as a set of sheets: the line as it was built, drawn to scale in plan and along the
 * pipe, with what was measured, the branches as they are now, ties, permits and inspections, and the
 * papers that were added to it. What nobody recorded as built is named first and drawn nowhere.
 */
export function composeAsBuilt(input: PacketInput): Packet {
  const { file, report, office } = input;
  const built = asBuiltOf(file, report);
  return {
    purpose: "as-built",
    title: "As-built of a shared private sewer",
    lineName: file.line.name,
    authorityName: file.authority?.name ?? "authority unknown",
    day: report.today,
    preparedOn: EN.day(report.today),
    preparedBy: officeLines(office),
    checks: [],
    missing: asBuiltMissing(input, built),
    contents: [
      "Drawn from what was measured and recorded as done, by the persons named on the sheets. Where nothing was built, the line is drawn as the camera and the records show it. Not a survey.",
    ],
    sheets: asBuiltSheets(input, built),
    signed: ["Prepared by: name and signature", "Date"],
    footer: [office.name, `${file.line.name}, as built`, EN.day(report.today)].join(" · "),
  };
}

/** What stands in the way of a clerk’s yes, as far as the file can tell. */
function asBuiltMissing(input: PacketInput, built: AsBuilt): string[] {
  const { file } = input;
  const { parts, open } = built;
  const unnumbered = file.permits.filter(({ number }) => number === "");
  const asked = asBuiltChecklist(input, built);
  return [
    ...(parts.length === 0 ? ["Nothing is recorded as built."] : []),
    ...open,
    ...parts.flatMap(({ differs }) => (differs === "" ? [] : [differs])),
    ...parts.filter(isLaid).flatMap((part) => lacksOf(part)),
    ...(asked.length === 0 ? usualWants(input) : wantsOf(asked)),
    ...(file.line.mainStation === null
      ? ["The distance of the main connection from the downstream manhole is not entered."]
      : []),
    ...unnumbered.map(
      (permit) => `The number of the ${permitName(permit).toLowerCase()} is not entered.`,
    ),
  ];
}

/** What most counters want on an as-built, where the authority’s own list is not on file. */
function usualWants({ file }: PacketInput): string[] {
  return [
    ...(file.line.bearing === null
      ? ["No plan view and no north arrow: the bearing at the main connection is not entered."]
      : []),
    ...(file.ties.length === 0 ? ["No point of the line is tied to fixed points."] : []),
  ];
}

function wantsOf(checks: readonly DrawingCheck[]): string[] {
  return checks
    .filter(({ state }) => state === "missing")
    .map(({ item, sentence }) => `${item.title}: ${sentence}`);
}

/**
 * The authority’s drawing checklist, held against the as-built: inverts and depths are those of the
 * new pipe, as somebody measured them.
 */
function asBuiltChecklist(input: PacketInput, { parts }: AsBuilt): DrawingCheck[] {
  const laid = parts.filter(isLaid);
  const deep = laid.filter(({ depthFrom, depthTo }) => depthFrom !== null && depthTo !== null);
  return drawingChecklist(input).map((check) => {
    const { item } = check.item;
    if ((item !== "inverts" && item !== "depths") || check.by === "person") return check;
    const shown = laid.length > 0 && deep.length === laid.length;
    return {
      item: check.item,
      state: shown ? "shown" : "missing",
      by: shown ? "program" : "nobody",
      sentence: shown
        ? "The depth to the invert is on the drawing for both ends of each piece of new pipe."
        : "The depth to the invert is not entered for both ends of each piece of new pipe.",
    };
  });
}

/** A stretch of new pipe. */
function isLaid({ kind, from, to }: BuiltPart): boolean {
  return from !== null && to !== null && kind !== "other" && kind !== "cleanout";
}

function lacksOf(part: BuiltPart): string[] {
  const lacks = [
    ...(part.material === "unknown" ? ["material"] : []),
    ...(part.diameter === null ? ["size"] : []),
    ...(part.depthFrom === null && part.depthTo === null ? ["depth to the invert"] : []),
  ];
  if (lacks.length === 0) return [];
  const what = `${BUILT_WORDS[part.kind]} ${placeWords(part)}`;
  return [`${what.slice(0, 1).toUpperCase()}${what.slice(1)}: ${EN.list(lacks)} not entered.`];
}

/** The sheets of an as-built, for itself and for the closeout file. */
export function asBuiltSheets(input: PacketInput, built: AsBuilt): Sheet[] {
  const { file, report } = input;
  const scales = allowedScales(file.authority);
  return [
    composed("as-built", "As-built", [
      ...table(["", ""], headRows(input)),
      heading("What was built"),
      ...partBlocks(input, built),
      heading("Connections as they are now"),
      ...connectionTable(input, built),
      ...inspectionBlocks(input),
      ...checklistBlocks(asBuiltChecklist(input, built)),
    ]),
    {
      kind: "line-drawing",
      title: "As-built drawing",
      plans: planBuilt(file, report, { parts: built.parts, frame: PLAN_FRAME, allowed: scales }),
      scales,
      drawing: drawBuilt(file, report, built.parts),
      blocks: tieBlocks(report),
      uploadId: null,
    },
    ...paperSheets(input),
  ];
}

function headRows({ file, office }: PacketInput): string[][] {
  const { line } = file;
  const connected = file.properties.filter(({ stake }) => stake === "connected");
  const permits = file.permits.map(
    (permit) => `${permitName(permit)}: ${permitStateWords(permitStateOf(file, permit))}`,
  );
  return [
    ...rowsOf("Addresses served", connected.map(parcelWords)),
    ...rowsOf("Permits", permits),
    [
      "Main connection along the public main, from the downstream manhole",
      line.mainStation === null
        ? "unknown"
        : [formatFeet(line.mainStation), line.mainNote].filter((part) => part !== "").join(" "),
    ],
    ["Contractor", [office.name, office.license].filter(Boolean).join(", ")],
    ["Work done", daysWords(file.built.map(({ on }) => on).toSorted())],
  ];
}

/** `June 29, 2026 to July 1, 2026`, of days in their order. */
function daysWords(days: readonly Day[]): string {
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) return "not recorded";
  return first === last ? EN.day(first) : `${EN.day(first)} to ${EN.day(last)}`;
}

function parcelWords({ address, parcel }: PacketInput["file"]["properties"][number]): string {
  return parcel === "" ? formatAddress(address) : `${formatAddress(address)}, parcel ${parcel}`;
}

/** One row for each; the first names what they are. */
function rowsOf(title: string, words: readonly string[]): string[][] {
  const all = words.length === 0 ? ["none on file"] : words;
  return all.map((word, at) => [at === 0 ? title : "", word]);
}

/** `14.0 to 22.0`, `31.0`, in feet from the main connection. */
export function placeWords({ from, to }: Pick<BuiltPart, "from" | "to">): string {
  if (from === null) return "unknown";
  return to === null || to === from ? plainFeet(from) : `${plainFeet(from)} to ${plainFeet(to)}`;
}

function partBlocks(input: PacketInput, { parts }: AsBuilt): LetterBlock[] {
  if (parts.length === 0) return [paragraph("Nothing is recorded as built.")];
  const notes = parts.flatMap(({ note, kind, from, to }) =>
    note === "" ? [] : [`${placeWords({ from, to })} ft, ${BUILT_WORDS[kind]}: ${note}`],
  );
  return [
    ...table(
      ["Work", "Station, ft", "Pipe", "Invert, ft deep", "Slope", "Measured by", "Second video"],
      parts.map((part) => partRow(input, part)),
      { numeric: [1] },
    ),
    ...list(notes),
  ];
}

function partRow(input: PacketInput, part: BuiltPart): string[] {
  const { file, report } = input;
  const label = report.tieIns.find(({ tieIn }) => tieIn.id === part.tieInId)?.tieIn.label;
  const what = BUILT_WORDS[part.kind];
  const run = file.runs.find(({ id }) => id === part.runId);
  return [
    label === undefined ? what : `${label} ${what}`,
    placeWords(part),
    pipeOf(part),
    depthWords(part) || "–",
    part.slope === null ? "–" : `${part.slope / 100}%`,
    [part.by, part.on === "" ? "" : EN.day(part.on)].filter(Boolean).join(", "),
    run === undefined
      ? "–"
      : [run.name, part.second === null ? "" : videoTime(part.second)].filter(Boolean).join(", "),
  ];
}

/** `6 in PVC, wye`; a dash where nothing of it was entered. */
export function pipeOf({ diameter, material, fitting }: BuiltPart): string {
  const words = [
    [diameter === null ? "" : `${diameter} in`, material === "unknown" ? "" : EN.material[material]]
      .filter(Boolean)
      .join(" "),
    fitting === "unknown" ? "" : FITTING_WORDS[fitting],
  ].filter(Boolean);
  return words.length === 0 ? "–" : words.join(", ");
}

function connectionTable({ file, report }: PacketInput, { parts }: AsBuilt): LetterBlock[] {
  const rows = report.tieIns
    .toSorted(
      (a, b) => (a.station ?? Number.MAX_SAFE_INTEGER) - (b.station ?? Number.MAX_SAFE_INTEGER),
    )
    .map((finding) => {
      const done = parts.findLast(({ tieInId }) => tieInId === finding.tieIn.id);
      const property = file.properties.find(({ id }) => id === finding.propertyId);
      const station = done?.from ?? finding.station;
      return [
        finding.tieIn.label,
        station === null ? "unknown" : plainFeet(station),
        scheduleSide(finding.side, finding.compass),
        sizeWords(finding.tieIn.diameter, finding.tieIn.material),
        property ? streetOf(property.address) : "unknown",
        nowWords(finding, done),
      ];
    });
  if (rows.length === 0) return [paragraph("No connection is on file.")];
  return table(["Tie-in", "Station, ft", "Side", "Size, material", "Property", "Now"], rows, {
    numeric: [1],
  });
}

function nowWords({ live, standing }: TieInFinding, done: BuiltPart | undefined): string {
  if (done !== undefined) return `${BUILT_WORDS[done.kind]}, ${EN.day(done.on)}`;
  if (standing === "not-a-sanitary-branch") return EN.standing[standing];
  return live ? "in use, not changed" : "not in use, not changed";
}

function inspectionBlocks({ file }: PacketInput): LetterBlock[] {
  const rows = file.inspections
    .filter(({ result }) => result === "passed" || result === "failed")
    .toSorted((a, b) => a.bookedFor.localeCompare(b.bookedFor))
    .map(({ title, bookedFor, inspector, result, note }) => [
      title === "" ? "Inspection" : title,
      EN.day(bookedFor),
      inspector === "" ? "–" : inspector,
      [result, note].filter(Boolean).join(": "),
    ]);
  if (rows.length === 0) return [];
  return [heading("Inspections"), ...table(["Inspection", "On", "Inspector", "Result"], rows)];
}

const CHECK_WORDS = {
  shown: "☑ shown",
  missing: "☐ missing",
  "does-not-apply": "– not applicable",
};

function checklistBlocks(checks: readonly DrawingCheck[]): LetterBlock[] {
  if (checks.length === 0) return [];
  return [
    heading("The authority’s drawing checklist"),
    ...table(
      ["Item", "", "By"],
      checks.map(({ item, state, sentence }) => [item.title, CHECK_WORDS[state], sentence]),
    ),
  ];
}

/** Drawings and photos that were added to what was built, and to what the authority asks for. */
function paperSheets({ file }: PacketInput): Sheet[] {
  const asked = new Set(
    (file.authority?.requirements ?? [])
      .filter(({ sheet }) => sheet === "as-built")
      .map(({ id }) => id),
  );
  const ids = [
    ...file.built.map(({ uploadId }) => uploadId),
    ...file.requirementMarks
      .filter(({ requirementId, state }) => asked.has(requirementId) && state !== "does-not-apply")
      .map(({ uploadId }) => uploadId),
  ];
  return [...new Set(ids)].flatMap((id) => {
    const upload = file.uploads.find((each) => each.id === id);
    if (upload === undefined) return [];
    return [{ ...composed("upload", upload.name, []), uploadId: upload.id }];
  });
}
