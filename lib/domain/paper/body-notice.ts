import { consentTable } from "../consent/table.ts";
import type { ClockEvent } from "../facts/clock-rule.ts";
import type { DatedEvent } from "../facts/permit.ts";
import { heading, lead, list, paragraph, table } from "./common.ts";
import { type LetterFacts, pipeOf } from "./facts.ts";
import { eventOf, hoursWords, phoneRows } from "./hours.ts";
import type { LetterBlock } from "./letter.ts";
import { nextMeeting } from "./next-meeting.ts";

/** A day as it was entered, in the words of a letter; what is missing is said to be. */
interface DayWords {
  readonly event: DatedEvent | null;
  readonly day: string;
  readonly hours: string;
  readonly where: string;
}

function dayOf(facts: LetterFacts, kind: ClockEvent): DayWords {
  const { words } = facts;
  const event = eventOf(facts, kind);
  return {
    event,
    day: event === null ? words.notSet : words.weekday(event.on),
    hours: hoursWords(event, words),
    where: event?.reference ?? "",
  };
}

/** The pause is over, since when, and what to do first. */
export function backBody(facts: LetterFacts): LetterBlock[] {
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
      [back.from, known ? `${day}, ${time}` : words.notSet],
      ...phoneRows(facts),
    ]),
    heading(back.first),
    ...list(back.firstLines),
  ];
}

/** Day, hours and place of a meeting, and what it is about; nobody's amount. */
export function meetingBody(facts: LetterFacts): LetterBlock[] {
  const { words } = facts;
  const { meeting } = words;
  const set = nextMeeting(facts.file.meetings, facts.report.today);
  const day = set === null ? words.notSet : words.weekday(set.on);
  const hours = hoursWords(set, words);
  const where = set?.place ?? "";
  return [
    ...lead(set === null ? null : meeting.lead(day, hours, where)),
    paragraph(meeting.opening(pipeOf(facts))),
    ...table(words.visit.head, [
      [meeting.day, day],
      [meeting.hours, hours === "" ? words.notSet : hours],
      [meeting.where, where === "" ? words.notSet : where],
      ...phoneRows(facts),
    ]),
    heading(meeting.about),
    ...list(meeting.aboutLines),
    paragraph(meeting.bring),
    paragraph(meeting.private),
  ];
}

/** To tenants, for the landlord to sign: when a home is entered, by whom, and whether the owner agreed. */
export function landlordBody(facts: LetterFacts): LetterBlock[] {
  const { words, office, place } = facts;
  const { landlord } = words;
  const { event, day, hours } = dayOf(facts, "tenant-entry");
  const agreed = ownerAgreedOn(facts);
  return [
    ...lead(event === null ? null : landlord.lead(place, day, hours)),
    paragraph(landlord.opening(office.name)),
    ...table(words.visit.head, [
      [landlord.day, day],
      [landlord.hours, hours === "" ? words.notSet : hours],
      [landlord.who, landlord.whoWords(office.name)],
      [landlord.why, landlord.whyWords],
      ...ownerRow(facts),
      ...phoneRows(facts),
    ]),
    paragraph(agreed === null ? landlord.notAgreed : landlord.agreed(words.day(agreed))),
    heading(landlord.ask),
    ...list(landlord.asks),
    heading(landlord.sign),
    paragraph(landlord.signed),
  ];
}

function ownerRow({ file, property, words }: LetterFacts): string[][] {
  const owners = file.roles
    .filter(({ propertyId, role }) => propertyId === property?.id && role === "owner")
    .flatMap(({ partyId }) => file.parties.find(({ id }) => id === partyId)?.name ?? []);
  return owners.length === 0 ? [] : [[words.landlord.owner, words.list([...new Set(owners)])]];
}

/** The day of an owner's word that lets people in, while nobody has said no. */
function ownerAgreedOn({ file, property }: LetterFacts): string | null {
  const row = consentTable(file).find(({ propertyId }) => propertyId === property?.id);
  if (row === undefined || !row.cells.enter.inHand) return null;
  const given = file.consents.findLast(
    ({ kind, state, propertyId, partyId }) =>
      kind === "enter" &&
      state === "given" &&
      propertyId === row.propertyId &&
      row.signers.some((signer) => signer.partyId === partyId),
  );
  return given?.stateOn ?? null;
}

/** Which part of the street is kept clear, and when. */
export function parkingBody(facts: LetterFacts): LetterBlock[] {
  const { words } = facts;
  const { parking } = words;
  const { event, day, hours, where } = dayOf(facts, "street-closed");
  const last = event?.lastOn ?? null;
  const known = event !== null && where !== "";
  const leadOf = () =>
    last === null
      ? parking.lead(where, day, hours)
      : parking.leadDays(where, day, words.weekday(last));
  return [
    ...lead(known ? leadOf() : null),
    paragraph(parking.opening),
    ...table(words.visit.head, [
      [parking.where, where === "" ? words.notSet : where],
      [last === null ? parking.day : parking.from, day],
      ...(last === null ? [] : [[parking.until, words.weekday(last)]]),
      [parking.hours, hours === "" ? words.notSet : hours],
      ...phoneRows(facts),
    ]),
    heading(parking.ask),
    ...list(parking.asks),
  ];
}
