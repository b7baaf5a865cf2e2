import type { LineFile } from "../../facts/line-file.ts";
import { LOT_ROLES } from "../../facts/party.ts";
import type { RecordEntry } from "../../facts/record.ts";
import type { EntryFinding, TieInFinding } from "../../findings/report.ts";
import { beginsLine } from "../../reconcile/begins-line.ts";
import { counterTolerance } from "../../run/convert.ts";
import { unseenStretches } from "../../run/coverage.ts";
import { faultsSeen, type SeenFault, waterSeen } from "../../run/faults.ts";
import { aboutProperty, atEvery } from "../addressed.ts";
import {
  heading,
  heldStretches,
  lead,
  list,
  paragraph,
  pictures,
  replyBy,
  table,
} from "../common.ts";
import { knownOwner, type LetterFacts, pipeOf, placeOf, whoOf } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { letterStrip } from "../letter-strip.ts";
import { shortSide } from "../side-said.ts";
import { byStation, stillOf } from "../stills.ts";
import type { LetterWords } from "../words-en.ts";

/** Every owner, and those of crossed lots, are told what was seen and what is not yet known. It informs: a day to reply by is the office’s choice. */
export const FINDING: LetterPlan = {
  title: {
    en: "What the camera found in a shared sewer pipe",
    es: "Lo que vio la cámara en el desagüe compartido",
  },
  recipients: (file) => atEvery(file, file.properties.map(aboutProperty), LOT_ROLES),
  ownProse: true,
  body: findingBody,
  choices: ({ words }) => words.finding.choices,
  cautions: ["records", "cap", "gas", "sewage"],
  gaps: [],
  due: cameraSaw,
};

function cameraSaw({ runs, observations }: LineFile) {
  return runs.length === 0 || observations.length === 0
    ? null
    : { because: "The camera run is on file, and every owner is to know what it saw" };
}

/** What is asked, what is not yet known, then what was seen, when and by whom; no blame and no money. */
function findingBody(facts: LetterFacts): LetterBlock[] {
  const { words } = facts;
  return [
    ...lead(words.lead.finding(replyBy(facts))),
    paragraph(`${openingOf(facts)} ${stakeOf(facts)}`),
    heading(words.finding.ask),
    ...list(words.finding.asks),
    heading(words.finding.notKnown),
    ...list(notKnownLines(facts)),
    heading(words.finding.seen),
    ...runLines(facts),
    ...tieInTable(facts),
    letterStrip(facts, "finding"),
    ...faultLines(facts),
    paragraph(words.finding.stations),
    ...pictures(spokenOf(facts).flatMap((finding) => stillOf(facts, finding))),
  ];
}

function openingOf(facts: LetterFacts): string {
  const { file, words, office } = facts;
  const days = [...new Set(file.runs.map((run) => run.ranOn))].sort();
  if (days.length === 0) return words.finding.openingNoRun(office.name, pipeOf(facts));
  return words.finding.opening(office.name, words.list(days.map(words.onDay)), pipeOf(facts));
}

function stakeOf({ words, place, own, property }: LetterFacts): string {
  const stations = own.flatMap(({ tieIn, station }) =>
    station === null
      ? [tieIn.label]
      : [words.finding.connectedAt(tieIn.label, words.feet(station))],
  );
  if (stations.length > 0) return words.finding.connected(place, words.list(stations));
  if (property?.stake === "crossed") return words.finding.crossed;
  if (property?.stake === "neighbour") return words.finding.neighbor(place);
  return words.finding.candidate(place);
}

/** When, by whom, from where and how far the camera went. */
function runLines({ file, words }: LetterFacts): LetterBlock[] {
  if (file.runs.length === 0) return [paragraph(words.finding.noRun)];
  const { run: line, runFeet, runFeetFromMain } = words.finding;
  return list(
    file.runs.map((run) => {
      const feet = run.measuredFrom === "main" ? runFeetFromMain : runFeet;
      const seen = run.toCounter === null ? "" : feet(run.fromCounter, run.toCounter);
      return line(words.day(run.ranOn), run.operator, run.accessPoint, seen);
    }),
  );
}

function tieInTable(facts: LetterFacts): LetterBlock[] {
  const { report, words } = facts;
  const seen = report.tieIns.toSorted(byStation).map((finding) => tieInRow(facts, finding));
  const unseen = report.entries
    .filter((entry) => entry.tieInId === null)
    .toSorted(byStation)
    .map((entry) => entryRow(facts, entry));
  return table(words.finding.tieInHead, [...seen, ...unseen], { numeric: [1] });
}

function tieInRow(facts: LetterFacts, finding: TieInFinding): string[] {
  const { file, words } = facts;
  const begins = beginsLine(file.line, finding);
  return [
    finding.tieIn.label,
    finding.station === null
      ? words.unknown
      : words.about(finding.station, finding.uncertainty ?? 0),
    begins ? words.finding.noSide : shortSide(words, finding.side, finding.compass),
    whoOf(facts, finding),
    begins ? words.finding.begins : words.standing[finding.standing],
  ];
}

function entryRow({ file, words }: LetterFacts, finding: EntryFinding): string[] {
  const entry = file.entries.find((each) => each.id === finding.entryId);
  const property = file.properties.find((each) => each.id === entry?.propertyId);
  const station = finding.station ?? finding.recordStation;
  return [
    entry === undefined ? "" : words.typed(entry.label),
    station === null ? words.unknown : words.feet(station),
    shortSide(words, entry?.side ?? "unknown", finding.compass),
    property ? placeOf(property.address) : words.unknown,
    isExplained(entry)
      ? words.finding.explained(words.standing[finding.standing])
      : words.standing[finding.standing],
  ];
}

