import type { PartyKind } from "../facts/party.ts";
import { RESIDENT } from "./residents.ts";
import { isCapitals, nameInCase } from "./title-case.ts";

/** How a list writes the names of persons: `Ottilie Brandvold`, or `BRANDVOLD OTTILIE`. */
export const NAME_ORDERS = ["first-last", "last-first"] as const;
export type NameOrder = (typeof NAME_ORDERS)[number];

/** One owner that a list names. */
export interface OwnerNamed {
  readonly name: string;
  readonly kind: PartyKind;
  /** In which capacity somebody signs for a trust or an estate, as far as the list says. */
  readonly capacity: string;
}

/** What a cell with owners comes to. */
export interface OwnersNamed {
  readonly owners: readonly OwnerNamed[];
  /** Whose hands their mail goes through; empty where the list says none. */
  readonly careOf: string;
  /** Who holds title with them without being named: `wife, not named`; empty where nobody. */
  readonly heldWith: string;
  /** Words of the list that were taken off a name and mean something: `JTWROS`. */
  readonly tenure: readonly string[];
}

const NOBODY: OwnersNamed = { owners: [], careOf: "", heldWith: "", tenure: [] };

const CARE_OF = /(?:^|\s)(?:C\/O|CARE OF|ATTN:?|ATTENTION:?|%)\s*(.*)$/i;

const UNNAMED: readonly (readonly [RegExp, string])[] = [
  [/\bET\.? ?UX\b\.?/i, "wife, not named"],
  [/\bET\.? ?VIR\b\.?/i, "husband, not named"],
  [/\bET\.? ?AL\b\.?|\bAND OTHERS\b|&\s*OTHERS\b/i, "others, not named"],
  [/\bHEIRS OF\b|\bUNKNOWN HEIRS\b/i, "heirs, not named"],
];

/** Said behind names of how they hold title; no part of a name. */
const TENURE =
  /(?:^|[\s,(])(JTWROS|JT ?WROS|JT ?TEN|JTRS|TEN(?:ANTS)? (?:IN COM(?:MON)?|BY ENT(?:IRETY)?)|H ?& ?W|H\/W|HUSBAND (?:AND|&) WIFE|WIFE (?:AND|&) HUSBAND|A SINGLE (?:WO)?MAN|A MARRIED (?:WO)?MAN|UNMARRIED|LIFE ESTATE|L\/E|\(?\d{1,3}(?:\.\d+)?%\)?(?: INT(?:EREST)?)?)(?=$|[\s,);])/gi;

const PUBLIC =
  /^(?:THE )?(?:CITY|TOWN|VILLAGE|COUNTY|STATE|PORT|TOWNSHIP|BOROUGH) OF\b|\b(?:COUNTY|SCHOOL DIST(?:RICT)?|WATER DIST(?:RICT)?|SEWER DIST(?:RICT)?|HOUSING AUTHORITY|UNITED STATES|USA)$/i;
const ASSOCIATION =
  /\b(?:HOA|H\.O\.A\.|HOMEOWNERS?'?|OWNERS'? ASS(?:OCIATIO)?N|CONDO(?:MINIUM)?S? ASS(?:OCIATIO)?N|ASS(?:OCIATIO)?N|COA)\b/i;
const ESTATE = /\bESTATE OF\b|\bEST(?:ATE)?\.?$|\bEST OF\b|\bDECEASED\b|\bDECD\b/i;
const TRUST = /\b(?:REV(?:OCABLE)?|IRREV(?:OCABLE)?|FAMILY|LIVING)?\s*(?:TRUST|TR)\b(?! ?CO\b)/i;
const TRUSTEE = /\b(?:CO-?)?(?:TRUSTEES?|TTEES?|TRS|TRSTE)\b/i;
const FIRM =
  /\b(?:L\.?L\.?C|INC|CORP(?:ORATION)?|CO|COMPANY|L\.?L\.?P|L\.?P|LTD|P\.?L\.?L\.?C|PARTNERSHIP|PARTNERS|BANK|N\.?A|CHURCH|MINISTRIES|PROPERTIES|HOLDINGS|INVESTMENTS?|ENTERPRISES?|RENTALS?|REALTY|GROUP|MANAGEMENT|MORTGAGE|FUND|FOUNDATION)\b\.?$/i;

