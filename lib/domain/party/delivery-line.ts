import { DIRECTIONALS, NUMBERED_UNITS, PLAIN_UNITS, SUFFIXES } from "./postal-words.ts";

/** Where the carrier goes: `10 NW MAIN ST` and `APT 5`. */
export interface DeliveryLine {
  readonly street: string;
  /** Empty where there is none. */
  readonly unit: string;
}

/**
 * Street and unit as typed, written as USPS Publication 28 asks for: capitals, no punctuation but
 * what belongs to a number (hyphen, slash, the point of a grid address), suffix and directionals
 * abbreviated. Of two suffix words only the last is (`MAIN AVENUE DR`); a directional that is the
 * street's only name stays spelled (`SOUTH ST`). Fractions and accented letters stay.
 */
export function deliveryLine(street: string, unit: string): DeliveryLine {
  const box = boxLine(plainWords(street));
  const own = unitWords(plainWords(unit));
  if (box !== null) return { street: box, unit: own };
  const { words, unit: inner } = withoutUnit(street);
  return { street: streetWords(words), unit: [inner, own].filter((each) => each !== "").join(" ") };
}

const FRACTIONS: Record<string, string> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
};

/** In capitals, as words: `4½` → `4 1/2`, `#5` → `# 5`, `N.W.` → `NW`, `39.2` stays. */
export function plainWords(text: string): string[] {
  return text
    .normalize("NFC")
    .replace(/[½¼¾⅓⅔]/g, (sign) => ` ${FRACTIONS[sign] ?? sign}`)
    .toLocaleUpperCase("en-US")
    .replace(/#/g, " # ")
    .replace(/(?<!\d)\.|\.(?!\d)/g, "")
    .replace(/['’`]/g, "")
    .replace(/[^\p{L}\p{N}#/.&-]+/gu, " ")
    .split(" ")
    .map((word) => word.replace(/^[-/.]+|[-/.]+$/g, ""))
    .filter((word) => word !== "");
}

/** Post office boxes and rural or contract routes, which have no street. Null for all else. */
function boxLine(words: readonly string[]): string | null {
  const text = words.join(" ");
  const box = /^(?:PO|P O|POST OFFICE) ?BOX #? ?0*([\w-]+)$/.exec(text);
  if (box) return `PO BOX ${box[1]}`;
  const route =
    /^(RR|R R|RFD|RURAL ROUTE|HC|HIGHWAY CONTRACT(?: ROUTE)?) #? ?0*(\w+) BOX #? ?0*([\w-]+)$/.exec(
      text,
    );
  if (!route) return null;
  return `${route[1]?.startsWith("H") ? "HC" : "RR"} ${route[2]} BOX ${route[3]}`;
}

/** Takes a unit that was typed into the street line off its end. */
function withoutUnit(street: string): { words: string[]; unit: string } {
  const [head = "", ...tail] = street.split(",");
  const behindComma = plainWords(tail.join(" "));
  const words = plainWords(head);
  if (behindComma.length > 0) return { words, unit: unitWords(behindComma) };
  const at = unitStart(words);
  return at === null
    ? { words, unit: "" }
    : { words: words.slice(0, at), unit: unitWords(words.slice(at)) };
}

/** Where the unit begins: at a `#`, or at a designator that a number or a letter ends the line after. */
function unitStart(words: readonly string[]): number | null {
  const sign = words.indexOf("#");
  if (sign > 1) return isDesignator(words[sign - 1]) && sign > 2 ? sign - 1 : sign;
  const at = words.length - 2;
  if (at < 2 || !isDesignator(words[at])) return null;
  return /^(\d[\w/-]*|[A-Z])$/.test(words[at + 1] ?? "") ? at : null;
}

function isDesignator(word: string | undefined): boolean {
  return word !== undefined && NUMBERED_UNITS.has(word);
}

/** `APARTMENT 5` → `APT 5`, `5` → `# 5`, `SUITE # 4 1/2` → `STE 4 1/2`; names stay as they are. */
function unitWords(words: readonly string[]): string {
  const [first, ...rest] = words;
  if (first === undefined) return "";
  const known = NUMBERED_UNITS.get(first);
  if (known !== undefined && rest.length > 0)
    return [known, ...rest.filter((word) => word !== "#")].join(" ");
  if (rest.length === 0 && PLAIN_UNITS.has(first)) return PLAIN_UNITS.get(first) ?? first;
  const isBare = /^(\d[\w/-]*|[A-Z])$/.test(first) && rest.every((word) => /^\d+\/\d+$/.test(word));
  return isBare ? ["#", ...words].join(" ") : words.join(" ");
}

function streetWords(words: readonly string[]): string {
  const numbers = numberLength(words);
  const name = shortName(words.slice(numbers));
  return [...words.slice(0, numbers), ...name].join(" ");
}

/** House number and its fraction: `112-10`, `12 1/2`; a decimal is a grid street's name, `39.2 RD`. */
function numberLength(words: readonly string[]): number {
  if (words.length < 2 || !/^\d[^.]*$/.test(words[0] ?? "")) return 0;
  return words.length > 2 && /^\d+\/\d+$/.test(words[1] ?? "") ? 2 : 1;
}

/** Directional behind, suffix, directional before: each only while a name is left. */
function shortName(words: readonly string[]): string[] {
  const behind = directionalAt(words, "end");
  let core = words.slice(0, words.length - behind.length);
  const suffix = core.length > 1 ? SUFFIXES.get(core.at(-1) ?? "") : undefined;
  if (suffix !== undefined) core = core.slice(0, -1);
  const before = directionalAt(core, "start");
  core = core.slice(before.length);
  return [...before.words, ...core, ...(suffix === undefined ? [] : [suffix]), ...behind.words];
}

interface Directional {
  /** How many typed words it takes up. */
  readonly length: number;
  readonly words: readonly string[];
}

const NO_DIRECTIONAL: Directional = { length: 0, words: [] };

function directionalAt(words: readonly string[], where: "start" | "end"): Directional {
  const take = (length: number) =>
    where === "start" ? words.slice(0, length) : words.slice(-length);
  if (words.length > 2) {
    const [one, other] = take(2).map((word) => DIRECTIONALS.get(word) ?? "");
    const joined = `${one}${other}`;
    if (one !== "" && other !== "" && joined.length === 2 && DIRECTIONALS.has(joined))
      return { length: 2, words: [joined] };
  }
  const single = words.length > 1 ? DIRECTIONALS.get(take(1)[0] ?? "") : undefined;
  return single === undefined ? NO_DIRECTIONAL : { length: 1, words: [single] };
}
