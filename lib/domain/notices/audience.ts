import type { LineFile } from "../facts/line-file.ts";
import {
  COPY_ROLES,
  LOT_ROLES,
  OWNING_ROLES,
  PARTY_ROLES,
  type PartyRole,
} from "../facts/party.ts";

/** Somebody who has to be told of something, about one property. */
export interface Addressee {
  readonly partyId: string;
  readonly propertyId: string;
}

type People = Pick<LineFile, "properties" | "roles" | "parties" | "tieIns" | "entries">;

/**
 * Every address that drains into the line or may: connected, a candidate, on a permit record, or the
 * owner of a tie-in. A candidate's water floods a trench just the same.
 */
export function drainPlaces(file: Pick<People, "properties" | "tieIns" | "entries">): string[] {
  const seen = new Set([
    ...file.tieIns.map(({ propertyId }) => propertyId),
    ...file.entries.map(({ propertyId }) => propertyId),
  ]);
  return file.properties
    .filter(({ id, stake }) => seen.has(id) || stake === "connected" || stake === "candidate")
    .map(({ id }) => id);
}

/** Who is told of a pause of drains: occupants and managers; the owners where nobody else is known. */
export function pauseAudience(file: People): Addressee[] {
  return drainPlaces(file).flatMap((propertyId) => {
    const there = at(file, propertyId, ["occupant", "manager"]);
    return there.length > 0 ? there : at(file, propertyId, OWNING_ROLES);
  });
}

/** Who is told when the work starts: everybody on every property but who only gets copies. */
export function startAudience(file: People): Addressee[] {
  return file.properties.flatMap(({ id }) => at(file, id, TOLD));
}

const TOLD = PARTY_ROLES.filter((role) => !COPY_ROLES.includes(role));

/** Who lives at a property without holding its title: the law's notice of entry is for them. */
export function tenantsAt(file: People, propertyId: string): Addressee[] {
  const owners = new Set(at(file, propertyId, LOT_ROLES).map(({ partyId }) => partyId));
  return at(file, propertyId, ["occupant"]).filter(({ partyId }) => !owners.has(partyId));
}

/** Each party with one of the roles at a property, once. */
function at(file: People, propertyId: string, roles: readonly PartyRole[]): Addressee[] {
  const here = file.roles.filter(
    (role) =>
      role.propertyId === propertyId &&
      roles.includes(role.role) &&
      file.parties.some(({ id }) => id === role.partyId),
  );
  return [...new Set(here.map(({ partyId }) => partyId))].map((partyId) => ({
    partyId,
    propertyId,
  }));
}
