import type { LineFile } from "../../facts/line-file.ts";
import { drainPlaces, pauseAudience } from "../../notices/audience.ts";
import { toAll } from "../addressed.ts";
import { heading, lead, list, paragraph, table } from "../common.ts";
import { ahead } from "../day-ahead.ts";
import { eventAhead } from "../day-told.ts";
import type { LetterFacts } from "../facts.ts";
import { eventOf, hoursWords, phoneRows } from "../hours.ts";
import type { LetterBlock } from "../letter.ts";
import type { CallAsked, LetterPlan } from "../letter-plan.ts";

/** Everybody who may send water into the line is told when none may be used. */
export const DRAIN_PAUSE: LetterPlan = {
  title: {
    en: "Do not use your drains",
    es: "No use sus desagües",
  },
  recipients: (file) => toAll(pauseAudience(file)),
  callsFirst: callsBeforeShutdown,
  ahead: (facts) => eventAhead(facts, "drains-paused", "drains are shut down"),
  body: pauseBody,
  choices: ({ words }) => words.pause.choices,
  cautions: ["drains", "sewage", "gas", "trench"],
  gaps: [hasPauseHours],
  due: (file, report) => ahead(file, report, "drains-paused", "Drains are shut down"),
};

/** Households with a need are called before anybody is told of a shutdown. */
function callsBeforeShutdown(file: LineFile): CallAsked[] {
  const day = file.events.findLast(({ event }) => event === "drains-paused")?.on ?? null;
  return [{ purpose: "drain-pause", day, places: drainPlaces(file) }];
}

function hasPauseHours(facts: LetterFacts): string | null {
  const event = eventOf(facts, "drains-paused");
  if (event === null)
    return "The day of the shutdown is not set: enter the event “drain shutdown” under Dates.";
  return hoursWords(event, facts.words) === ""
    ? "The hours of the shutdown are not set: enter when it begins and ends with the event."
    : null;
}

/**
 * Exact day and hours, why, what counts as use, and whom to call who cannot be without water. What
 * the first sentence says is not said again; what is not set is.
 */
function pauseBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const { pause } = words;
  const event = eventOf(facts, "drains-paused");
  const hours = hoursWords(event, words);
  return [
    ...lead(event === null ? null : words.lead.pause(place, words.weekday(event.on), hours)),
    paragraph(pause.opening),
    ...table(words.visit.head, [
      ...(event === null ? [[pause.from, words.notSet]] : []),
      ...(hours === "" ? [[pause.hours, pause.openHours]] : []),
      ...phoneRows(facts),
    ]),
    heading(pause.counts),
    ...list(pause.countLines),
    paragraph(pause.help),
    paragraph(pause.over),
  ];
}
