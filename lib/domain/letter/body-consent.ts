import { workOnLot } from "../consent/lots-worked.ts";
import { heading, list, paragraph, whereIs, workBegins, workTitle } from "./common.ts";
import { type LetterFacts, placeOf } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import { letterStrip } from "./letter-strip.ts";

/** Where, when, on what terms; and that it can be taken back. */
export function entryBody(facts: LetterFacts): LetterBlock[] {
  const { words, place, office } = facts;
  const begins = workBegins(facts);
  const area = areaLines(facts);
  return [
    paragraph(words.entry.opening(place)),
    heading(words.entry.area),
    ...list(area.length === 0 ? [words.entry.areaNone] : area),
    letterStrip(facts, "lot"),
    heading(words.entry.when),
    paragraph(begins === null ? words.entry.whenOpen : words.entry.whenFrom(words.weekday(begins))),
    heading(words.entry.terms),
    ...list(words.entry.termLines(office.insurance)),
    paragraph(words.entry.tenant),
  ];
}

function areaLines(facts: LetterFacts): string[] {
  const { file, report, property, words } = facts;
  const crossings = file.crossings
    .filter((crossing) => crossing.propertyId === property?.id)
    .map(({ from, to, easement, recordingNumber }) => {
      const known =
        recordingNumber === ""
          ? words.entry.easement[easement]
          : words.entry.recordedAs(recordingNumber);
      return words.entry.areaCross(words.stretch(from, to), known);
    });
  const work = property === null ? [] : workOnLot(file, report.tieIns, property.id).entered;
  const here = work.map((item) =>
    words.entry.areaWork(workTitle(item, facts), whereIs(item, facts)),
  );
  return [...crossings, ...here];
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
    paragraph(words.agreement.opening),
    ...existing.map(paragraph),
    heading(words.agreement.parties),
    ...list(places),
    heading(words.agreement.steps),
    ...list(words.agreement.stepLines(file.authority?.name ?? words.agreement.authority)),
  ];
}
