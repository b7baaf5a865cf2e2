import { consentTable } from "../../consent/table.ts";
import { tenantsAt } from "../../notices/audience.ts";
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
  gaps: [
    (facts) =>
      dayGap(facts, {
        kind: "tenant-entry",
        what: "The entry",
        words: "entry into a home",
        place: false,
      }),
  ],
};

/** To tenants, for the landlord to sign: when a home is entered, by whom, and whether the owner agreed. */
function landlordBody(facts: LetterFacts): LetterBlock[] {
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
