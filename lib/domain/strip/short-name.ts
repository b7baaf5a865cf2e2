import type { Property } from "../party/party.ts";

/**
 * What a property is called on a drawing: its house number where all stand in one street, else
 * number and street; the unit follows. Without a street, its parcel.
 */
export function shortNames(properties: readonly Property[]): ReadonlyMap<string, string> {
  const streets = new Set(properties.map((property) => streetOf(property)));
  const oneStreet = streets.size === 1 && !streets.has("");
  return new Map(properties.map((property) => [property.id, nameOf(property, oneStreet)]));
}

function nameOf({ address, parcel }: Property, oneStreet: boolean): string {
  const number = numberOf(address.street);
  const street = oneStreet && number !== "" ? number : address.street;
  const name = street === "" ? parcel : street;
  if (name === "") return "no address";
  return address.unit === "" ? name : `${name} ${address.unit}`;
}

function numberOf(street: string): string {
  return /^\d+(?:-\d+)?[A-Za-z]?(?:\s+[1-9]\/\d|\s*½)?(?=\s)/.exec(street.trim())?.[0] ?? "";
}

function streetOf({ address }: Property): string {
  return address.street.trim().slice(numberOf(address.street).length).trim().toLowerCase();
}
