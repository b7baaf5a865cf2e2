import { papersInForce } from "../clocks/permit-bars.ts";
import { enteredEnd } from "../clocks/work-end.ts";
import type { SpillStep, SpillStepKind } from "../facts/spill-step.ts";
import { permitStateOf } from "../permit/steps.ts";
import { heading, lead, list, paragraph, table, workBegins, workLines } from "./common.ts";
import { type LetterFacts, pipeOf } from "./facts.ts";
import { eventOf, hoursWords, phoneRows } from "./hours.ts";
import type { LetterBlock } from "./letter.ts";
import { letterStrip } from "./letter-strip.ts";

/** Dates, contractor, phone, permits, and what to expect at the door. */
export function startBody(facts: LetterFacts): LetterBlock[] {
  const { file, words, office } = facts;
  const { start } = words;
  const begins = workBegins(facts);
  const event = eventOf(facts, "work-begins");
  const lastOn = enteredEnd(file);
  const hours = hoursWords(event, words);
  const inForce = papersInForce(file, facts.report.today);
  return [
    ...lead(begins === null ? null : words.lead.start(words.weekday(begins))),
    paragraph(start.opening(pipeOf(facts))),
    ...table(words.visit.head, [
      [start.day, begins === null ? words.notSet : words.weekday(begins)],
      [start.end, lastOn === null ? words.notSet : start.until(words.weekday(lastOn))],
      [start.hours, hours === "" ? words.notSet : hours],
      [start.contractor, office.name],
      ...phoneRows(facts),
      [start.permits, numbersOf(facts, inForce.permits)],
      [start.tickets, numbersOf(facts, inForce.tickets)],
      ...inspectionRow(facts),
    ]),
    heading(start.expect),
    ...list(start.expects),
    paragraph(start.drains),
    heading(start.work),
    ...list(workLines(facts)),
    letterStrip(facts, "work"),
  ];
}

/** What is in force, each by its number; a reader takes a number that is printed for a permit. */
function numbersOf({ words }: LetterFacts, papers: readonly { readonly number: string }[]): string {
  const numbers = papers.flatMap(({ number }) => (number === "" ? [] : [number]));
  return numbers.length === 0 ? words.start.none : words.list(numbers.map(words.start.permit));
}

/** Inspections that are booked; no row where none is. */
function inspectionRow({ file, words }: LetterFacts): string[][] {
  const booked = file.inspections
    .filter(({ result }) => result === "booked")
    .map(({ title, bookedFor, bookedAt }) =>
      words.start.inspection(title, words.moment(bookedFor, bookedAt)),
    );
  return booked.length === 0 ? [] : [[words.start.inspections, words.list(booked)]];
}

/** Exact day and hours, why, what counts as use, and whom to call who cannot be without water. */
export function pauseBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const { pause } = words;
  const event = eventOf(facts, "drains-paused");
  const hours = hoursWords(event, words);
  return [
    ...lead(event === null ? null : words.lead.pause(place, words.weekday(event.on), hours)),
    paragraph(pause.opening(place)),
    ...table(words.visit.head, [
      [pause.from, event ? words.weekday(event.on) : words.notSet],
      [pause.hours, hours === "" ? pause.openHours : hours],
      ...phoneRows(facts),
    ]),
    paragraph(pause.why),
    heading(pause.counts),
    ...list(pause.countLines),
    paragraph(pause.happens),
    paragraph(pause.help),
    paragraph(pause.over),
  ];
}

/** The steps of the spill that is known last, in their order. */
export function spillSteps({ file }: LetterFacts): SpillStep[] {
  const steps = file.spillSteps.toSorted(
    (one, other) => one.on.localeCompare(other.on) || one.at.localeCompare(other.at),
  );
  const known = steps.findLastIndex(({ kind }) => kind === "known");
  return steps.slice(Math.max(known, 0));
}

/** Whether the reader is an authority, which gets figures and no advice. */
export function isAuthority({ party }: LetterFacts): boolean {
  return party.kind === "public-body";
}

