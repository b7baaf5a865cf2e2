import type { Party, PartyRole, Property } from "../facts/party.ts";
import { addressLines, formatAddress, stateLetters } from "../party/address.ts";
import { signersFor } from "../party/signers.ts";
import { streetOf } from "../party/stakeholders.ts";
import { type FormFact, type FormInput, many, one } from "./fact.ts";

const PROPERTIES = "Properties on the line";
const OWNERS = "Owners";

/** The properties that the application is about: connected, maybe connected, or crossed. */
function propertiesOf({ file }: FormInput): Property[] {
  const order = ["connected", "candidate", "crossed"];
  return file.properties
    .filter(({ stake }) => order.includes(stake))
    .toSorted((a, b) => order.indexOf(a.stake) - order.indexOf(b.stake));
}

interface Owner {
  readonly party: Party;
  readonly name: string;
  readonly role: PartyRole;
  readonly property: Property;
}

/** Who signs for each of them, once a property. */
function ownersOf(input: FormInput): Owner[] {
  const { file } = input;
  return propertiesOf(input).flatMap((property) =>
    signersFor(file, property.id).flatMap(({ partyId, name, role }) => {
      const party = file.parties.find(({ id }) => id === partyId);
      return party === undefined ? [] : [{ party, name, role, property }];
    }),
  );
}

const property = many(PROPERTIES, propertiesOf);
const owner = many(OWNERS, ownersOf);

function mailing({ party, property }: Owner) {
  return party.mailing ?? property.address;
}

/** Where the line lies and who owns what is on it. */
export const PEOPLE_FACTS: readonly FormFact[] = [
  property(["property.address", "Property: street and number"], ({ address }) => streetOf(address)),
  property(["property.full-address", "Property: whole address"], ({ address }) =>
    formatAddress(address),
  ),
  property(["property.parcel", "Property: parcel number"], ({ parcel }) => parcel),
  property(["property.legal", "Property: legal description"], (each) => each.legalDescription),
  one(
    PROPERTIES,
    ["property.city", "Properties: city"],
    (input) => propertiesOf(input)[0]?.address.city,
  ),
  one(PROPERTIES, ["property.state", "Properties: state"], (input) => {
    const [first] = propertiesOf(input);
    return first === undefined ? null : stateLetters(first.address.state);
  }),
  one(
    PROPERTIES,
    ["property.zip", "Properties: ZIP code"],
    (input) => propertiesOf(input)[0]?.address.zip,
  ),
  one(
    PROPERTIES,
    ["property.count", "Number of connected properties"],
    ({ file }) => file.properties.filter(({ stake }) => stake === "connected").length,
  ),
  one(PROPERTIES, ["property.units", "Number of units on connected properties"], ({ file }) => {
    const connected = file.properties.filter(({ stake }) => stake === "connected");
    return connected.reduce(
      (sum, { id }) =>
        sum + Math.max(1, file.units.filter((unit) => unit.propertyId === id).length),
      0,
    );
  }),
  owner(["owner.name", "Owner: name"], ({ name }) => name),
  owner(["owner.property", "Owner: which property"], (each) => streetOf(each.property.address)),
  owner(["owner.parcel", "Owner: parcel number"], (each) => each.property.parcel),
  owner(["owner.mailing", "Owner: mailing address"], (each) => formatAddress(mailing(each))),
  owner(["owner.street", "Owner: mailing street"], (each) => streetOf(mailing(each))),
  owner(["owner.city-state-zip", "Owner: mailing city, state and ZIP code"], (each) =>
    addressLines({ ...mailing(each), street: "", unit: "" }).join(""),
  ),
  owner(["owner.phone", "Owner: phone", "phone"], ({ party }) => party.phone),
  owner(["owner.email", "Owner: email"], ({ party }) => party.email),
];
