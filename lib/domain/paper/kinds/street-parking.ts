import { startAudience } from "../../notices/audience.ts";
import { toAll } from "../addressed.ts";
import { heading, lead, list, paragraph, table } from "../common.ts";
import { ahead } from "../day-ahead.ts";
import { dayGap, dayOf, eventAhead } from "../day-told.ts";
import type { LetterFacts } from "../facts.ts";
import { phoneRows } from "../hours.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";

/** Everybody on the line is told which part of the street to keep clear, and when. */
export const STREET_PARKING: LetterPlan = {
  title: {
    en: "Please keep this part of the street clear",
    es: "Deje libre esta parte de la calle",
  },
  recipients: (file) => toAll(startAudience(file)),
  ahead: (facts) => eventAhead(facts, "street-closed", "parking is closed"),
  body: parkingBody,
  choices: ({ words }) => words.parking.choices,
  cautions: ["trench"],
  gaps: [
    (facts) =>
      dayGap(facts, {
        kind: "street-closed",
        what: "The closing",
        words: "street parking closed",
        place: true,
      }),
  ],
  due: (file, report) => ahead(file, report, "street-closed", "Parking is closed"),
};

/** Which part of the street is kept clear, and when. */
function parkingBody(facts: LetterFacts): LetterBlock[] {
  const { words } = facts;
  const { parking } = words;
  const { event, day, hours, where } = dayOf(facts, "street-closed");
  const last = event?.lastOn ?? null;
  const known = event !== null && where !== "";
  const leadOf = () =>
    last === null
      ? parking.lead(words.typed(where), day, hours)
      : parking.leadDays(words.typed(where), day, words.weekday(last));
  return [
    ...lead(known ? leadOf() : null),
    paragraph(parking.opening),
    ...table(words.visit.head, [
      ...(known ? [] : unknownRows(facts)),
      ...(known && last === null && hours !== ""
        ? []
        : [[parking.hours, hours === "" ? words.notSet : hours]]),
      ...phoneRows(facts),
    ]),
    heading(parking.ask),
    ...list(parking.asks),
  ];
}

/** What the first sentence cannot say while it is not on file. */
function unknownRows(facts: LetterFacts): string[][] {
  const { words } = facts;
  const { day, where } = dayOf(facts, "street-closed");
  return [
    [words.parking.where, where === "" ? words.notSet : words.typed(where)],
    [words.parking.day, day],
  ];
}