/**
 * The owners that one cell of an owner list names. Names in capitals come back as people write
 * them; joint owners are taken apart, a family name that is said once holds for both; a trust, an
 * estate, a firm, an association and a public agency stay whole. What stands for owners without
 * naming them (`ET UX`, `ET AL`) is kept as that, never as a name.
 */
export function ownersNamed(text: string, order: NameOrder): OwnersNamed {
  const { words, careOf } = withoutCareOf(text.replace(/\s+/g, " ").trim());
  if (words === "") return { ...NOBODY, careOf };
  const held = UNNAMED.filter(([pattern]) => pattern.test(words)).map(([, said]) => said);
  const bare = UNNAMED.reduce((left, [pattern]) => left.replace(pattern, " "), words);
  const { left, tenure } = withoutTenure(bare);
  const parts = left
    .split(/\s*;\s*|\s*\n\s*/)
    .map(trimmed)
    .filter((part) => part !== "");
  return {
    owners: parts.flatMap((part) => ownersIn(part, order)),
    careOf,
    heldWith: held.join(", "),
    tenure,
  };
}

function withoutCareOf(text: string): { words: string; careOf: string } {
  const found = CARE_OF.exec(text);
  if (found === null) return { words: text, careOf: "" };
  return { words: trimmed(text.slice(0, found.index)), careOf: nameInCase(found[1] ?? "") };
}

function withoutTenure(text: string): { left: string; tenure: string[] } {
  const tenure: string[] = [];
  const left = text.replace(TENURE, (_all, said: string) => {
    tenure.push(said.replace(/[()]/g, "").toUpperCase());
    return " ";
  });
  return { left: trimmed(left), tenure };
}

function trimmed(text: string): string {
  return text
    .replace(/\s+/g, " ")
    .replace(/^[\s,&]+|[\s,&]+$/g, "")
    .replace(/\s+,/g, ",");
}

function ownersIn(text: string, order: NameOrder): OwnerNamed[] {
  const whole = kindOfWhole(text);
  if (whole !== null) return [wholeOwner(text, whole, order)];
  const pieces = text.split(/\s*(?:&|\+|\bAND\b)\s*/i).map(trimmed);
  const named = pieces.filter((piece) => piece !== "");
  return personsIn(named, order).map((name) => ({ name, kind: "person", capacity: "" }));
}

const NAMELESS = /^(?:CURRENT |PRESENT )?(?:RESIDENT|OCCUPANT|TENANT)S?$/i;

function kindOfWhole(text: string): PartyKind | null {
  if (NAMELESS.test(text)) return "resident";
  if (PUBLIC.test(text)) return "public-body";
  if (ESTATE.test(text)) return "estate";
  if (TRUST.test(text) || TRUSTEE.test(text)) return "trust";
  if (ASSOCIATION.test(text)) return "association";
  return FIRM.test(text) ? "firm" : null;
}

function wholeOwner(text: string, kind: PartyKind, order: NameOrder): OwnerNamed {
  if (kind === "resident") return { name: RESIDENT, kind, capacity: "" };
  if (kind === "trust") return trustOwner(text, order);
  if (kind === "estate") {
    const of = trimmed(
      text.replace(/\b(?:THE )?EST(?:ATE)?\.? OF\b/i, "").replace(new RegExp(ESTATE, "i"), ""),
    );
    return { name: `Estate of ${personIn(of, order)}`, kind, capacity: "" };
  }
  return { name: nameInCase(text), kind, capacity: "" };
}

/** `WINFIELD FAMILY TRUST`; `WINFIELD HAROLD TRUSTEE` holds for a trust that the list does not name. */
function trustOwner(text: string, order: NameOrder): OwnerNamed {
  const capacity = TRUSTEE.test(text) ? "trustee" : "";
  if (TRUST.test(text.replace(new RegExp(TRUSTEE, "gi"), " "))) {
    const [before = "", after = ""] = splitAtTrustee(text);
    const trust = TRUST.test(before) || after === "" ? before : after;
    return { name: nameInCase(trust.replace(/\bTR$/i, "TRUST")), kind: "trust", capacity };
  }
  const [before = "", after = ""] = splitAtTrustee(text);
  const people = (before === "" ? after : before).split(/\s*(?:&|\bAND\b)\s*/i).map(trimmed);
  const names = personsIn(
    people.filter((name) => name !== ""),
    order,
  );
  const said = names.length > 1 ? "trustees" : "trustee";
  return { name: `${names.join(" and ")}, ${said}`, kind: "trust", capacity: "" };
}

