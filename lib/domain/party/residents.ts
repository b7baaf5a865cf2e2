import type { LineFile } from "../facts/line-file.ts";

/** How mail is addressed to whoever lives somewhere; the post delivers it by the address. */
export const RESIDENT = "Current Resident";

/** A home or business on the line in which nobody is known to live or work. */
export interface NamelessPlace {
  readonly propertyId: string;
  /** Null: the property has no units on file. */
  readonly unitId: string | null;
}

type PeopleFile = Pick<LineFile, "properties" | "units" | "roles">;

/**
 * Units of connected and possibly connected properties that no occupant is on file for, and such
 * properties without units and without an occupant: a letter to occupants would reach nobody there.
 */
export function namelessPlaces({ properties, units, roles }: PeopleFile): NamelessPlace[] {
  return properties
    .filter(({ stake }) => stake === "connected" || stake === "candidate")
    .flatMap(({ id: propertyId }): NamelessPlace[] => {
      const here = roles.filter((role) => role.propertyId === propertyId);
      const occupants = here.filter(({ role }) => role === "occupant");
      const own = units.filter((unit) => unit.propertyId === propertyId);
      if (occupants.some(({ unitId }) => unitId === null)) return [];
      if (own.length === 0) return occupants.length === 0 ? [{ propertyId, unitId: null }] : [];
      return own
        .filter(({ id }) => !occupants.some(({ unitId }) => unitId === id))
        .map(({ id }) => ({ propertyId, unitId: id }));
    });
}
