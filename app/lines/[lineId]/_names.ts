import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { PartyRole } from "#lib/domain/party/party.ts";

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
  return file.parties.find((each) => each.id === id)?.name ?? "somebody no longer in the file";
}

export function tieInName(file: Pick<LineFile, "tieIns">, id: string): string {
  return file.tieIns.find((each) => each.id === id)?.label ?? "a tie-in";
}

/** `owner of 12 Fennel Row, occupant of 12 Fennel Row`; empty where the party has no role. */
export function stakeOf(file: Pick<LineFile, "roles" | "properties">, partyId: string): string {
  return file.roles
    .filter((role) => role.partyId === partyId)
    .map((role) => `${ROLE_WORDS[role.role]} of ${propertyName(file, role.propertyId)}`)
    .join(", ");
}

export const ROLE_WORDS: Record<PartyRole, string> = {
  owner: "owner",
  occupant: "occupant",
  manager: "manager",
  association: "association",
  "contract-purchaser": "contract purchaser",
  "crossed-lot-owner": "owner of the crossed lot",
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
