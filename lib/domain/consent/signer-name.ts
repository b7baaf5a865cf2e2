import type { Party } from "../facts/party.ts";

/** Why a typed name is looked at by a person of the office before the signature counts. */
const NAME_DOUBTS = [
  /** It is not the name in the file. */
  "other-name",
  /** Several people stand in the file as one party, and not each of them typed a name. */
  "not-all",
  /** A trust, firm, estate, association or public body: the file does not say that this person signs for it. */
  "signs-for-another",
] as const;
export type NameDoubt = (typeof NAME_DOUBTS)[number];

type Named = Pick<Party, "name" | "kind">;

/**
 * Whether the names typed under a letter are those of its reader as the file has them; null where
 * they are. Case, accents, punctuation and titles do not matter; a middle name may be left out, added
 * or an initial; a first name that is cut to its initial, a nickname or another surname is in doubt.
 * Where several people are one party, each types their own. For a trust or a firm the file has to name
 * who signs, in the capacity on its role: `capacity`.
 */
export function nameDoubt(
  party: Named,
  { typed, capacity }: { readonly typed: readonly string[]; readonly capacity: string },
): NameDoubt | null {
  const given = typed.map((name) => name.trim()).filter((name) => name !== "");
  if (party.kind !== "person") {
    const named = given.length === 1 && given.every((name) => isNamedIn(name, capacity));
    return named ? null : "signs-for-another";
  }
  const wanted = personsOf(party);
  const left = [...given];
  const missing = wanted.filter((person) => {
    const at = left.findIndex((name) => isSamePerson(person, name));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  if (missing.length === 0 && left.length === 0 && !namesOthers(party.name)) return null;
  return missing.length < wanted.length && left.length === 0 ? "not-all" : "other-name";
}

/**
 * The people whom one party's name stands for: `Rafael and June Ostrander` is two, each with the
 * surname. One for anybody else; none for what is no person.
 */
export function personsOf({ name, kind }: Named): string[] {
  if (kind !== "person") return [];
  const plain = name.replace(COUPLE_WORDS, " ").replace(/\s+/g, " ").trim();
  const parts = splitPeople(plain);
  const last = parts.at(-1) ?? "";
  const surname = tokensOf(last).length > 1 ? (last.split(" ").at(-1) ?? "") : "";
  return parts.map((part) => (lacksSurname(part) ? `${part} ${surname}`.trim() : part));
}

/** What stands after two names on a deed and names nobody. */
const COUPLE_WORDS =
  /,?\s*\b(husband and wife|wife and husband|a married couple|spouses married|h\s*\/\s*w|et\.? ux\.?|et\.? vir\.?|et\.? al\.?)(?=\W|$)/giu;

/** Others own too, and nobody says who: whoever signs does not sign for all. */
function namesOthers(name: string): boolean {
  return /\bet\.? (al|ux|vir)\b/iu.test(name);
}

function splitPeople(name: string): string[] {
  const lastFirst = /^([^,\s]+),\s*([^,]+)$/u.exec(name);
  if (lastFirst !== null && !SUFFIXES.has(fold(lastFirst[2] ?? "")))
    return splitPeople(`${lastFirst[2]} ${lastFirst[1]}`);
  const parts = name.split(/\s*(?:[&+;/]|,(?!\s*(?:jr|sr|ii|iii|iv)\b)|\band\b)\s*/iu);
  return parts.flatMap(splitSpanish).filter((part) => part !== "");
}

/** `Joaquín y Marisol Ibarra` is two people, `José Ortega y Gasset` is one. */
function splitSpanish(name: string): string[] {
  const [before = "", after = "", ...rest] = name.split(/\s+[ye]\s+/u);
  const isOne =
    rest.length > 0 || after === "" || (tokensOf(before).length > 1 && !/\s/.test(after));
  return isOne ? [name] : [before, after];
}

function lacksSurname(part: string): boolean {
  const [, ...rest] = tokensOf(part);
  return rest.every((token) => token.length === 1);
}

const TITLES = new Set([
  "mr",
  "mrs",
  "ms",
  "miss",
  "dr",
  "rev",
  "sr",
  "sra",
  "srta",
  "don",
  "dona",
]);
const SUFFIXES = new Set(["jr", "sr", "ii", "iii", "iv", "esq", "md", "phd"]);

/** Folded words of one name, without titles; `Sr` before a name is a title, after it a generation. */
function tokensOf(name: string): string[] {
  const words = fold(name)
    .split(" ")
    .filter((word) => word !== "");
  return words.filter(
    (word, at) => !(at === 0 && TITLES.has(word)) && !(at > 0 && SUFFIXES.has(word)),
  );
}

function generationOf(name: string): string {
  const words = fold(name).split(" ");
  return words.slice(1).find((word) => ["jr", "sr", "ii", "iii", "iv"].includes(word)) ?? "";
}

/** Lower case, without accents; what is no letter or digit parts words, an apostrophe does not. */
function fold(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/['’ʼ]/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}

/**
 * Whether a typed name is this person's. One line with two names is one person's typing. Father and son
 * may differ in nothing else, so that two generations are two people.
 */
function isSamePerson(inFile: string, typed: string): boolean {
  if (splitPeople(typed).length > 1) return false;
  const [one, other] = [generationOf(inFile), generationOf(typed)];
  if (one !== "" && other !== "" && one !== other) return false;
  const [file, name] = [tokensOf(inFile), tokensOf(typed)];
  if (file.join(" ") === name.join(" ")) return file.length > 0;
  if (file.length < 2 || name.length < 2 || !isFirstName(file[0], name[0])) return false;
  return isWithin(file.slice(1), name.slice(1)) || isWithin(name.slice(1), file.slice(1));
}

/** The first name in full; where the file has an initial alone, any that begins so. */
function isFirstName(inFile = "", typed = ""): boolean {
  return inFile === typed || (inFile.length === 1 && typed.startsWith(inFile));
}

/** Whether every word of the shorter row stands in the longer one, in order; a middle one as an initial too. */
function isWithin(shorter: readonly string[], longer: readonly string[]): boolean {
  if (shorter.length === 0 || shorter.length > longer.length) return false;
  let at = 0;
  return shorter.every((word, place) => {
    const isMiddle = place < shorter.length - 1;
    const found = longer.findIndex(
      (other, index) => index >= at && (other === word || (isMiddle && isInitial(word, other))),
    );
    at = found + 1;
    return found >= 0;
  });
}

function isInitial(word: string, other: string): boolean {
  return (
    (word.length === 1 && other.startsWith(word)) || (other.length === 1 && word.startsWith(other))
  );
}

/** `Mara Lindt` or `Mara Lindt for Larkspur Holdings LLC`, where the role says `manager Mara Lindt`. */
function isNamedIn(typed: string, capacity: string): boolean {
  const [person = ""] = typed.split(/\s+(?:for|por|on behalf of|as|,)\s+|,/iu);
  const wanted = tokensOf(person.replace(/^\s*by:?\s+/iu, ""));
  const known = fold(capacity).split(" ");
  return wanted.length > 1 && wanted.every((word) => known.includes(word));
}
