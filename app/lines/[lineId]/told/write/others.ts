import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { Recipient } from "#lib/domain/letter/recipients.ts";

/** Everybody with a role on the line who is not proposed, once for each property. */
export function othersFor(
  file: Pick<LineFile, "roles" | "parties">,
  proposed: readonly Recipient[],
): Recipient[] {
  const taken = new Set(proposed.map(keyOf));
  const others = new Map<string, Recipient>();
  for (const { partyId, propertyId } of file.roles) {
    const party = file.parties.find((each) => each.id === partyId);
    if (party === undefined) continue;
    const other = { partyId, propertyId, tieInId: null, splitId: null, language: party.language };
    if (!taken.has(keyOf(other))) others.set(keyOf(other), other);
  }
  return [...others.values()];
}

function keyOf({ partyId, propertyId }: Pick<Recipient, "partyId" | "propertyId">): string {
  return `${partyId} ${propertyId}`;
}
