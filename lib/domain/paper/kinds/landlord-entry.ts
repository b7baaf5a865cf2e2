import { consentTable } from "../../consent/table.ts";
import { tenantsAt } from "../../notices/audience.ts";
import { type VisitDay, visitDays } from "../../testing/visit.ts";
import { toAll } from "../addressed.ts";
import { callsBeforeVisit } from "../calls-first.ts";
import { heading, lead, list, paragraph, table } from "../common.ts";
import { dayGap, dayOf } from "../day-told.ts";
import type { LetterFacts } from "../facts.ts";
import { phoneRows } from "../hours.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";

/** Tenants are told by their landlord, who signs it, when a home is entered, by whom and why. */
export const LANDLORD_ENTRY: LetterPlan = {
  title: {
    en: "Notice of entry",
    es: "Aviso de entrada",
  },
  recipients: (file) => toAll(file.properties.flatMap(({ id }) => tenantsAt(file, id))),
  callsFirst: callsBeforeVisit,
  body: landlordBody,
  choices: () => [],
  cautions: ["official"],
  gaps: [hasEntryDay, hasPurpose],
};

function hasEntryDay(facts: LetterFacts): string | null {
  return plannedFor(facts) === null
    ? dayGap(facts, {
        kind: "tenant-entry",
        what: "The entry",
        words: "entry into a home",
        place: false,
      })
    : null;
}

function hasPurpose(facts: LetterFacts): string | null {
  const { event } = dayOf(facts, "tenant-entry");
  if (event === null || purposeOf(facts) !== "") return null;
  return "Why the home is entered is not on file: enter it as the note of the event “entry into a home”, or plan a test day.";
}

/** The next visit of this home by the plan of a test day; an entry that was entered for another day goes first. */
function plannedFor(facts: LetterFacts): VisitDay | null {
  const { file, report, property, party } = facts;
  if (property === null) return null;
  const own = file.roles.filter(
    (role) => role.partyId === party.id && role.propertyId === property.id,
  );
  const unitId = own.every(({ role }) => role === "occupant") ? (own[0]?.unitId ?? null) : null;
  const days = visitDays(file, report, { propertyId: property.id, unitId });
  const { event } = dayOf(facts, "tenant-entry");
  const entered = event !== null && (event.lastOn ?? event.on) >= report.today ? event.on : null;
  return (
    days.find(({ on, slots }) => slots.length > 0 && (entered === null || on === entered)) ?? null
  );
}

/** Why the home is entered: for the test of the plan, else as the office entered it; empty: nobody said. */
function purposeOf(facts: LetterFacts): string {
  if (plannedFor(facts) !== null) return facts.words.landlord.whyWords;
  const { event } = dayOf(facts, "tenant-entry");
  return event?.note.trim() ?? "";
}

/** Day and hours of the entry: by the plan of the test day, else as entered with the event. */
function whenOf(facts: LetterFacts): {
  readonly isSet: boolean;
  readonly day: string;
  readonly hours: string;
} {
  const { words } = facts;
  const planned = plannedFor(facts);
  if (planned === null) {
    const { event, day, hours } = dayOf(facts, "tenant-entry");
    return { isSet: event !== null, day, hours };
  }
  const spans = planned.slots.map(({ from, to }) => words.span(from, to));
  return { isSet: true, day: words.weekday(planned.on), hours: words.list(spans) };
}

/** To tenants, for the landlord to sign: when a home is entered, by whom, and whether the owner agreed. */
function landlordBody(facts: LetterFacts): LetterBlock[] {
  const { words, office, place } = facts;
  const { landlord } = words;
  const { isSet, day, hours } = whenOf(facts);
  const purpose = purposeOf(facts);
  const agreed = ownerAgreedOn(facts);
  return [
    ...lead(isSet ? landlord.lead(place, day, hours) : null),
    paragraph(landlord.opening(office.name)),
    ...table(words.visit.head, [
      [landlord.day, day],
      [landlord.hours, hours === "" ? words.notSet : hours],
      [landlord.who, landlord.whoWords(office.name)],
      [landlord.why, purpose === "" ? words.notSet : purpose],
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
