import { LANGUAGES } from "../say/language.ts";
import {
  day,
  inside,
  late,
  maybe,
  name,
  oneOf,
  parts,
  type RowOf,
  ref,
  row,
  usually,
  type ValuesOf,
  words,
  yesNo,
  yesUnlessSaid,
} from "./field.ts";

/** A mailing address as typed. Lines are kept as the person wrote them. */
export type Address = ValuesOf<typeof ADDRESS>;

export const ADDRESS = { street: words, unit: words, city: words, state: words, zip: words };

/** How a property stands to the line. */
export const STAKES = ["connected", "candidate", "crossed", "neighbour"] as const;
export type Stake = (typeof STAKES)[number];

export type Property = RowOf<typeof PROPERTY>;

export const PROPERTY = row({
  one: "property",
  most: 200,
  saved: "office",
  fields: {
    /** Where it is. Owners' mailing addresses are with the parties. */
    address: inside({
      ...ADDRESS,
      street: name("the street and number"),
    }),
    parcel: words,
    legalDescription: words,
    /** What is thought or known of it; the tie-ins decide what is computed. */
    stake: usually(oneOf(STAKES), "candidate"),
    /** Agreed measure for the rule by weights (fixture units, floor area …); null: not given. */
    weight: maybe(parts),
    /** Every letter about this address goes out in English and Spanish, whoever it is to. */
    bothLanguages: late(yesNo),
    note: words,
  },
});

const UNIT_USES = ["dwelling", "business"] as const;
export type UnitUse = (typeof UNIT_USES)[number];

export type Unit = RowOf<typeof UNIT>;

export const UNIT = row({
  one: "unit",
  most: 1_000,
  saved: "office",
  fields: {
    propertyId: ref("properties"),
    /** `Unit 2`, `Bakery`; empty for the only unit of a house. */
    name: words,
    use: usually(oneOf(UNIT_USES), "dwelling"),
    note: words,
  },
});

export const PARTY_KINDS = [
  "person",
  "firm",
  "trust",
  "estate",
  "association",
  "public-body",
  /** Whoever lives in a unit, while nobody knows their name. */
  "resident",
] as const;
export type PartyKind = (typeof PARTY_KINDS)[number];

/** In which languages somebody wants their letters; `unknown`: nobody has asked. */
export const PARTY_LANGUAGES = [...LANGUAGES, "both", "unknown"] as const;
export type PartyLanguage = (typeof PARTY_LANGUAGES)[number];

export type Party = RowOf<typeof PARTY>;

export const PARTY = row({
  one: "party",
  most: 1_000,
  saved: "office",
  fields: {
    kind: usually(oneOf(PARTY_KINDS), "person"),
    name: name("a name"),
    /** Mailing address; null: letters go to the property. */
    mailing: maybe(inside(ADDRESS)),
    /** Whose hands their mail goes through: a tax service, a relative; empty: their own. */
    careOf: late(words),
    email: words,
    phone: words,
    language: usually(oneOf(PARTY_LANGUAGES), "unknown"),
    /** Needs extra help when drains are shut: medical, day care, business. */
    needs: words,
    /** Who said so, and when; empty: not noted. */
    needsSaidBy: late(words),
    note: words,
  },
});

/**
 * A named person's word on whether two parties of the file are one. Nothing that names the first is
 * rewritten: letters, consents and money stay as they were recorded, and are read as the other's.
 */
export type SameParty = RowOf<typeof SAME_PARTY>;

export const SAME_PARTY = row({
  one: "decision on two parties",
  fields: {
    /** The party that is read as the other. */
    partyId: ref("parties"),
    intoId: ref("parties"),
    /** False: they were looked at, and are two. */
    same: yesUnlessSaid,
    by: name("who says so"),
    on: day,
    reason: words,
  },
});

export const PARTY_ROLES = [
  "owner",
  "occupant",
  "manager",
  "association",
  "contract-purchaser",
  "crossed-lot-owner",
  /** Has a loan or lien on it; neither owns nor uses it. */
  "lender",
] as const;
export type PartyRole = (typeof PARTY_ROLES)[number];

/** Who holds a property. */
export const OWNING_ROLES: readonly PartyRole[] = ["owner", "contract-purchaser", "association"];

/** Who has a say over a lot: its holders, and the owner of one that the line only crosses. */
export const LOT_ROLES: readonly PartyRole[] = [...OWNING_ROLES, "crossed-lot-owner"];

/** Who only gets copies of what is written to a property's owners: nothing is due to or from them. */
export const COPY_ROLES: readonly PartyRole[] = ["lender"];

export const ROLE_WORDS: Readonly<Record<PartyRole, string>> = {
  owner: "owner",
  occupant: "occupant",
  manager: "manager",
  association: "association",
  "contract-purchaser": "contract purchaser",
  "crossed-lot-owner": "owner of crossed lot",
  lender: "lender",
};

/** A party's role toward a property. One party may have several. */
export type Role = RowOf<typeof ROLE>;

export const ROLE = row({
  one: "role",
  most: 1_000,
  saved: "office",
  fields: {
    partyId: ref("parties"),
    propertyId: ref("properties"),
    role: oneOf(PARTY_ROLES),
    /** The unit that an occupant lives or works in; null: the whole property. */
    unitId: maybe(ref("units")),
    /** Capacity of who signs for a trust, firm or estate, say `trustee`. */
    capacity: words,
    /** Who else holds title without being named, as a list says it: `wife, not named`. */
    heldWith: late(words),
  },
});
