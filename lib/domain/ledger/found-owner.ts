import type { LineFile } from "../facts/line-file.ts";
import type { SplitVersion } from "../facts/split.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { sayList } from "../say/say-list.ts";
import { propertyLabel } from "../sharing/sharers.ts";
import { latestSplit } from "../split/latest-split.ts";
import { shareIn } from "./propose.ts";

/** One who paid for an unknown owner too, and what changes now that the owner is found. */
interface GivenBack {
  readonly propertyId: string;
  readonly was: Cents;
  /** Of `was`, carried for owners not known then. */
  readonly carried: Cents;
  readonly now: Cents;
  /** `was` less `now`; below zero where the odd cent or the cost makes it more. */
  readonly back: Cents;
}

/** The owner of a tie-in was found between two versions of the split. */
export interface FoundOwner {
  readonly before: SplitVersion;
  readonly after: SplitVersion;
  readonly found: readonly { readonly propertyId: string; readonly owes: Cents }[];
  readonly back: readonly GivenBack[];
  /** What was held apart for unknown owners before, less what still is. */
  readonly released: Cents;
  /** By how much the whole cost changed meanwhile; then the sums differ by just that. */
  readonly costChange: Cents;
  readonly sentence: string;
}

type SplitFile = Pick<LineFile, "splits" | "properties" | "tieIns">;

/**
 * Whether the split in force names an owner who was unknown in an earlier version: the latest one
 * that carried or held apart a share for somebody unknown and has no share, or a smaller one, for a
 * property whose tie-in was settled since. What all others get back and what was held apart adds up
 * to what the found owner owes, to the cent, where the cost is the same; else it differs by the
 * change of the cost, which is told.
 */
export function foundOwner(file: SplitFile): FoundOwner | null {
  const after = latestSplit(file);
  if (after === null) return null;
  const earlier = file.splits
    .filter((version) => version.number < after.number && unknownIn(version) > 0)
    .toSorted((one, other) => other.number - one.number);
  for (const before of earlier) {
    const found = foundBetween(file, before, after);
    if (found.length > 0) return compared(file, { before, after, found });
  }
  return null;
}

/** What a version carries or holds apart for owners who are not known. */
export function unknownIn({ shares }: Pick<SplitVersion, "shares">): Cents {
  return shares.reduce(
    (sum, share) => sum + (share.propertyId === null ? share.amount : share.recoverable),
    0,
  );
}

function foundBetween(file: SplitFile, before: SplitVersion, after: SplitVersion) {
  const settled = new Set(
    file.tieIns.flatMap(({ propertyId, settledOn }) =>
      propertyId !== null && settledOn !== null && settledOn >= before.chosenOn ? [propertyId] : [],
    ),
  );
  return idsIn(after).flatMap((propertyId) => {
    const owes = shareIn(after, propertyId) - shareIn(before, propertyId);
    const isNew = !idsIn(before).includes(propertyId);
    return owes > 0 && (isNew || settled.has(propertyId)) ? [{ propertyId, owes }] : [];
  });
}

function idsIn({ shares }: SplitVersion): string[] {
  return [...new Set(shares.flatMap(({ propertyId }) => propertyId ?? []))];
}

type Compared = Pick<FoundOwner, "before" | "after" | "found">;

function compared(file: SplitFile, { before, after, found }: Compared): FoundOwner {
  const others = [...new Set([...idsIn(before), ...idsIn(after)])].filter(
    (id) => !found.some(({ propertyId }) => propertyId === id),
  );
  const back = others.map((propertyId) => {
    const was = shareIn(before, propertyId);
    const now = shareIn(after, propertyId);
    const carried = before.shares
      .filter((share) => share.propertyId === propertyId)
      .reduce((sum, { recoverable }) => sum + recoverable, 0);
    return { propertyId, was, carried, now, back: was - now };
  });
  const released = heldApartIn(before) - heldApartIn(after);
  const costChange = after.total - before.total;
  const facts = { before, after, found, back, released, costChange };
  return { ...facts, sentence: sentenceOf(file, facts) };
}

function heldApartIn({ shares }: SplitVersion): Cents {
  return shares.reduce((sum, share) => (share.propertyId === null ? sum + share.amount : sum), 0);
}

function sentenceOf(file: SplitFile, facts: Omit<FoundOwner, "sentence">): string {
  const { before, after, found, back, released, costChange } = facts;
  const owes = found.reduce((sum, each) => sum + each.owes, 0);
  const total = back.reduce((sum, each) => sum + each.back, 0);
  const who = sayList(found.map(({ propertyId }) => nameOf(file, propertyId)));
  const parts = [
    total === 0 ? "" : `${formatCents(total)} is refunded to those who covered it`,
    released === 0 ? "" : `${formatCents(released)} was set aside`,
    costChange === 0 ? "" : `the total cost changed by ${formatCents(costChange)} in the meantime`,
  ].filter((part) => part !== "");
  const rest = parts.length === 0 ? "" : `: ${sayList(parts)}`;
  return `Since version ${before.number} the owner at ${who} was found. Under version ${after.number} they owe ${formatCents(owes)}${rest}.`;
}

function nameOf(file: SplitFile, propertyId: string): string {
  const property = file.properties.find(({ id }) => id === propertyId);
  return property === undefined ? "a property no longer on the line" : propertyLabel(property);
}
