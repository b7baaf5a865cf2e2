import type { SplitChoice } from "../facts/split.ts";
import type { Cft } from "../length/station.ts";
import type { Cents } from "../money/cents.ts";

/** What one step of a sum works with: `cost` × `part` is the step’s exact value. */
interface SumPiece {
  /** Where this piece of the work lies; null where its place makes no difference. */
  readonly from: Cft | null;
  readonly to: Cft | null;
  /** What the piece costs in cents, as `numerator/denominator` in lowest terms. */
  readonly cost: string;
  /** The payer’s part of it, as `numerator/denominator` in lowest terms. */
  readonly part: string;
  /** How many share it alike; null where it is shared by measure. */
  readonly sharers: number | null;
}

/** One step of the sum behind an amount, as a person would write it down. */
export interface SumStep {
  readonly itemId: string;
  /** `10.0–20.0 ft at $100.00 a foot: $1,000.00 ÷ 3`. */
  readonly words: string;
  /** Exact value of the step in cents, as `numerator/denominator` in lowest terms. */
  readonly exact: string;
  readonly piece: SumPiece;
}

export interface Share {
  /** Null: a tie-in whose owner is unknown (held apart). */
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly label: string;
  readonly amount: Cents;
  /** Of `amount`: carried for owners who are not yet known. */
  readonly recoverable: Cents;
  /** Exact cents, `numerator/denominator`. */
  readonly exact: string;
  readonly steps: readonly SumStep[];
}

/** A group of neighbors that pays more than mending only its own pipe would cost. */
export interface StandAlone {
  readonly passes: boolean;
  /** Property ids, and tie-in ids for owners who are not known; empty where it passes. */
  readonly group: readonly string[];
  readonly excess: Cents;
  readonly sentence: string;
}

/** What one rule gives on this line. */
export interface SplitOutcome {
  readonly choice: SplitChoice;
  readonly title: string;
  /** The rule in one sentence. */
  readonly sentence: string;
  /** Why it can't be worked out, in words that say what to enter; null when it can. */
  readonly refusal: string | null;
  readonly total: Cents;
  readonly shares: readonly Share[];
  readonly standAlone: StandAlone | null;
  /** How the odd cents went. */
  readonly oddCents: string;
  /** Fingerprint of what the amounts depend on. */
  readonly basis: string;
}
