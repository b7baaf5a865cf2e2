import { insuranceStanding, type StandingPaper } from "../clocks/contractor-standing.ts";
import { endOfWork } from "../clocks/work-end.ts";
import { workOnLot } from "../consent/lots-worked.ts";
import type { DigArea } from "../facts/dig-area.ts";
import type { ScopeItem } from "../facts/scope.ts";
import { plainFeet } from "../length/station.ts";
import { formatPhone } from "../party/phone.ts";
import {
  heading,
  lead,
  list,
  paragraph,
  replyBy,
  whereIs,
  workBegins,
  workTitle,
} from "./common.ts";
import { type LetterFacts, placeOf } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import { letterStrip } from "./letter-strip.ts";

/** Where, when, on what terms as they were entered; and that it can be taken back. */
export function entryBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const lines = areaLines(facts);
  const crossed = facts.file.crossings.some(({ propertyId }) => propertyId === facts.property?.id);
  const drawn = crossed || workHere(facts).some(({ from }) => from !== null);
  const dug = digAreasOf(facts).some(({ restoration }) => restoration !== "nothing-dug");
  const ask = dug ? words.lead.dig : words.lead.enter;
  return [
    ...lead(ask(place, replyBy(facts))),
    paragraph(words.entry.opening(place)),
    heading(words.entry.area),
    ...list(lines.length === 0 ? [words.entry.areaNone] : lines),
    heading(words.entry.when),
    paragraph(whenWords(facts)),
    heading(words.entry.terms),
    ...list([...termsEntered(facts), ...insuredLine(facts), ...words.entry.termLines]),
    paragraph(words.entry.tenant),
    ...(drawn ? [letterStrip(facts, "lot")] : []),
  ];
}

/** The areas that were entered for the reader's lot. */
export function digAreasOf({ file, property }: LetterFacts): DigArea[] {
  return file.digAreas.filter(({ propertyId }) => propertyId === property?.id);
}

function areaWords({ words }: LetterFacts, area: DigArea): string {
  const { entry } = words;
  const place = area.place === "" ? entry.placeUnset : area.place;
  if (area.restoration === "nothing-dug") return entry.areaEnter(place);
  const size =
    area.length === null || area.width === null
      ? entry.areaUnset
      : entry.areaSize(plainFeet(area.length), words.feet(area.width));
  return entry.areaDig(size, place);
}

/** The liability insurance, held against the last day on the reader's lot, else that of the work. */
export function insuranceFor({ office, report, file, property }: LetterFacts): StandingPaper {
  const lasts = file.digAreas.flatMap(({ propertyId, lastOn }) =>
    propertyId === property?.id ? (lastOn ?? []) : [],
  );
  const end = lasts.toSorted().at(-1) ?? endOfWork(file);
  return insuranceStanding(office, { today: report.today, end });
}

/** Said only while it is on file and in force, and to which day; nothing else is promised. */
function insuredLine(facts: LetterFacts): string[] {
  const { number, expiresOn } = insuranceFor(facts);
  const { words, report } = facts;
  if (number === "" || expiresOn === null || expiresOn < report.today) return [];
  return [words.entry.insured(number, words.day(expiresOn))];
}

function whenWords(facts: LetterFacts): string {
  const { words } = facts;
  const areas = digAreasOf(facts);
  const first = areas.flatMap(({ firstOn }) => firstOn ?? []).toSorted()[0] ?? workBegins(facts);
  const last =
    areas
      .flatMap(({ lastOn }) => lastOn ?? [])
      .toSorted()
      .at(-1) ?? null;
  if (first === null) return words.entry.whenOpen;
  return last === null || last === first
    ? words.entry.whenFrom(words.weekday(first))
    : `${words.entry.whenOver(words.weekday(first), words.weekday(last))}.`;
}

/** What is put back by whom, what is not, whom to call: each only where somebody entered it. */
function termsEntered(facts: LetterFacts): string[] {
  const { entry } = facts.words;
  const areas = digAreasOf(facts);
  const restored = areas.map(({ restoration }) => entry.restoration[restoration]);
  const dug = restored.some((words) => words !== "");
  const lines = [
    ...(dug ? [entry.larger] : []),
    ...restored,
    ...(dug ? [entry.mayDiffer] : []),
    ...areas.map(({ notRestored }) => (notRestored === "" ? "" : entry.notRestored(notRestored))),
    ...areas.map(({ contact, contactPhone }) =>
      contact === "" && contactPhone === ""
        ? ""
        : entry.contact(contact, formatPhone(contactPhone)),
    ),
  ];
  return [...new Set(lines)].filter((line) => line !== "");
}

function areaLines(facts: LetterFacts): string[] {
  const { file, property, words } = facts;
  const crossings = file.crossings
    .filter((crossing) => crossing.propertyId === property?.id)
    .map(({ from, to, easement, recordingNumber }) => {
      const known =
        recordingNumber === ""
          ? words.entry.easement[easement]
          : words.entry.recordedAs(recordingNumber);
      return words.entry.areaCross(words.stretch(from, to), known);
    });
  const here = workHere(facts).map((item) =>
    words.entry.areaWork(workTitle(item, facts), whereIs(item, facts)),
  );
  return [...digAreasOf(facts).map((area) => areaWords(facts, area)), ...crossings, ...here];
}

/** What is done on the reader's lot or branch. */
function workHere({ file, report, property }: LetterFacts): readonly ScopeItem[] {
  return property === null ? [] : workOnLot(file, report.tieIns, property.id).entered;
}

/** What the recorded agreement is for and how it comes about; no amounts. */
export function agreementBody(facts: LetterFacts): LetterBlock[] {
  const { file, report, words } = facts;
  const ids = new Set([
    ...report.tieIns.map(({ propertyId }) => propertyId),
    ...file.crossings.map(({ propertyId }) => propertyId),
  ]);
  const places = file.properties
    .filter(({ id }) => ids.has(id))
    .map(({ address }) => placeOf(address));
  const existing = file.agreements.map(({ title, recordingNumber }) =>
    words.agreement.existing(title, recordingNumber),
  );
  return [
    ...lead(words.lead.agreement(replyBy(facts))),
    paragraph(words.agreement.opening),
    ...existing.map(paragraph),
    heading(words.agreement.parties),
    ...list(places),
    heading(words.agreement.steps),
    ...list(words.agreement.stepLines(file.authority?.name ?? words.agreement.authority)),
  ];
}
