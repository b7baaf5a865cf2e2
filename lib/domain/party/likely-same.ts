import type { LineFile } from "../facts/line-file.ts";
import type { Party } from "../facts/party.ts";
import { addressKey } from "./address.ts";

/** Two parties that may be one, with what speaks for it. A person decides. */
export interface LikelySame {
  readonly a: Party;
  readonly b: Party;
  /** Each a short sentence. */
  readonly because: readonly string[];
}

type Reach = Pick<Party, "name" | "mailing" | "email" | "phone">;

const DROPPED = /^(?:the|mr|mrs|ms|dr|jr|sr|ii|iii|iv|trustee|trustees|ttee|llc|inc|co|corp)$/;

/**
 * The words of a name that tell people apart, in no order: case, accents, punctuation, titles and
 * single initials do not matter. `BRANDVOLD, OTTILIE M.` and `Ottilie Brandvold` have the same.
 */
function nameWords(name: string): string[] {
  return name
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/['’.]/g, "")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word.length > 1 && !DROPPED.test(word))
    .sort();
}

/** What of a party is compared, written one way. */
interface Traits {
  readonly words: readonly string[];
  readonly name: string;
  /** Each empty where it is not known, or too short to tell people apart. */
  readonly mailing: string;
  readonly phone: string;
  readonly email: string;
}

function traitsOf({ name, mailing, phone, email }: Reach): Traits {
  const words = nameWords(name);
  const digits = phone.replace(/\D/g, "").slice(-10);
  return {
    words,
    name: words.join(" "),
    mailing: mailing === null ? "" : addressKey(mailing),
    phone: digits.length > 6 ? digits : "",
    email: email.toLowerCase(),
  };
}

/** What speaks for two names, with their addresses, being one party; empty: nothing does. */
export function likeness(a: Reach, b: Reach): string[] {
  return alike(traitsOf(a), traitsOf(b));
}

function alike(a: Traits, b: Traits): string[] {
  const reach = sameReach(a, b);
  if (a.name !== "" && a.name === b.name) return ["Same name, written differently.", ...reach];
  const near = reach.length > 0 && sharesMost(a.words, b.words);
  return near ? ["Similar name.", ...reach] : [];
}

const REACHED = { mailing: "Same mailing address.", phone: "Same phone.", email: "Same email." };

function sameReach(a: Traits, b: Traits): string[] {
  return (["mailing", "phone", "email"] as const).flatMap((by) =>
    a[by] !== "" && a[by] === b[by] ? [REACHED[by]] : [],
  );
}

/** One name's words are all in the other's, or all but one letter of one word are. */
function sharesMost(one: readonly string[], other: readonly string[]): boolean {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (short.length === 0) return false;
  const found = short.filter((word) => long.some((each) => isNear(word, each)));
  return found.length === short.length && short.length > 1;
}

/** The same word, or one with a letter changed, added or left out. */
function isNear(a: string, b: string): boolean {
  if (a === b) return true;
  if (Math.min(a.length, b.length) < 4 || Math.abs(a.length - b.length) > 1) return false;
  let at = 0;
  while (at < a.length && a[at] === b[at]) at += 1;
  const [x, y] = [a.slice(at), b.slice(at)];
  return x.slice(1) === y.slice(1) || x === y.slice(1) || x.slice(1) === y;
}

/** Pairs of a line's parties that may be one and that nobody decided on, in the file's order. */
export function likelySame({
  parties,
  sameParties,
}: Pick<LineFile, "parties" | "sameParties">): LikelySame[] {
  const decided = new Set(
    sameParties.flatMap(({ partyId, intoId }) => [
      JSON.stringify([partyId, intoId]),
      JSON.stringify([intoId, partyId]),
    ]),
  );
  const named = parties
    .filter(({ kind }) => kind !== "resident")
    .map((party) => ({ party, traits: traitsOf(party) }));
  return named.flatMap(({ party: a, traits }, at) =>
    named.slice(at + 1).flatMap(({ party: b, traits: others }) => {
      const because = alike(traits, others);
      const open = because.length > 0 && !decided.has(JSON.stringify([a.id, b.id]));
      return open ? [{ a, b, because }] : [];
    }),
  );
}
