import type { Cft } from "../length/station.ts";
import type { Cents } from "../money/cents.ts";
import type { WorkKind } from "./authority.ts";
import type { SplitRule } from "./split.ts";

export const PLACES = ["point", "stretch", "branch", "general"] as const;
export type Place = (typeof PLACES)[number];

export const SPREADS = ["by-placed-cost", "equally"] as const;
export type Spread = (typeof SPREADS)[number];

/**
 * What is done to the pipe. It decides which holds stop the work and which cautions it raises, so a
 * person says it; `unknown` counts as the unsafest that its words allow (work-deeds.ts).
 */
export const SCOPE_KINDS = [
  "unknown",
  "dig-and-replace",
  "spot-repair",
  "line",
  "burst",
  /** Capping, plugging or cutting off a branch. */
  "cap",
  /** Cutting inside the pipe: roots, grease, a blockage. */
  "clear",
  /** Jetting and flushing, without cutting. */
  "clean",
  /** Opening a branch again, or joining it to the new pipe. */
  "reconnect",
  "test",
  "restore",
  "permit-fee",
  /** Nothing that cuts, lines, bursts, caps or digs. */
  "other",
] as const;
export type ScopeKind = (typeof SCOPE_KINDS)[number];

/** One priced piece of work. */
export interface ScopeItem {
  readonly id: string;
  readonly title: string;
  readonly kind: ScopeKind;
  /** For rules that say by the kind of work who does it. */
  readonly work: WorkKind;
  readonly place: Place;
  /** Point: `from` only. Stretch: both. Branch and general: neither. */
  readonly from: Cft | null;
  readonly to: Cft | null;
  /** The branch, for `branch`. */
  readonly tieInId: string | null;
  /** Hundredths of the unit, so `1250` of `ft` is 12.5 ft. */
  readonly quantity: number;
  readonly unit: string;
  /** Per whole unit. */
  readonly rate: Cents;
  /** Basis points: 1000 is 10 %. Markup first, then tax on the marked-up amount. */
  readonly markup: number;
  readonly tax: number;
  /** How a general item is spread. */
  readonly spread: Spread;
  /** Its own rule, if not the line's. */
  readonly rule: SplitRule | null;
  /** One property pays it all. */
  readonly payerId: string | null;
  /** What somebody says caused it. Kept apart from the split. */
  readonly allegedCause: string;
  /** The way of doing the work that it belongs to; null: to every one. */
  readonly optionId: string | null;
  /** The change order that added it, and the one that dropped it. */
  readonly addedById: string | null;
  readonly droppedById: string | null;
  readonly note: string;
}
