import type { Property } from "../facts/party.ts";

/**
 * What a property is called where a drawing has little room: its house number alone in the street
 * where most of them stand, else number and street; the unit follows. Without a street, its parcel.
 */
export function shortNames(properties: readonly Property[]): ReadonlyMap<string, string> {
  const main = mainStreet(properties);
  return new Map(properties.map((property) => [property.id, shortName(property, main)]));
}

/** Number, street and unit, as on a letterbox. */
export function streetName({ address, parcel }: Property): string {
  const name = address.street === "" ? parcel : address.street;
  if (name === "") return "no address";
  return address.unit === "" ? name : `${name}, ${address.unit}`;
}

function shortName(property: Property, main: string | null): string {
  const { address } = property;
  const number = numberOf(address.street);
  if (number === "" || streetOf(property) !== main) return streetName(property);
  return address.unit === "" ? number : `${number} ${address.unit}`;
}

/** The street of more than half of the properties, if there is one. */
function mainStreet(properties: readonly Property[]): string | null {
  const streets = properties.map(streetOf).filter((street) => street !== "");
  const most = streets.find(
    (street) => streets.filter((one) => one === street).length * 2 > properties.length,
  );
  return most ?? null;
}

function numberOf(street: string): string {
  return /^\d+(?:-\d+)?[A-Za-z]?(?:\s+[1-9]\/\d|\s*½)?(?=\s)/.exec(street.trim())?.[0] ?? "";
}

function streetOf({ address }: Property): string {
  return address.street.trim().slice(numberOf(address.street).length).trim().toLowerCase();
}
