import type { ProposedPairing } from "#lib/domain/findings/report.ts";

/** Reasons that hold in most cases; a person picks one, and may say more in their own words. */
export const ACCEPT_REASONS = [
  "Same place, side and size",
  "Same place after correcting the record’s zero",
  "Same side and size; the record’s distance is rough",
  "The only branch on this side in this section",
  "A test showed it serves this address",
  "Same place; the record gives another side or size",
] as const;

export const REFUSE_REASONS = [
  "Too far apart to be the same",
  "On the other side",
  "Another size or material",
  "A test showed another address",
  "What the record shows was never built",
] as const;

export const LINE_UP_REASONS = [
  "A known point on both shows the same difference",
  "The record measures from a different point than the run",
  "Side and order only agree this way",
  "Measured on the ground",
] as const;

export const NO_LINE_UP_REASONS = [
  "A known point on both shows no such difference",
  "Too few entries to rule out chance",
  "Side or order would be wrong",
] as const;

export const UNDO_REASONS = [
  "Decided on a wrong reading",
  "New evidence came in",
  "Wrong row",
] as const;

export const EXPLAIN_REASONS = [
  "Never built: shown as planned",
  "Removed when the line was rebuilt",
  "The same connection as another entry",
  "It joins another line",
] as const;

export const SETTLE_REASONS = [
  "Dye seen twice on video, nothing at the control address",
  "Exposed and traced",
  "Owner confirmed in writing",
  "A trace from the branch ends at the building",
  "Only clear water in rain; no sewage in a test",
  "Exposed and found cut off upstream",
] as const;

/** What is said where tests have proven it. */
export const SHOWN_REASONS = { dye: SETTLE_REASONS[0], digging: SETTLE_REASONS[1] } as const;

/**
 * The reason out of a form: the one chosen, what was written, or both; null where there is neither.
 */
export function reasonFrom(chosen: string, written: string): string | null {
  const words = written.trim();
  if (chosen === "") return words === "" ? null : words;
  return words === "" ? chosen : `${chosen}. ${words}`;
}

/** Among what speaks for and against a proposal: record and camera tell one thing differently. */
const OTHERWISE = /^The (side|size) differs/;

/** The reason that fits a proposal best, and is true of it; none for a conflict, which a person must word. */
export function fittingReason(proposal: ProposedPairing): string {
  if (proposal.band === "conflict" || proposal.nearTie) return "";
  const near = Math.abs(proposal.rawDistance) <= proposal.tolerance;
  if (proposal.reasons.some((reason) => OTHERWISE.test(reason)))
    return near ? ACCEPT_REASONS[5] : "";
  if (near) return ACCEPT_REASONS[0];
  return proposal.band === "same" ? ACCEPT_REASONS[1] : ACCEPT_REASONS[2];
}

/** The reason for refusing that fits a proposal best; none unless the two contradict each other. */
export function fittingRefusal({ band, distance, tolerance }: ProposedPairing): string {
  if (band !== "conflict") return "";
  return Math.abs(distance) > tolerance ? REFUSE_REASONS[0] : REFUSE_REASONS[1];
}
