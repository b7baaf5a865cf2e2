import { insuranceStanding, type StandingPaper } from "../../clocks/contractor-standing.ts";
import { endOfWork } from "../../clocks/work-end.ts";
import { workOnLot } from "../../consent/lots-worked.ts";
import { areaLacks, type DigArea, plantingLacks } from "../../facts/dig-area.ts";
import type { LineFile } from "../../facts/line-file.ts";
import { LOT_ROLES } from "../../facts/party.ts";
import type { ScopeItem } from "../../facts/scope.ts";
import type { Report } from "../../findings/report.ts";
import { plainFeet } from "../../length/station.ts";
import { formatPhone } from "../../party/phone.ts";
import type { Day } from "../../time/day.ts";
import { type About, aboutProperty, atEvery } from "../addressed.ts";
import {
  heading,
  lead,
  list,
  paragraph,
  replyBy,
  whereFrom,
  workBegins,
  workTitle,
} from "../common.ts";
import type { LetterFacts } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { letterStrip } from "../letter-strip.ts";

/** Owners of lots to enter or dig are asked for leave: where, when, on what terms. */
export const ENTRY_CONSENT: LetterPlan = {
  title: {
    en: "Request to enter and dig",
    es: "Solicitud para entrar y excavar",
  },
  recipients: (file, report) => atEvery(file, lotsToEnter(file, report), LOT_ROLES),
  wantsReply: true,
  ahead: (facts) => {
    const on = firstDay(facts);
    return on === null ? null : { what: "the lot is entered", on };
  },
  body: entryBody,
  choices: ({ words }) => words.entry.choices,
  cautions: ["enterOnly", "trench", "sewage", "records"],
  gaps: [hasDigArea, isInsured],
  due: areaEntered,
};

/** Lots with an area entered, and lots over or on whose branch something is done. */
function lotsToEnter(file: LineFile, { tieIns }: Report): About[] {
  const asked = new Set(file.digAreas.map(({ propertyId }) => propertyId));
  return file.properties
    .filter(({ id }) => asked.has(id) || workOnLot(file, tieIns, id).entered.length > 0)
    .map(aboutProperty);
}

function hasDigArea(facts: LetterFacts): string | null {
  const areas = digAreasOf(facts);
  if (areas.length === 0)
    return `The area to enter or dig at ${facts.place} is not entered: where, how large, which days, who puts the surface back.`;
  const lacks = [...new Set(areas.flatMap((area) => [...areaLacks(area), ...plantingLacks(area)]))];
  return lacks.length === 0
    ? null
    : `Of the area at ${facts.place} is not entered: ${lacks.join(", ")}.`;
}

function isInsured(facts: LetterFacts): string | null {
  const paper = insuranceFor(facts);
  const fine = paper.state === "in-force" || paper.state === "end-of-work-unknown";
  return fine ? null : paper.sentence;
}

function areaEntered({ digAreas }: LineFile) {
  return digAreas.length === 0 ? null : { because: "Lots are to be entered or dug" };
}

/** Where, when, on what terms as they were entered; and that it can be taken back. */
function entryBody(facts: LetterFacts): LetterBlock[] {
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
function digAreasOf({ file, property }: LetterFacts): DigArea[] {
  return file.digAreas.filter(({ propertyId }) => propertyId === property?.id);
}

function areaWords({ words }: LetterFacts, area: DigArea): string {
  const { entry } = words;
  const place = area.place === "" ? entry.placeUnset : words.typed(area.place);
  if (area.restoration === "nothing-dug") return entry.areaEnter(place);
  const size =
    area.length === null || area.width === null
      ? entry.areaUnset
      : entry.areaSize(plainFeet(area.length), words.feet(area.width));
  return entry.areaDig(size, place);
}

/** The liability insurance, held against the last day on the reader's lot, else that of the work. */
function insuranceFor({ office, report, file, property }: LetterFacts): StandingPaper {
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

/** The first day on the reader's lot, else that of the work; null while none is set. */
function firstDay(facts: LetterFacts): Day | null {
  const days = digAreasOf(facts).flatMap(({ firstOn }) => firstOn ?? []);
  return days.toSorted()[0] ?? workBegins(facts);
}

function whenWords(facts: LetterFacts): string {
  const { words } = facts;
  const areas = digAreasOf(facts);
  const first = firstDay(facts);
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
    ...areas.map((area) => plantingWords(facts, area)),
    ...areas.map(({ notRestored }) =>
      notRestored === "" ? "" : entry.notRestored(facts.words.typed(notRestored)),
    ),
    ...areas.map(({ contact, contactPhone }) =>
      contact === "" && contactPhone === ""
        ? ""
        : entry.contact(contact, formatPhone(contactPhone)),
    ),
  ];
  return [...new Set(lines)].filter((line) => line !== "");
}

/** What happens to trees and plantings where something is dug, as it was entered. */
function plantingWords(
  { words }: LetterFacts,
  { restoration, plantings, plants }: DigArea,
): string {
  const { entry } = words;
  if (restoration === "nothing-dug" || plantings === "not-set") return "";
  if (plantings === "none") return entry.noPlantings;
  const named = plants.trim();
  const unnamed = plantings === "stay" ? "" : entry.plantingsUnset;
  return entry.plantings[plantings](named === "" ? unnamed : words.typed(named));
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
    words.entry.areaWork(workTitle(item, facts), whereFrom(item, facts)),
  );
  return [...digAreasOf(facts).map((area) => areaWords(facts, area)), ...crossings, ...here];
}

/** What is done on the reader's lot or branch. */
function workHere({ file, report, property }: LetterFacts): readonly ScopeItem[] {
  return property === null ? [] : workOnLot(file, report.tieIns, property.id).entered;
}
