import type { ScopeItem } from "../split/scope.ts";
import { scopeInForce } from "../split/scope-in-force.ts";
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
  const here = scopeInForce(file)
    .filter((item) => isOnLot(item, facts))
    .map((item) => words.entry.areaWork(workTitle(item, facts), whereIs(item, facts)));
  return [...crossings, ...here];
}

/** Work on the reader's own branch, or where the pipe crosses the reader's lot. */
function isOnLot(item: ScopeItem, { file, own, property }: LetterFacts): boolean {
  if (item.place === "branch") return own.some(({ tieIn }) => tieIn.id === item.tieInId);
  const { from } = item;
  if (from === null) return false;
  const to = item.to ?? from;
  return file.crossings.some(
    (crossing) =>
      crossing.propertyId === property?.id && from <= crossing.to && to >= crossing.from,
  );
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
