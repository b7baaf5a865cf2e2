import type { LineFile } from "../file/line-file.ts";
import type { Cft } from "../line/station.ts";
import { streetOf } from "../party/stakeholders.ts";

/** `1 letter`, `3 letters`; the plural is the word with an s unless given. */
export function sayCount(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** All of so many: `both`, `all 6`. */
export function sayAll(count: number): string {
  return count === 2 ? "both" : `all ${count}`;
}

/** Is or are, has or have: the one word for one, the other for none and several. */
export function forCount(count: number, one: string, many: string): string {
  return count === 1 ? one : many;
}

/** `41 to 47 ft`, `0 to 88.5 ft`. */
export function saySpan(from: Cft, to: Cft): string {
  return `${shortFeet(from)} to ${shortFeet(to)} ft`;
}

/** Feet without needless zeros: `88`, `88.5`. */
function shortFeet(length: Cft): string {
  return String(length / 100);
}

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

/** Parts of a sentence with `; ` between, the first letter large; empty parts fall out. */
export function sayParts(parts: readonly string[]): string {
  const text = parts.filter((part) => part !== "").join("; ");
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
