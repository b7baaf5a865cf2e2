import type { LineFile } from "../facts/line-file.ts";
import type { Address, Party, PartyRole, Property, Role, Unit } from "../facts/party.ts";
import { OWNING_ROLES } from "../facts/party.ts";

/** Somebody on a property, in one role. */
export interface Stakeholder {
  readonly party: Party;
  readonly role: PartyRole;
  readonly unit: Unit | null;
  readonly capacity: string;
  readonly heldWith: string;
}

/** Who is on one property, and what the file does not know yet. */
export interface PropertyStakeholders {
  readonly property: Property;
  readonly units: readonly Unit[];
  readonly people: readonly Stakeholder[];
  /** Each a sentence that says what is missing and what follows from it. */
  readonly missing: readonly string[];
}

type PeopleOfLine = Pick<
  LineFile,
  "properties" | "units" | "parties" | "roles" | "crossings" | "tieIns"
>;

/** Who is on each property of the line, in the file's order, with what is missing there. */
export function stakeholdersOf(file: PeopleOfLine): PropertyStakeholders[] {
  return file.properties.map((property) => {
    const units = file.units.filter((unit) => unit.propertyId === property.id);
    const people = file.roles
      .filter((role) => role.propertyId === property.id)
      .flatMap((role) => stakeholder(role, file));
    return { property, units, people, missing: missingOn(property, { units, people, file }) };
  });
}

function stakeholder(role: Role, file: PeopleOfLine): Stakeholder[] {
  const party = file.parties.find((each) => each.id === role.partyId);
  if (party === undefined) return [];
  const unit = file.units.find((each) => each.id === role.unitId) ?? null;
  const { capacity, heldWith } = role;
  return [{ party, role: role.role, unit, capacity, heldWith }];
}

interface Known {
  readonly units: readonly Unit[];
  readonly people: readonly Stakeholder[];
  readonly file: PeopleOfLine;
}

function missingOn(property: Property, known: Known): string[] {
  return [
    ...missingOwner(property, known),
    ...missingHolders(known),
    ...missingOccupants(property, known),
    ...missingMail(property, known),
    ...missingCapacity(known),
    ...missingCrossing(property, known),
  ];
}

function missingOwner(property: Property, { people, file }: Known): string[] {
  const owning = people.some(
    ({ role }) =>
      OWNING_ROLES.includes(role) ||
      (role === "crossed-lot-owner" && isOnlyCrossed(property, file)),
  );
  return owning ? [] : ["No owner yet, so no one can be contacted or sign."];
}

/** Title holders of whom the file knows only that they are there. */
function missingHolders({ people }: Known): string[] {
  return people
    .filter(({ heldWith }) => heldWith !== "")
    .map(
      ({ party, heldWith }) =>
        `${party.name} holds title with others (${heldWith}); find out who, since every owner must sign.`,
    );
}

function missingOccupants(property: Property, { units, people }: Known): string[] {
  if (property.stake !== "connected") return [];
  const occupants = people.filter(({ role }) => role === "occupant");
  if (units.length === 0 && occupants.length === 0)
    return ["No occupant yet, so no one can be told to stop using the drains."];
  if (occupants.some(({ unit }) => unit === null)) return [];
  return units
    .filter((unit) => !occupants.some((occupant) => occupant.unit?.id === unit.id))
    .map(
      (unit) => `No occupant for ${unitName(unit, units)}; no letter will be sent to this unit.`,
    );
}

function missingMail(property: Property, { people }: Known): string[] {
  const living = new Set(
    people.filter(({ role }) => role === "occupant").map(({ party }) => party.id),
  );
  const absent = people.filter(
    ({ party, role }) => role !== "occupant" && party.mailing === null && !living.has(party.id),
  );
  return [...new Set(absent.map(({ party }) => party.name))].map(
    (name) => `No other mailing address for ${name}; letters go to ${streetOf(property.address)}.`,
  );
}

const SIGNED_FOR = ["trust", "estate", "firm", "association"] as const;

function missingCapacity({ people }: Known): string[] {
  const unsaid = people.filter(
    ({ party, role, capacity }) =>
      OWNING_ROLES.includes(role) &&
      SIGNED_FOR.some((kind) => kind === party.kind) &&
      capacity === "",
  );
  return unsaid.map(({ party }) => `Not known: who signs for ${party.name} and in what capacity.`);
}

function missingCrossing(property: Property, { file }: Known): string[] {
  if (property.stake !== "crossed") return [];
  const crossed = file.crossings.some((crossing) => crossing.propertyId === property.id);
  return crossed ? [] : ["Enter where the line crosses this lot (from and to stations)."];
}

function isOnlyCrossed(property: Property, file: PeopleOfLine): boolean {
  return (
    property.stake !== "connected" && !file.tieIns.some((each) => each.propertyId === property.id)
  );
}

/** What a unit is called in a sentence; the only unit of a house often has no name. */
function unitName(unit: Unit, among: readonly Unit[]): string {
  if (unit.name !== "") return unit.name;
  return among.length === 1 ? "the house" : `unit ${among.indexOf(unit) + 1}`;
}

/** The street line of an address with its unit, for lists and sentences. */
export function streetOf(address: Address): string {
  return address.unit === "" ? address.street : `${address.street}, ${address.unit}`;
}
