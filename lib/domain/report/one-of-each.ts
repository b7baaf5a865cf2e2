import { CHAIN_START } from "../consent/chain.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ListName } from "../facts/list-name.ts";
import type { Nonsense } from "../facts/nonsense.ts";
import { keptParty } from "../party/as-one.ts";

/** Lists of which no two rows have the same of these fields, and what a second one is told. */
const ONCE: readonly (readonly [list: ListName, fields: readonly string[], message: string])[] = [
  ["videos", ["runId"], "This run has a video already; a run has one"],
  [
    "pairings",
    ["entryId", "tieInId"],
    "This entry and this tie-in were decided on already; write the decision that holds, once",
  ],
  ["sameParties", ["partyId", "intoId"], "This pair was decided on already; say once what holds"],
  ["reconnections", ["tieInId"], "This tie-in is in the tally already; measure it there"],
  ["waivers", ["holdKey"], "This hold was waived already; write the waiver that holds, once"],
  ["splits", ["number"], "Another split has this number already; number them one after the other"],
  ["requirementMarks", ["requirementId"], "This requirement was marked already; mark it once"],
  ["signatures", ["consentId"], "This consent was signed already; a signature is given once"],
  ["ledger", ["reversesId"], "This entry was reversed already; it is reversed once"],
];

/** Rows that say a second time what can be said once. */
export function saidTwice(file: LineFile): Nonsense[] {
  return ONCE.flatMap(([list, fields, message]) => {
    const seen = new Set<string>();
    return (file[list] as unknown as readonly Readonly<Record<string, unknown>>[]).flatMap(
      (one, row) => {
        const values = fields.map((field) => one[field]);
        if (values.includes(null)) return [];
        const key = JSON.stringify(values);
        if (seen.has(key)) return [{ list, row, path: fields.at(-1) ?? "", message }];
        seen.add(key);
        return [];
      },
    );
  });
}

/** Signatures that do not follow the one before them: each carries the hash of that one. */
export function brokenChain({ signatures }: LineFile): Nonsense[] {
  return signatures.flatMap(({ previousHash }, row) => {
    if (previousHash === (signatures[row - 1]?.hash ?? CHAIN_START)) return [];
    const message =
      "It does not follow the signature before it: write the hash of that one, or 64 zeros for the first";
    return [{ list: "signatures" as const, row, path: "previousHash", message }];
  });
}

/** Parties that are said to be one with themselves, straight or in a circle, or with two others. */
export function mergedInCircle({ sameParties }: LineFile): Nonsense[] {
  return sameParties.flatMap(({ partyId, intoId, same }, row) => {
    if (!same && partyId !== intoId) return [];
    const twice = sameParties.findIndex((each) => each.same && each.partyId === partyId) !== row;
    const circle = partyId === intoId || keptParty(sameParties, partyId) === partyId;
    if (!circle && !twice) return [];
    const message = circle
      ? "It leads back to the party that it is about: name the party that is kept"
      : "This party is another one already; say once which";
    return [{ list: "sameParties" as const, row, path: "intoId", message }];
  });
}