/** What happened, as it was entered and no more; to a resident, what to do. */
export function spillBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const { spill } = words;
  const steps = spillSteps(facts);
  const known = steps.find(({ kind }) => kind === "known");
  const where = known === undefined || known.place === "" ? place : known.place;
  const lines = steps.map((step) => stepLine(facts, step));
  const happened = isAuthority(facts) ? [...lines, ...figures(facts, known, steps)] : lines;
  return [
    paragraph(spill.opening(where)),
    ...(isAuthority(facts) ? [] : [heading(spill.do), ...list(spill.doLines)]),
    ...(happened.length === 0 ? [] : [heading(spill.happened), ...list(happened)]),
    ...table(words.visit.head, phoneRows(facts)),
  ];
}

function stepLine({ words, office }: LetterFacts, step: SpillStep): string {
  const { spill } = words;
  const moment = words.moment(step.on, step.at);
  const lines: Record<SpillStepKind, () => string> = {
    known: () => spill.known(moment, step.place),
    "office-called": () => spill.called(office.name, moment),
    "crew-on-site": () => spill.onSite(moment),
    "flow-stopped": () => spill.stopped(moment),
    reported: () => spill.reported(step.place, moment, step.number),
    "cleaned-up": () => spill.cleaned(moment),
  };
  return lines[step.kind]();
}

function figures(
  { words }: LetterFacts,
  known: SpillStep | undefined,
  steps: readonly SpillStep[],
): string[] {
  const { spill } = words;
  const stopped = steps.some(({ kind }) => kind === "flow-stopped");
  return [
    spill.volume(known?.gallons ?? null),
    spill.reached(known?.reached ?? ""),
    ...(stopped ? [] : [spill.notStopped]),
  ];
}

/** To the authority: what its order or corrections are answered with. Counts only, no names. */
export function responseBody(facts: LetterFacts): LetterBlock[] {
  const { file, words } = facts;
  const { response } = words;
  const begins = workBegins(facts);
  return [
    paragraph(response.opening(file.line.name)),
    heading(response.about),
    ...list(orderLines(facts)),
    heading(response.state),
    ...list(stateLines(facts)),
    heading(response.dates),
    paragraph(begins === null ? response.noStart : response.start(words.weekday(begins))),
    heading(response.plan),
    ...list(workLines(facts)),
    letterStrip(facts, "work"),
  ];
}

function orderLines({ file, words }: LetterFacts): string[] {
  const lines = file.events.flatMap(({ event, on, reference }) => {
    if (event === "authority-order") return [words.response.order(words.day(on), reference)];
    if (event === "corrections-asked")
      return [words.response.corrections(words.day(on), reference)];
    return [];
  });
  return lines.length === 0 ? [words.response.noOrder] : lines;
}

function stateLines({ file, report, words }: LetterFacts): string[] {
  const undocumented = report.tieIns.filter(({ standing }) => standing === "undocumented").length;
  const open = report.holds.filter(
    ({ waiver, cause }) => waiver === null && cause !== "household-need",
  ).length;
  const numbers = file.permits.map(({ number }) => number).filter((number) => number !== "");
  return [
    words.response.owners(file.properties.length),
    words.response.connections(report.tieIns.length, undocumented),
    words.response.holds(open),
    numbers.length === 0
      ? words.response.noPermit
      : words.response.permits(words.list(numbers.map(words.start.permit))),
  ];
}

/** How far the work is by its permits: final, inspected and closed up, or before that. */
export function workStanding({ file }: LetterFacts): "final" | "dug" | "open" {
  const states = file.permits
    .map((permit) => permitStateOf(file, permit))
    .filter((state) => state !== "withdrawn" && state !== "superseded");
  if (states.length > 0 && states.every((state) => state === "final")) return "final";
  const inspected = [
    "passed-may-backfill",
    "as-built-submitted",
    "as-built-rejected",
    "as-built-accepted",
    "final",
  ];
  return states.length > 0 && states.every((state) => inspected.includes(state)) ? "dug" : "open";
}
