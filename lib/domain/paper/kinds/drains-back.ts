import type { LineFile } from "../../facts/line-file.ts";
import type { Report } from "../../findings/report.ts";
import { type Addressee, pauseAudience } from "../../notices/audience.ts";
import { formatDay } from "../../time/format-day.ts";
import { toAll } from "../addressed.ts";
import { heading, lead, list, paragraph, table } from "../common.ts";
import { dayOf } from "../day-told.ts";
import type { LetterFacts } from "../facts.ts";
import { eventOf, phoneRows } from "../hours.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";

/** Whoever was told not to use drains is told that they may again. */
export const DRAINS_BACK: LetterPlan = {
  title: {
    en: "You may use your drains again",
    es: "Ya puede usar sus desagües",
  },
  recipients: (file) => toAll(backAudience(file)),
  body: backBody,
  choices: ({ words }) => words.back.choices,
  cautions: ["sewage"],
  gaps: [hasDrainsBack],
  due: drainsBack,
};

/** Who was told not to use drains is told that they may again: by letter, or as they would be now. */
function backAudience(file: LineFile): Addressee[] {
  const told = file.notices.flatMap(({ kind, state, partyId, propertyId }) =>
    kind === "drain-pause" && state === "sent" && propertyId !== null
      ? [{ partyId, propertyId }]
      : [],
  );
  const all = [...told, ...pauseAudience(file)];
  return all.filter(
    (one, at) =>
      all.findIndex(
        ({ partyId, propertyId }) => partyId === one.partyId && propertyId === one.propertyId,
      ) === at,
  );
}

/** Nobody is told that drains may be used before somebody has said so, with day and hour. */
function hasDrainsBack(facts: LetterFacts): string | null {
  const back = eventOf(facts, "drains-back");
  if (back === null || back.at === "")
    return "When the drains may be used again is not entered: enter the event “drains are back on” with its time.";
  const pause = eventOf(facts, "drains-paused");
  const before = pause !== null && `${back.on} ${back.at}` < `${pause.on} ${pause.at}`;
  if (before) return "The drains were shut down again after that: enter when they are back on.";
  return back.on > facts.report.today ? "The drains are not back on yet." : null;
}

/** A pause is over: those who were told of it wait for word. */
function drainsBack({ events }: LineFile, { today }: Report) {
  const back = events.findLast(({ event }) => event === "drains-back");
  const pause = events.findLast(({ event }) => event === "drains-paused");
  if (back === undefined || back.on > today || (pause !== undefined && back.on < pause.on))
    return null;
  return { because: `Drains are back on since ${formatDay(back.on, today)}`, since: back.on };
}

/** The pause is over, since when, and what to do first. */
function backBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const { back } = words;
  const { event, day } = dayOf(facts, "drains-back");
  const time = event === null || event.at === "" ? "" : words.time(event.at);
  const known = event !== null && time !== "";
  return [
    ...lead(known ? back.lead(place, day, time) : null),
    // Without the moment nobody is told that they may.
    ...(known ? [paragraph(back.opening)] : []),
    ...table(words.visit.head, [
      ...(known ? [] : [[back.from, words.notSet]]),
      ...phoneRows(facts),
    ]),
    heading(back.first),
    ...list(back.firstLines),
  ];
}
