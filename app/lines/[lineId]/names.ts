import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { PartyRole } from "#lib/domain/facts/party.ts";
import { ROLE_WORDS } from "#lib/domain/facts/party.ts";

/** A property as people call it: its street and unit. */
export function propertyName(file: Pick<LineFile, "properties">, id: string | null): string {
  const property = file.properties.find((each) => each.id === id);
  if (property === undefined) return "unknown";
  const { street, unit } = property.address;
  if (street === "")
    return property.parcel === "" ? "a property without an address" : property.parcel;
  return unit === "" ? street : `${street}, ${unit}`;
}

export function partyName(file: Pick<LineFile, "parties">, id: string): string {
  return file.parties.find((each) => each.id === id)?.name ?? "someone no longer on file";
}

export function tieInName(file: Pick<LineFile, "tieIns">, id: string): string {
  return file.tieIns.find((each) => each.id === id)?.label ?? "a tie-in";
}

/** `owner and occupant of 12 Fennel Row`; empty where the party has no role. */
export function stakeOf(file: Pick<LineFile, "roles" | "properties">, partyId: string): string {
  const roles = file.roles.filter((role) => role.partyId === partyId);
  const places = [...new Set(roles.map((role) => role.propertyId))];
  return places.map((propertyId) => stakeAt(file, partyId, propertyId)).join("; ");
}

/** What a party is to one property: `owner and occupant of 12 Fennel Row`. */
export function stakeAt(
  file: Pick<LineFile, "roles" | "properties">,
  partyId: string,
  propertyId: string,
): string {
  const roles = file.roles
    .filter((role) => role.partyId === partyId && role.propertyId === propertyId)
    .map((role) => SPOKEN[role.role]);
  const words = listed([...new Set(roles)]);
  return `${words === "" ? "for" : `${words} of`} ${propertyName(file, propertyId)}`;
}

const SPOKEN: Readonly<Record<PartyRole, string>> = {
  ...ROLE_WORDS,
  "crossed-lot-owner": "owner, crossed only,",
};

/** `A`, `A and B`, `A, B and C`. */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names.join("");
  return `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** `1 letter`, `2 letters`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** The same words without a capital first, for the middle of a sentence. */
export function lowered(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
