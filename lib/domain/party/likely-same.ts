import type { LineFile } from "../facts/line-file.ts";
import type { Address, Party } from "../facts/party.ts";
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

/** What speaks for two names, with their addresses, being one party; empty: nothing does. */
export function likeness(a: Reach, b: Reach): string[] {
  const [one, other] = [nameWords(a.name), nameWords(b.name)];
  const same = one.length > 0 && one.join(" ") === other.join(" ");
  const reach = sameReach(a, b);
  if (same) return ["Same name, written differently.", ...reach];
  const near = reach.length > 0 && sharesMost(one, other);
  return near ? ["Similar name.", ...reach] : [];
}

function sameReach(a: Reach, b: Reach): string[] {
  const phone = digits(a.phone);
  return [
    isSameAddress(a.mailing, b.mailing) ? "Same mailing address." : "",
    phone.length > 6 && phone === digits(b.phone) ? "Same phone." : "",
    a.email !== "" && a.email.toLowerCase() === b.email.toLowerCase() ? "Same email." : "",
  ].filter((words) => words !== "");
}

function isSameAddress(a: Address | null, b: Address | null): boolean {
  return a !== null && b !== null && addressKey(a) === addressKey(b);
}

function digits(phone: string): string {
  return phone.replace(/\D/g, "").slice(-10);
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
  return parties.flatMap((a, at) =>
    parties.slice(at + 1).flatMap((b) => {
      const nameless = a.kind === "resident" || b.kind === "resident";
      if (nameless || decided.has(JSON.stringify([a.id, b.id]))) return [];
      const because = likeness(a, b);
      return because.length === 0 ? [] : [{ a, b, because }];
    }),
  );
}
