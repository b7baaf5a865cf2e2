import { err, ok, type Result } from "../../result.ts";
import type { ScopeItem } from "../facts/scope.ts";
import { firstAtOrAbove } from "../length/rising.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import type { Behind, Ground, PricedItem } from "./ground.ts";

/** Where an item lies. A point, and a stretch of no length, have both ends the same. */
export type Placement =
  | { readonly kind: "trunk"; readonly from: Cft; readonly to: Cft }
  | {
      readonly kind: "branch";
      readonly tieInId: string;
      readonly label: string;
      readonly behind: Behind;
    }
  | { readonly kind: "general" }
  /** Not said, or not on this line; `remedy` says what to enter. */
  | { readonly kind: "nowhere"; readonly remedy: string };

export interface PlacedItem extends PricedItem {
  readonly placement: Placement;
}

const NOBODY_BEHIND: Behind = { present: [], absent: false };

/** Where an item lies. Ends given the wrong way round are turned. */
export function placementOf(item: ScopeItem, ground: Pick<Ground, "tieIns" | "behind">): Placement {
  if (item.place === "general") return { kind: "general" };
  if (item.place === "branch") return branchPlacement(item, ground);
  const { from, to } = item;
  if (from === null || (item.place === "stretch" && to === null)) {
    const wanted = item.place === "point" ? "the station" : "both ends";
    return { kind: "nowhere", remedy: `Enter ${wanted} of “${item.title}”.` };
  }
  const other = item.place === "point" ? from : (to ?? from);
  return { kind: "trunk", from: Math.min(from, other), to: Math.max(from, other) };
}

function branchPlacement(item: ScopeItem, ground: Pick<Ground, "tieIns" | "behind">): Placement {
  const finding = item.tieInId === null ? undefined : ground.tieIns.get(item.tieInId);
  if (finding === undefined) {
    return { kind: "nowhere", remedy: `Choose the branch on which “${item.title}” is done.` };
  }
  return {
    kind: "branch",
    tieInId: finding.tieIn.id,
    label: finding.tieIn.label,
    behind: ground.behind.get(finding.tieIn.id) ?? NOBODY_BEHIND,
  };
}

/** Refuses a place that the trunk does not have. */
export function withinTrunk(
  item: ScopeItem,
  placement: { readonly from: Cft; readonly to: Cft },
  upperEnd: Cft | null,
): Result<null, string> {
  if (placement.from < 0) {
    return err(
      `“${item.title}” begins at ${formatFeet(placement.from)}, below the main connection at 0.0 ft. Correct its station.`,
    );
  }
  if (upperEnd !== null && placement.to > upperEnd) {
    return err(
      `“${item.title}” reaches ${formatFeet(placement.to)}, but the line ends at ${formatFeet(upperEnd)}. Correct one of the two.`,
    );
  }
  return ok(null);
}

/** A stretch cut at every station inside it at which something changes; a point as it is. */
export function piecesOf(
  placement: { readonly from: Cft; readonly to: Cft },
  cuts: readonly Cft[],
): { readonly from: Cft; readonly to: Cft }[] {
  const { from, to } = placement;
  const pieces: { from: Cft; to: Cft }[] = [];
  let start = from;
  for (let place = firstAtOrAbove(cuts, from); place < cuts.length; place += 1) {
    const cut = cuts[place] ?? to;
    if (cut >= to) break;
    if (cut > start) pieces.push({ from: start, to: cut });
    start = Math.max(start, cut);
  }
  pieces.push({ from: start, to });
  return pieces;
}

/** `10.0–20.0 ft`; `at 40.0 ft` for a point. */
export function sayPlace(from: Cft, to: Cft): string {
  return from === to ? `at ${formatFeet(from)}` : `${plainFeet(from)}–${formatFeet(to)}`;
}

/**
 * The cost of a piece of an item, as a person would work it out: by the foot where the price of a
 * foot is in whole cents, else by the part of the length.
 */
export function sayPieceCost(
  amount: Cents,
  whole: { readonly from: Cft; readonly to: Cft },
  piece: { readonly from: Cft; readonly to: Cft },
): string {
  const place = sayPlace(piece.from, piece.to);
  const length = whole.to - whole.from;
  const part = piece.to - piece.from;
  if (part === length) return `${place}: ${formatCents(amount)}`;
  const [cost, perFoot] = [(amount * part) / length, (amount * 100) / length];
  if (Number.isInteger(cost) && Number.isInteger(perFoot) && cost * length === amount * part) {
    return `${place} at ${formatCents(perFoot)} a foot: ${formatCents(cost)}`;
  }
  return `${place}: ${formatCents(amount)} × ${plainFeet(part)} ÷ ${plainFeet(length)} ft`;
}
