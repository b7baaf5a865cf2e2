import type { LineFile } from "../../facts/line-file.ts";
import { OWNING_ROLES } from "../../facts/party.ts";
import type { TestStop } from "../../facts/test-day.ts";
import type { Report } from "../../findings/report.ts";
import { type VisitDay, visitDays } from "../../testing/visit.ts";
import { formatDay } from "../../time/format-day.ts";
import { type About, aboutProperty, atEvery, candidateStops } from "../addressed.ts";
import { callsBeforeVisit } from "../calls-first.ts";
import { heading, lead, list, paragraph, replyBy, table } from "../common.ts";
import type { LetterFacts } from "../facts.ts";
import { eventOf, hoursWords } from "../hours.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";

/** Whoever lives at or owns a stop of a test day is told when, who comes and what to do. */
export const TEST_VISIT: LetterPlan = {
  title: {
    en: "Notice of a drain test visit",
    es: "Aviso de una visita para probar los desagües",
  },
  titleFor: (facts) => (isWaterOnly(facts) ? facts.words.visit.titleWater : null),
  recipients: (file, report) =>
    atEvery(file, visitStops(file, report), [...OWNING_ROLES, "occupant", "manager"]),
  // Where nobody comes in, nobody is asked to be let in.
  asksNothing: isWaterOnly,
  callsFirst: callsBeforeVisit,
  ahead: visitAhead,
  body: visitBody,
  choices: (facts) =>
    isWaterOnly(facts) ? facts.words.visit.choicesWater : facts.words.visit.choices,
  cautions: ["dye", "smoke", "gas"],
  // A planned day is one of dye tests.
  spared: (facts) => (visitDaysOf(facts).length > 0 ? ["smoke"] : []),
  gaps: [hasVisitDay],
  due: testDayAhead,
};

/**
 * The addresses of the test days still to come, each once: those that are visited and those that are
 * asked to keep water off. While no day is planned, every candidate.
 */
function visitStops(file: LineFile, report: Report): About[] {
  const planned = file.properties.filter(
    ({ id }) => visitDays(file, report, { propertyId: id, unitId: null }).length > 0,
  );
  return planned.length === 0 ? candidateStops(file, report) : planned.map(aboutProperty);
}

function hasVisitDay(facts: LetterFacts): string | null {
  const { notice, place } = facts;
  if (notice.kind !== "test-visit" || visitDaysOf(facts).length > 0) return null;
  const entry = eventOf(facts, "tenant-entry");
  if (facts.file.testDays.length === 0 && entry !== null)
    return hoursWords(entry, facts.words) === ""
      ? "The hours of the visit are not set: enter when it begins and ends with the event, or plan a test day."
      : null;
  return `No test day to come has a stop at ${place} or asks it to keep water off: plan the day first.`;
}

function testDayAhead({ testDays }: LineFile, { today }: Report) {
  const next = testDays.map(({ on }) => on).find((on) => on >= today);
  return next === undefined ? null : { because: `A test day is set for ${formatDay(next, today)}` };
}

/** The coming test days that have to do with the reader's own address, or unit of it. */
function visitDaysOf({ file, report, property, party }: LetterFacts): VisitDay[] {
  if (property === null) return [];
  const roles = file.roles.filter(
    (role) => role.partyId === party.id && role.propertyId === property.id,
  );
  const onlyUnit = roles.every(({ role }) => role === "occupant") ? roles[0]?.unitId : null;
  return visitDays(file, report, { propertyId: property.id, unitId: onlyUnit ?? null });
}

/** The first day on which we come to the reader, or ask to keep water off. */
function visitAhead(facts: LetterFacts) {
  const days = visitDaysOf(facts).map(({ on }) => on);
  const on = days.toSorted()[0] ?? eventOf(facts, "tenant-entry")?.on;
  return on === undefined ? null : { what: "the visit is", on };
}

/** Nobody comes in: the reader is only asked to use no water. */
function isWaterOnly(facts: LetterFacts): boolean {
  const days = visitDaysOf(facts);
  return days.length > 0 && days.every(({ slots }) => slots.length === 0);
}

/** When we come to this address by the plan, what happens, what must not be done meanwhile. */
function visitBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const days = visitDaysOf(facts);
  if (isWaterOnly(facts))
    return [
      ...lead(words.lead.water(replyBy(facts))),
      paragraph(words.visit.openingWater(place)),
      ...days.flatMap((day) => dayTable(facts, day)),
      heading(words.visit.ask),
      ...list(words.visit.asksWater),
    ];
  return [
    ...lead(words.lead.visit(place, replyBy(facts))),
    paragraph(
      days.length > 0 && days.every(({ isControl }) => isControl)
        ? words.visit.openingControl(place)
        : words.visit.opening(place),
    ),
    ...(days.length === 0 ? unplannedTable(facts) : days.flatMap((day) => dayTable(facts, day))),
    heading(words.visit.ask),
    ...list(words.visit.asks),
    paragraph(isLandlord(facts) ? words.visit.owner : words.visit.tenant),
  ];
}

function isLandlord({ roles }: LetterFacts): boolean {
  return roles.includes("owner") && !roles.includes("occupant");
}

function dayTable(facts: LetterFacts, { on, slots, waterOff }: VisitDay): LetterBlock[] {
  const { words, office } = facts;
  const { visit } = words;
  const comes = slots.map(({ from, to, stop }) =>
    visit.slotOf(words.span(from, to), unitName(facts, stop)),
  );
  const off = waterOff.map(({ from, to }) => words.span(from, to));
  const [first] = slots;
  const inside =
    first === undefined
      ? []
      : [
          [visit.who, visit.whoWords(office.name)],
          [visit.inside, insideWords(facts, first.stop)],
          ...flushRow(facts, first.stop),
          [visit.filmed, visit.filmedWords],
        ];
  return table(visit.head, [
    comes.length === 0
      ? [visit.day, words.weekday(on)]
      : [visit.slot, `${words.weekday(on)}, ${words.list(comes)}`],
    ...inside,
    ...(off.length === 0 ? [] : [[visit.waterOff, words.list(off)]]),
  ]);
}

function unitName({ file, roles }: LetterFacts, { unitId }: TestStop): string {
  const livesThere = roles.length > 0 && roles.every((role) => role === "occupant");
  return livesThere ? "" : (file.units.find(({ id }) => id === unitId)?.name ?? "");
}

function insideWords({ words }: LetterFacts, { drains }: TestStop): string {
  const { visit } = words;
  if (drains.length === 0) return visit.insideWords;
  const named = drains.map(({ floor, drain }) =>
    visit.floorDrain(visit.floor[floor], visit.drain[drain]),
  );
  return visit.drainsIn(named.join(", "));
}

function flushRow({ words }: LetterFacts, { flushGallons }: TestStop): string[][] {
  return flushGallons === null ? [] : [[words.visit.put, words.visit.flush(flushGallons)]];
}

/** Without a plan: the day and hours of the entry as the office entered them. */
function unplannedTable(facts: LetterFacts): LetterBlock[] {
  const { words, office } = facts;
  const { visit } = words;
  const entry = eventOf(facts, "tenant-entry");
  const hours = hoursWords(entry, words);
  return table(visit.head, [
    [visit.day, entry === null ? words.notSet : words.weekday(entry.on)],
    [visit.hours, hours === "" ? words.notSet : hours],
    [visit.who, visit.whoWords(office.name)],
    [visit.inside, visit.insideWords],
    [visit.filmed, visit.filmedWords],
  ]);
}
