import type { Address } from "../facts/party.ts";
import { deliveryLine, plainWords } from "./delivery-line.ts";
import { STATES } from "./postal-words.ts";

/** The address as typed, the state as its two letters, for reading: `12½ Fennel Row, Unit 3` and `Quillhaven, WA 98000`. */
export function addressLines(address: Address): string[] {
  const street = joined([address.street, address.unit], ", ");
  const place = joined(
    [address.city, joined([stateWritten(address.state), address.zip], " ")],
    ", ",
  );
  return [street, place].filter((line) => line !== "");
}

/** The two letters of a state (`or` and `Oregon` are `OR`); what is none stays as it was typed. */
export function stateWritten(state: string): string {
  return STATES.get(plainWords(state).join(" ")) ?? state;
}

/** A town with its state in two letters behind the comma: `Alder Fork, or` is `Alder Fork, OR`. */
export function townWritten(town: string): string {
  const comma = town.lastIndexOf(",");
  if (comma < 0) return town;
  return `${town.slice(0, comma)}, ${stateWritten(town.slice(comma + 1).trim())}`;
}

/** What was typed, with its state as it is written; itself where that is so. */
export function withStateWritten<T extends { readonly state: string }>(typed: T): T {
  const state = stateWritten(typed.state);
  return state === typed.state ? typed : { ...typed, state };
}

/** The address as typed, in one line. */
export function formatAddress(address: Address): string {
  return addressLines(address).join(", ");
}

/** Widest line that a window shows in 10-point capitals: about 3 1/4 in. */
const WIDEST = 40;
/** What fits a window with the sheet moving in its envelope. */
const MOST_LINES = 5;

/**
 * Name and address for an envelope's window: at most five lines in capitals, after USPS Publication
 * 28. The unit stands at the end of the street line, or on the line above it where both together are
 * too wide; in whose care the mail goes stands above the street. A long name takes the lines that are left; what then still does not fit is left off at
 * a word, since street and town must stay readable.
 */
export function windowLines(name: string, address: Address, careOf = ""): string[] {
  const delivery = deliveryLines(address);
  const place = lastLine(address);
  const hands = careOf.trim() === "" ? [] : nameLines(`C/O ${careOf}`, 1);
  const rest = [...hands, ...delivery, ...(place === "" ? [] : [place])];
  return [...nameLines(name, MOST_LINES - rest.length), ...rest];
}

function deliveryLines(address: Address): string[] {
  const { street, unit } = deliveryLine(address.street, address.unit);
  const together = joined([street, unit], " ");
  const lines = together.length > WIDEST ? [unit, street] : [together];
  return lines.filter((line) => line !== "");
}

/** `QUILLHAVEN WA 98000-1234`. */
function lastLine({ city, state, zip }: Address): string {
  return joined([plainWords(city).join(" "), stateLetters(state), zipDigits(zip)], " ");
}

/** The two letters of a state as typed; what is none comes back in capitals. */
export function stateLetters(state: string): string {
  const plain = plainWords(state).join(" ");
  return STATES.get(plain) ?? plain;
}

function zipDigits(zip: string): string {
  const digits = zip.replace(/\D/g, "");
  if (digits.length === 9) return `${digits.slice(0, 5)}-${digits.slice(5)}`;
  return digits.length === 5 ? digits : zip.trim().toLocaleUpperCase("en-US");
}

function nameLines(name: string, room: number): string[] {
  const lines: string[] = [];
  for (const word of nameWords(name)) {
    const last = lines.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= WIDEST)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.slice(0, room);
}

function nameWords(name: string): string[] {
  return name
    .normalize("NFC")
    .toLocaleUpperCase("en-US")
    .replace(/[.,;:"“”]/g, " ")
    .split(/\s+/)
    .filter((word) => word !== "");
}

/**
 * A key under which two spellings of the same address meet: case, punctuation, accents, suffixes,
 * directionals and the word before a unit's number do not matter. Fraction and unit do: `12` and
 * `12 1/2` are two houses. For finding candidates only; a person decides what is the same.
 */
export function addressKey(address: Address): string {
  const { street, unit } = deliveryLine(address.street, address.unit);
  const place = [plainWords(address.city).join(" "), stateLetters(address.state)];
  return [street, unitKey(unit), ...place, zipDigits(address.zip).slice(0, 5)]
    .map((part) => part.normalize("NFD").replace(/\p{M}/gu, ""))
    .join("|");
}

function unitKey(unit: string): string {
  return unit.replace(/^(APT|UNIT|#) /, "");
}

function joined(parts: readonly string[], between: string): string {
  return parts
    .map((part) => part.trim())
    .filter((part) => part !== "")
    .join(between);
}
