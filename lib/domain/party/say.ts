import type { LineFile } from "../facts/line-file.ts";
import { streetOf } from "./stakeholders.ts";

/** What a property is called in a sentence. */
export function sayProperty(file: Pick<LineFile, "properties">, propertyId: string): string {
  const property = file.properties.find((each) => each.id === propertyId);
  if (property === undefined) return "a property no longer on the line";
  return streetOf(property.address) || "a property without an address";
}

/** What a party is called in a sentence. */
export function sayParty(file: Pick<LineFile, "parties">, partyId: string): string {
  return (
    file.parties.find((party) => party.id === partyId)?.name ?? "a party no longer on the line"
  );
}