/** A named person has said what became of what the record shows. */
function isExplained(entry: RecordEntry | undefined): boolean {
  return entry !== undefined && entry.explanation !== "";
}

const MOST_PICTURES = 6;

/** The reader's own tie-ins, then those of which nobody knows whose they are. */
function spokenOf({ report, own }: LetterFacts): TieInFinding[] {
  const nobodys = report.tieIns.filter((finding) => finding.live && knownOwner(finding) === null);
  const shown = [...own, ...nobodys.toSorted(byStation)];
  return [...new Set(shown)].slice(0, MOST_PICTURES);
}

/** From the main upstream, what has no place last. */
function faultLines(facts: LetterFacts): LetterBlock[] {
  const { file, report, words } = facts;
  const seen = [
    ...faultsSeen(file, report).map((fault) => ({
      station: fault.from,
      line: faultLine(facts, fault),
    })),
    ...waterSeen(file, report).map((water) => ({
      station: water.from,
      line: waterLine(facts, water),
    })),
    ...blockedEnds(facts),
  ];
  const lines = seen.toSorted(byStation).map(({ line }) => line);
  if (lines.length === 0) return file.runs.length === 0 ? [] : [paragraph(words.finding.noFaults)];
  return [paragraph(words.finding.faults([...new Set(lines)].join("; ")))];
}

function faultLine(facts: LetterFacts, seen: SeenFault): string {
  const { words } = facts;
  const what = seen.fault === null ? words.unknown : words.fault[seen.fault];
  return placedLine(facts, seen, withWater(words, what, seen));
}

function waterLine(facts: LetterFacts, seen: SeenFault): string {
  const { words } = facts;
  return placedLine(facts, seen, withWater(words, words.finding.standingWater, seen));
}

/** With how deep water stood there, where somebody told. */
function withWater(words: LetterWords, what: string, { waterDepth }: SeenFault): string {
  return waterDepth === null ? what : words.finding.deep(what, waterDepth);
}

function placedLine({ words }: LetterFacts, { from, to, off }: SeenFault, what: string): string {
  if (from === null) return words.finding.faultLine(what, words.finding.relative);
  const where = to === null ? words.feet(from) : words.stretch(from, to);
  const unsure = off > counterTolerance(from) ? ` ± ${words.feet(off)}` : "";
  return words.finding.faultLine(what, `${where}${unsure}`);
}

/** Where a run ended because nothing could pass. */
function blockedEnds({ file, report, words }: LetterFacts) {
  return file.runs.flatMap(({ id, ended }) => {
    const station = report.runCoverage.find(({ runId }) => runId === id)?.to ?? null;
    if (ended !== "blocked") return [];
    const where = station === null ? words.finding.relative : words.feet(station);
    return [{ station, line: words.finding.blocked(where) }];
  });
}

function notKnownLines(facts: LetterFacts): string[] {
  const lines = [
    ...undocumentedLines(facts),
    ...recordLines(facts),
    ...coverageLines(facts),
    ...answerLines(facts),
  ];
  return lines.length === 0 ? [facts.words.finding.settled] : lines;
}

function undocumentedLines({ report, words }: LetterFacts): string[] {
  const open = report.tieIns.filter(
    (finding) =>
      finding.standing === "undocumented" && finding.live && knownOwner(finding) === null,
  );
  if (open.length === 0) return [];
  return [
    words.finding.undocumented(words.list(open.map(({ tieIn }) => tieIn.label)), open.length),
  ];
}

function recordLines({ file, report, words }: LetterFacts): string[] {
  const labels = (standing: EntryFinding["standing"]) =>
    report.entries
      .filter((entry) => entry.standing === standing && entry.tieInId === null)
      .flatMap((finding) => file.entries.find((each) => each.id === finding.entryId) ?? [])
      .filter((entry) => !isExplained(entry))
      .map(({ label }) => words.typed(label));
  const notSeen = labels("on-record-not-seen");
  const notInspected = labels("on-record-not-inspected");
  const unclear = labels("on-record-place-unclear");
  const undecided = [...report.tieIns, ...report.entries].some((finding) => !finding.decided);
  return [
    ...(notSeen.length > 0 ? [words.finding.notSeen(words.list(notSeen), notSeen.length)] : []),
    ...(notInspected.length > 0
      ? [words.finding.notInspected(words.list(notInspected), notInspected.length)]
      : []),
    ...(unclear.length > 0
      ? [words.finding.placeUnclear(words.list(unclear), unclear.length)]
      : []),
    ...(undecided ? [words.finding.undecided] : []),
  ];
}

function coverageLines({ report, words }: LetterFacts): string[] {
  return unseenStretches(report.coverage).flatMap(({ from, to, state }) =>
    state === "seen" ? [] : [words.finding.gap(words.stretch(from, to), words.coverage[state])],
  );
}

function answerLines({ report, words }: LetterFacts): string[] {
  if (report.reaches.length === 0) return [words.finding.noBoundary];
  return heldStretches(report.reaches)
    .filter(({ holder }) => holder === "unclear")
    .map(({ from, to }) => words.finding.unclear(words.stretch(from, to)));
}
