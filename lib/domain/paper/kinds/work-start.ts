import { earliestStart } from "../../clocks/earliest-start.ts";
import { papersInForce } from "../../clocks/permit-bars.ts";
import { enteredEnd } from "../../clocks/work-end.ts";
import type { LineFile } from "../../facts/line-file.ts";
import type { Report } from "../../findings/report.ts";
import { startAudience } from "../../notices/audience.ts";
import { deedsOfWork } from "../../split/work-deeds.ts";
import { formatDate, formatDay } from "../../time/format-day.ts";
import { toAll } from "../addressed.ts";
import { heading, lead, list, paragraph, table, workBegins, workLines } from "../common.ts";
import { ahead } from "../day-ahead.ts";
import { type LetterFacts, pipeOf } from "../facts.ts";
import { eventOf, hoursWords, phoneRows } from "../hours.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { letterStrip } from "../letter-strip.ts";

/** Everybody on the line is told of the days, hours and access before the work starts. */
export const WORK_START: LetterPlan = {
  title: {
    en: "Work on the shared sewer is about to start",
    es: "Va a empezar la obra en el desagüe compartido",
  },
  recipients: (file) => toAll(startAudience(file)),
  deeds: (file, { tieIns }) => deedsOfWork(file, tieIns),
  ahead: (facts) => {
    const on = workBegins(facts);
    return on === null ? null : { what: "work begins", on };
  },
  body: startBody,
  choices: ({ words }) => words.start.choices,
  cautions: ["trench", "sewage", "gas", "drainsLater"],
  gaps: [hasWorkDay, mayBegin],
  due: workAhead,
};

function hasWorkDay(facts: LetterFacts): string | null {
  if (workBegins(facts) === null)
    return "The first day of work is not set: enter it with the locate ticket, or as an event.";
  if (enteredEnd(facts.file) === null)
    return "How long the work takes is not set: enter the event “work begins” with its last day and hours.";
  return hoursWords(eventOf(facts, "work-begins"), facts.words) === ""
    ? "The hours of work are not set: enter when it begins and ends with the event."
    : null;
}

/** Nobody is told of a start that the permits, the locate or a consent does not allow. */
function mayBegin(facts: LetterFacts): string | null {
  const { file, report } = facts;
  const begins = workBegins(facts);
  if (begins === null) return null;
  const { bars, day, latest, sentence } = earliestStart(file, report.today, report);
  if (bars.length === 0 && day === null) return sentence;
  const late =
    latest !== null && begins > latest ? [`The start must be by ${formatDate(latest)}.`] : [];
  const against = bars.flatMap(({ until, because }) => {
    if (until === null) return [`: ${because}.`];
    return until > begins ? [`, but not before ${formatDate(until)}, because ${because}.`] : [];
  });
  const gaps = against.map((why) => `Work cannot begin on ${formatDate(begins)}${why}`);
  return gaps.length + late.length === 0 ? null : [...gaps, ...late].join(" ");
}

function workAhead(file: LineFile, report: Report) {
  const event = ahead(file, report, "work-begins", "Work begins");
  if (event !== null) return event;
  const day = file.locateTickets.findLast(
    ({ workBeginsOn }) => workBeginsOn !== null,
  )?.workBeginsOn;
  return day && day >= report.today
    ? { because: `Work begins ${formatDay(day, report.today)}` }
    : null;
}

/** Dates, contractor, phone, permits, and what to expect at the door. */
function startBody(facts: LetterFacts): LetterBlock[] {
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
      ...(begins === null ? [[start.day, words.notSet]] : []),
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
