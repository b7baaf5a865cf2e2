import { heading, list, paragraph, table, workBegins, workLines } from "./common.ts";
import { type LetterFacts, pipeOf } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import { letterStrip } from "./letter-strip.ts";

/** Dates, contractor, telephone, permits, and what to expect at the door. */
export function startBody(facts: LetterFacts): LetterBlock[] {
  const { file, words, office } = facts;
  const { start } = words;
  const begins = workBegins(facts);
  const event = file.events.filter((each) => each.event === "work-begins").at(-1);
  const numbers = (texts: readonly string[]) =>
    texts.length === 0 ? start.none : words.list(texts);
  return [
    paragraph(start.opening(pipeOf(facts))),
    ...table(words.visit.head, [
      [start.day, begins === null ? words.notSet : words.weekday(begins)],
      [start.hours, event && event.note !== "" ? event.note : start.hoursOpen],
      [start.contractor, office.name],
      [start.phone, office.phone],
      [start.permits, numbers(file.permits.flatMap(({ number }) => numberWords(facts, number)))],
      [
        start.tickets,
        numbers(file.locateTickets.flatMap(({ number }) => numberWords(facts, number))),
      ],
    ]),
    heading(start.expect),
    ...list(start.expects),
    heading(start.work),
    ...list(workLines(facts)),
    letterStrip(facts, "work"),
  ];
}

function numberWords({ words }: LetterFacts, number: string): string[] {
  return number === "" ? [] : [words.start.permit(number)];
}

/** Exact day and hours, why, what counts as use, and whom to call who cannot be without water. */
export function pauseBody(facts: LetterFacts): LetterBlock[] {
  const { file, words, place, office } = facts;
  const { pause } = words;
  const event = file.events.filter((each) => each.event === "drains-paused").at(-1);
  return [
    paragraph(pause.opening(place)),
    ...table(words.visit.head, [
      [pause.from, event ? words.weekday(event.on) : words.notSet],
      [pause.hours, event && event.note !== "" ? event.note : pause.openHours],
      [words.frame.telephone, office.phone],
    ]),
    paragraph(pause.why),
    heading(pause.counts),
    ...list(pause.countLines),
    paragraph(pause.happens),
    paragraph(pause.help),
    paragraph(pause.over),
  ];
}

export function spillBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  return [
    paragraph(words.spill.opening(place)),
    heading(words.spill.do),
    ...list(words.spill.doLines),
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
  const lines = file.events.flatMap(({ event, on, note }) => {
    if (event === "authority-order") return [words.response.order(words.day(on), note)];
    if (event === "corrections-asked") return [words.response.corrections(words.day(on), note)];
    return [];
  });
  return lines.length === 0 ? [words.response.noOrder] : lines;
}

function stateLines({ file, report, words }: LetterFacts): string[] {
  const undocumented = report.tieIns.filter(({ standing }) => standing === "undocumented").length;
  const open = report.holds.filter((hold) => hold.waiver === null).length;
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
