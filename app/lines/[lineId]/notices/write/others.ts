import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import type { Recipient } from "#lib/domain/paper/recipients.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";

/**
 * Everybody with a role on the line who is not proposed, once for each property and for each tie-in
 * that the letter asks about. Nobody for a demand: money is asked only of those whom the proof names.
 */
export function othersFor(
  file: Pick<LineFile, "roles" | "parties" | "splits">,
  kind: LetterKind,
  proposed: readonly Recipient[],
): Recipient[] {
  if (kind === "share-demand") return [];
  const tieInIds = kind === "tie-in-inquiry" ? asked(proposed) : [null];
  const splitId = kind === "proposed-split" ? (latestSplit(file)?.id ?? null) : null;
  if (kind === "proposed-split" && splitId === null) return [];
  const others = new Map<string, Recipient>();
  for (const { partyId, propertyId } of file.roles) {
    const party = file.parties.find((each) => each.id === partyId);
    if (party === undefined) continue;
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
