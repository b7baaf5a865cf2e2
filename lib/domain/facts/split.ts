import type { Cft } from "../length/station.ts";
import type { Cents } from "../money/cents.ts";
import type { Day, Instant } from "../time/day.ts";

export const SPLIT_RULES = [
  "equal",
  "per-unit",
  "portion-used",
  "upstream-of-fault",
  "reach-owner",
  "weights",
  "recorded-shares",
  "single-payer",
] as const;
export type SplitRule = (typeof SPLIT_RULES)[number];

/** What happens to the share of a tie-in whose owner is unknown. */
export const UNKNOWN_SHARES = ["carried", "held-apart"] as const;
export type UnknownShares = (typeof UNKNOWN_SHARES)[number];
/** Until a person says otherwise: no neighbor carries what a stranger owes. */
export const USUAL_UNKNOWN_SHARES: UnknownShares = "held-apart";

/** What a rule needs besides the line and the scope. */
export interface SplitChoice {
  readonly rule: SplitRule;
  /** For upstream-of-fault. */
  readonly faultStation: Cft | null;
  /** For single-payer. */
  readonly payerId: string | null;
  readonly unknownShares: UnknownShares;
}

/** The amounts under one rule, as sent. Never edited: a new version replaces it. */
export interface SplitVersion extends SplitChoice {
  readonly id: string;
  readonly number: number;
  readonly reason: string;
  readonly chosenBy: string;
  readonly chosenOn: Day;
  readonly total: Cents;
  readonly shares: readonly FrozenShare[];
  /** Fingerprint of what the amounts depend on; another one means stale. */
  readonly basis: string;
  /** The way of doing the work that it prices; null where there is only one. */
  readonly optionId: string | null;
  readonly sentAt: Instant | null;
}

export interface FrozenShare {
  /** A property, or a tie-in whose owner is unknown. */
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly amount: Cents;
  /** Of `amount`, carried for owners not yet known. */
  readonly recoverable: Cents;
}
