import type { Address, Party, PartyKind, PartyRole, Property } from "../facts/party.ts";
import { formatAddress } from "./address.ts";
import { likeness } from "./likely-same.ts";
import { listedAddress } from "./listed-address.ts";
import type { ListedOwners } from "./listed-owners.ts";
import { isSamePlace } from "./listed-place.ts";
import { type ListedFields, type ListedPerson, type ListPlace, SAME_AS } from "./listed-row.ts";
import type { OwnerNamed } from "./owner-names.ts";
import type { PersonRow } from "./people.ts";

interface Listed {
  readonly fields: ListedFields;
  readonly owners: ListedOwners;
  readonly owner: OwnerNamed;
  /** Their place among the owners of the row, from 0. */
  readonly index: number;
  readonly property: Property | null;
  readonly newId: () => string;
}

/** What a row says of where they are reached; blank where a person said that they are on file. */
interface Reach {
  readonly mailing: Address | null;
  readonly careOf: string;
  readonly phone: string;
  readonly email: string;
  readonly note: string;
}

const ON_FILE: Reach = { mailing: null, careOf: "", phone: "", email: "", note: "" };

/** One owner of a row, as a line of the list of people and as shown before it is saved. */
export function personOf(
  there: ListPlace,
  { fields, owners, owner, index, property, newId }: Listed,
): { readonly person: PersonRow; readonly shown: ListedPerson } {
  const chosen = chosenFor(there, fields, index);
  const name = chosen?.name ?? owner.name;
  const known = chosen ?? knownBy(there, owner.kind, name);
  const reach = chosen === undefined ? reachOf(fields, owners, property) : ON_FILE;
  const role = fields.role ?? usualRole(owner.kind, property);
  const person: PersonRow = {
    id: newId(),
    name,
    kind: known?.kind ?? owner.kind,
    role,
    propertyId: property?.id ?? null,
    unit: fields.unit ?? "",
    capacity: owner.capacity,
    heldWith: owners.heldWith,
    careOf: reach.careOf,
    ...mailFields(reach.mailing ?? NOWHERE),
    phone: reach.phone,
    email: reach.email,
    language: fields.language ?? known?.language ?? "unknown",
    needs: fields.needs ?? "",
    needsSaidBy: "",
    note: reach.note,
  };
  const shown: ListedPerson = {
    name,
    role,
    mail: mailWords(known, reach),
    there: isThere(there, known, { role, property }),
    likely: known === undefined ? likelyOn(there, { name, ...reach }) : [],
  };
  return { person, shown };
}

/** Who is on file under a name; a resident without one is nobody else's namesake. */
function knownBy({ parties }: ListPlace, kind: PartyKind, name: string): Party | undefined {
  if (kind === "resident") return undefined;
  return parties.find((party) => nameKey(party.name) === nameKey(name));
}

function usualRole(kind: PartyKind, property: Property | null): PartyRole {
  if (kind === "resident") return "occupant";
  return property?.stake === "crossed" ? "crossed-lot-owner" : "owner";
}

function chosenFor({ parties }: ListPlace, fields: ListedFields, index: number): Party | undefined {
  const field = SAME_AS[index];
  const id = field === undefined ? "" : (fields[field] ?? "");
  return parties.find((party) => party.id === id);
}

const NOWHERE: Address = { street: "", unit: "", city: "", state: "", zip: "" };

function mailFields({ street, unit, city, state, zip }: Address) {
  return { street, mailUnit: unit, city, state, zip };
}

function reachOf(fields: ListedFields, owners: ListedOwners, property: Property | null): Reach {
  const { address, careOf } = listedAddress(fields, "mail");
  const home = property !== null && isSamePlace(address, property.address);
  const held = owners.tenure.length === 0 ? "" : `Title as listed: ${owners.tenure.join(", ")}`;
  return {
    mailing: address.street === "" || home ? null : address,
    careOf: [owners.careOf, careOf].filter((words) => words !== "").join(", "),
    phone: fields.phone ?? "",
    email: fields.email ?? "",
    note: [fields.note ?? "", held].filter((words) => words !== "").join(". "),
  };
}

function mailWords(known: Party | undefined, reach: Reach): string {
  const mailing = known?.mailing ?? reach.mailing;
  const careOf = reach.careOf === "" ? (known?.careOf ?? "") : reach.careOf;
  const hands = careOf === "" ? "" : `c/o ${careOf}, `;
  return `${hands}${mailing === null ? "the property" : formatAddress(mailing)}`;
}

function isThere(
  { roles }: ListPlace,
  known: Party | undefined,
  at: { readonly role: PartyRole; readonly property: Property | null },
): boolean {
  return roles.some(
    ({ partyId, propertyId, role }) =>
      partyId === known?.id && propertyId === at.property?.id && role === at.role,
  );
}

function likelyOn(
  { parties }: ListPlace,
  reach: Pick<Party, "name" | "mailing" | "email" | "phone">,
): ListedPerson["likely"] {
  return parties
    .map((party) => ({ partyId: party.id, name: party.name, because: likeness(party, reach) }))
    .filter(({ because }) => because.length > 0);
}

function nameKey(name: string): string {
  return name.trim().replace(/\s+/g, " ").toLowerCase();
}
