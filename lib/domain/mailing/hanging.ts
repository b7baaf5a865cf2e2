import type { LineFile } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import type { Property, Unit } from "../facts/party.ts";
import { mayHang } from "./door-hanger.ts";
import { inMailingOrder } from "./mailing-order.ts";

type HangFile = Pick<LineFile, "properties" | "units" | "roles">;

/** One letter that hangs on one door. */
export interface HungLetter {
  readonly notice: Notice;
  readonly property: Property;
  /** Whose door it is; null: the property has one door as far as the file knows. */
  readonly unit: Unit | null;
}

/**
 * What hangs on which door, as somebody walks along them: at each unit the letters of those who live or
 * work there, and where none goes to them what is said of the property to its owners; each kind once in
 * each language. A letter that is about no property, or that not everybody may read, hangs nowhere.
 */
export function hungLetters(file: HangFile, notices: readonly Notice[]): HungLetter[] {
  const hung = file.properties.flatMap((property) => {
    const about = notices.filter(
      ({ propertyId, kind }) => propertyId === property.id && mayHang(kind),
    );
    return about.length === 0
      ? []
      : doorsOf(file, property).flatMap((unit) => atDoor(file, { property, unit, about }));
  });
  return inMailingOrder(hung, ({ property, unit }) => ({
    ...property.address,
    unit: unit?.name || property.address.unit,
  }));
}

function doorsOf({ units }: HangFile, { id }: Property): readonly (Unit | null)[] {
  const own = units.filter(({ propertyId }) => propertyId === id);
  return own.length === 0 ? [null] : own;
}

function atDoor(
  { roles }: HangFile,
  {
    property,
    unit,
    about,
  }: { readonly property: Property; readonly unit: Unit | null; readonly about: readonly Notice[] },
): HungLetter[] {
  const homes = ({ partyId }: Notice) =>
    roles.filter(
      (role) =>
        role.partyId === partyId && role.propertyId === property.id && role.role === "occupant",
    );
  const isHere = (notice: Notice) =>
    homes(notice).some(({ unitId }) => unit === null || unitId === unit.id);
  const theirs = about.filter(isHere);
  // What is said to those of another unit is theirs alone.
  const ofAll = about.filter((notice) => homes(notice).every(({ unitId }) => unitId === null));
  const once = new Map(
    (theirs.length === 0 ? ofAll : theirs).map((notice) => [
      `${notice.kind} ${notice.language} ${notice.alsoIn}`,
      notice,
    ]),
  );
  return [...once.values()].map((notice) => ({ notice, property, unit }));
}
