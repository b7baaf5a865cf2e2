import { LANGUAGES } from "../say/language.ts";
import type { Day } from "../time/day.ts";

/** A mailing address as typed. Lines are kept as the person wrote them. */
export interface Address {
  readonly street: string;
  readonly unit: string;
  readonly city: string;
  readonly state: string;
  readonly zip: string;
}

/** How a property stands to the line. */
export const STAKES = ["connected", "candidate", "crossed", "neighbour"] as const;
export type Stake = (typeof STAKES)[number];

export interface Property {
  readonly id: string;
  /** Where it is. Owners' mailing addresses are with the parties. */
  readonly address: Address;
  readonly parcel: string;
  readonly legalDescription: string;
  /** What is thought or known of it; the tie-ins decide what is computed. */
  readonly stake: Stake;
  /** Agreed measure for the rule by weights (fixture units, floor area …); null: not given. */
  readonly weight: number | null;
  /** Every letter about this address goes out in English and Spanish, whoever it is to. */
  readonly bothLanguages: boolean;
  readonly note: string;
}

export const UNIT_USES = ["dwelling", "business"] as const;
export type UnitUse = (typeof UNIT_USES)[number];

export interface Unit {
  readonly id: string;
  readonly propertyId: string;
  /** `Unit 2`, `Bakery`; empty for the only unit of a house. */
  readonly name: string;
  readonly use: UnitUse;
  readonly note: string;
}

export const PARTY_KINDS = [
  "person",
  "firm",
  "trust",
  "estate",
  "association",
  "public-body",
] as const;
export type PartyKind = (typeof PARTY_KINDS)[number];

/** In which languages somebody wants their letters; `unknown`: nobody has asked. */
export const PARTY_LANGUAGES = [...LANGUAGES, "both", "unknown"] as const;
export type PartyLanguage = (typeof PARTY_LANGUAGES)[number];

export interface Party {
  readonly id: string;
  readonly kind: PartyKind;
  readonly name: string;
  /** Mailing address; null: letters go to the property. */
  readonly mailing: Address | null;
  /** Whose hands their mail goes through: a tax service, a relative; empty: their own. */
  readonly careOf: string;
  readonly email: string;
  readonly phone: string;
  readonly language: PartyLanguage;
  /** Needs extra help when drains are shut: medical, day care, business. */
  readonly needs: string;
  readonly note: string;
}

/**
 * A named person's word on whether two parties of the file are one. Nothing that names the first is
 * rewritten: letters, consents and money stay as they were recorded, and are read as the other's.
 */
export interface SameParty {
  readonly id: string;
  /** The party that is read as the other. */
  readonly partyId: string;
  readonly intoId: string;
  /** False: they were looked at, and are two. */
  readonly same: boolean;
  readonly by: string;
  readonly on: Day;
  readonly reason: string;
}

export const PARTY_ROLES = [
  "owner",
  "occupant",
  "manager",
  "association",
  "contract-purchaser",
  "crossed-lot-owner",
] as const;
export type PartyRole = (typeof PARTY_ROLES)[number];

/** A party's role toward a property. One party may have several. */
export interface Role {
  readonly id: string;
  readonly partyId: string;
  readonly propertyId: string;
  readonly role: PartyRole;
  /** The unit that an occupant lives or works in; null: the whole property. */
  readonly unitId: string | null;
  /** Capacity of who signs for a trust, firm or estate, say `trustee`. */
  readonly capacity: string;
  /** Who else holds title without being named, as a list says it: `wife, not named`. */
  readonly heldWith: string;
}
