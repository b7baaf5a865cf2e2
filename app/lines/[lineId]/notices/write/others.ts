import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import type { Recipient } from "#lib/domain/paper/addressed.ts";
import { LETTER_PLANS } from "#lib/domain/paper/kinds/index.ts";
import { isOnlyCopied } from "#lib/domain/party/only-copied.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";

/**
 * Everybody with a role on the line who is not proposed, once for each property and for each tie-in
 * that the letter asks about. No lender, who gets only the copies that are proposed. Nobody for a demand: money is asked only of those whom the proof names.
 */
export function othersFor(
  file: Pick<LineFile, "roles" | "parties" | "splits">,
  kind: LetterKind,
  proposed: readonly Recipient[],
): Recipient[] {
  const { named, about } = LETTER_PLANS[kind];
  if (named === "always" || about === "paper") return [];
  const tieInIds = about === "tie-in" ? asked(proposed) : [null];
  const splitId = about === "split" ? (latestSplit(file)?.id ?? null) : null;
  if (about === "split" && splitId === null) return [];
  const others = new Map<string, Recipient>();
  for (const { partyId, propertyId } of file.roles) {
    const party = file.parties.find((each) => each.id === partyId);
    if (party === undefined || isOnlyCopied(file, { partyId, propertyId })) continue;
    for (const tieInId of tieInIds) {
      const other = { partyId, propertyId, tieInId, splitId };
      others.set(keyOf(other), other);
    }
  }
  for (const recipient of proposed) others.delete(keyOf(recipient));
  return [...others.values()];
}

/** The tie-ins that those who are proposed are asked about. */
function asked(proposed: readonly Recipient[]): (string | null)[] {
  return [...new Set(proposed.map((recipient) => recipient.tieInId))];
}

function keyOf({ partyId, propertyId, tieInId }: Recipient): string {
  return [partyId, propertyId, tieInId].join(" ");
}
