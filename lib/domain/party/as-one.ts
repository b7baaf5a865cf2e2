import type { LineFile } from "../facts/line-file.ts";
import type { Role, SameParty } from "../facts/party.ts";
import { LIST_REFERENCES } from "../facts/references.ts";

type Row = Readonly<Record<string, unknown>> & { readonly id: string };

/**
 * A file as it is read: parties that a person said are one stand as one. What names the other of
 * them (letters, consents, money, roles) is read as the first's, in its place and otherwise
 * unchanged. The rows themselves stay as they were recorded, so that taking the word back brings
 * everything back. A file without such a word comes back as it is.
 */
export function withPartiesAsOne(file: LineFile): LineFile {
  const merged = file.sameParties.filter(({ same }) => same);
  if (merged.length === 0) return file;
  const into = new Map(merged.map(({ partyId }) => [partyId, keptParty(merged, partyId)]));
  const read: Record<string, unknown> = {};
  for (const { from, to, field, inside } of LIST_REFERENCES) {
    if (to !== "parties" || from === "sameParties" || inside !== null) continue;
    const rows = (read[from] ?? file[from]) as readonly Row[];
    read[from] = rows.map((row) => {
      const kept = into.get(String(row[field]));
      return kept === undefined ? row : { ...row, [field]: kept };
    });
  }
  const roles = onlyOnce((read["roles"] ?? file.roles) as readonly Role[]);
  const parties = file.parties.filter(({ id }) => !into.has(id) || into.get(id) === id);
  const sameParties = file.sameParties.filter(
    ({ same, partyId, intoId }) => !same && !into.has(partyId) && !into.has(intoId),
  );
  return { ...file, ...read, roles, parties, sameParties };
}

/** The party as which another one is read in the end; a circle of such words ends where it began. */
export function keptParty(words: readonly SameParty[], partyId: string): string {
  const seen = new Set<string>();
  let at = partyId;
  for (;;) {
    const next = words.find((word) => word.same && word.partyId === at);
    if (next === undefined) return at;
    if (seen.has(at)) return partyId;
    seen.add(at);
    at = next.intoId;
  }
}

function onlyOnce(roles: readonly Role[]): Role[] {
  const seen = new Set<string>();
  return roles.filter(({ partyId, propertyId, role, unitId }) => {
    const key = JSON.stringify([partyId, propertyId, role, unitId]);
    const first = !seen.has(key);
    seen.add(key);
    return first;
  });
}