function splitAtTrustee(text: string): string[] {
  return text
    .split(new RegExp(TRUSTEE, "i"))
    .map((part) => trimmed(part.replace(/^\s*(?:OF|FOR)\b(?: THE\b)?/i, "")));
}

const INITIAL = /^[A-Z]\.?$/i;
const SUFFIX = /^(?:JR|SR|II|III|IV|V|MD|ESQ)\.?$/i;
/** Words that belong to the family name behind them: `DE LA CRUZ`. */
const PARTICLE =
  /^(?:DE|DEL|DELA|LA|LAS|LOS|VAN|VON|DER|DEN|DI|DA|DOS|ST|SAN|SANTA|TER|TEN|EL|AL)$/i;

/** Persons said together; the family name that only one of them has is both's. */
function personsIn(pieces: readonly string[], order: NameOrder): string[] {
  const shared = sharedFamily(pieces, order);
  return pieces.map((piece) =>
    isGiven(piece) && shared !== "" ? nameInCase(`${piece} ${shared}`) : personIn(piece, order),
  );
}

/** A given name, with an initial or not, and no family name. */
function isGiven(piece: string): boolean {
  if (piece.includes(",")) return false;
  const words = piece.split(" ").filter((word) => !SUFFIX.test(word));
  const [, ...rest] = words;
  return rest.every((word) => INITIAL.test(word));
}

function sharedFamily(pieces: readonly string[], order: NameOrder): string {
  const full = pieces.find((piece) => !isGiven(piece));
  if (full === undefined || pieces.length < 2) return "";
  return parted(full, order).family;
}

function personIn(text: string, order: NameOrder): string {
  const { given, family, suffix } = parted(text, order);
  const name = [given, family, suffix].filter((part) => part !== "").join(" ");
  return isCapitals(text) ? nameInCase(name) : name;
}

interface Parted {
  readonly given: string;
  readonly family: string;
  readonly suffix: string;
}

/** A comma says which is the family name, whatever the list's order. */
function parted(text: string, order: NameOrder): Parted {
  const comma = text.indexOf(",");
  const rest = comma > 0 ? trimmed(text.slice(comma + 1)) : "";
  if (comma > 0 && !SUFFIX.test(rest)) {
    const words = rest.replace(/,/g, " ").split(/\s+/);
    const before = text.slice(0, comma).split(" ");
    return {
      given: words.filter((word) => !SUFFIX.test(word)).join(" "),
      family: before.filter((word) => !SUFFIX.test(word)).join(" "),
      suffix: [...before, ...words].filter((word) => SUFFIX.test(word)).join(" "),
    };
  }
  const all = text.replace(/,/g, " ").split(/\s+/);
  const suffix = all.filter((word, at) => at > 0 && SUFFIX.test(word)).join(" ");
  const words = all.filter((word, at) => at === 0 || !SUFFIX.test(word));
  if (words.length < 2) return { given: "", family: words.join(" "), suffix };
  const cut = order === "last-first" ? familyLength(words) : words.length - familyBehind(words);
  const [one, other] = [words.slice(0, cut).join(" "), words.slice(cut).join(" ")];
  return order === "last-first"
    ? { given: other, family: one, suffix }
    : { given: one, family: other, suffix };
}

function familyLength(words: readonly string[]): number {
  const last = words.findIndex((word) => !PARTICLE.test(word));
  return Math.min(Math.max(last, 0) + 1, words.length - 1);
}

function familyBehind(words: readonly string[]): number {
  let length = 1;
  while (length < words.length - 1 && PARTICLE.test(words[words.length - length - 1] ?? ""))
    length += 1;
  return length;
}
