import type { Cents } from "../money/cents.ts";
import type { Day, Instant } from "../time/day.ts";

export const LEDGER_KINDS = [
  "invoice",
  "deposit",
  "payment",
  "credit",
  "refund",
  /** Takes one entry back whole. */
  "reversal",
] as const;
export type LedgerKind = (typeof LEDGER_KINDS)[number];

export const PAYMENT_METHODS = ["check", "card", "bank-transfer", "cash", "other"] as const;
export type PaymentMethod = (typeof PAYMENT_METHODS)[number];

/**
 * One entry of the line's money book. Never edited: what was wrong is reversed by another entry.
 * An account is one party at one property.
 */
export interface LedgerEntry {
  readonly id: string;
  /** Counts up from 1 over the line, without gaps. */
  readonly number: number;
  readonly kind: LedgerKind;
  readonly partyId: string;
  readonly propertyId: string;
  /** Above zero; the kind says which way. */
  readonly amount: Cents;
  readonly on: Day;
  /** For an invoice. */
  readonly dueOn: Day | null;
  /** For an invoice or credit: the split version that it follows from. */
  readonly splitId: string | null;
  /** For a reversal: the entry that it takes back. */
  readonly reversesId: string | null;
  /** For what was paid or given back. */
  readonly method: PaymentMethod | null;
  /** Check number, transfer reference. */
  readonly reference: string;
  readonly uploadId: string | null;
  readonly note: string;
  readonly enteredBy: string;
  readonly enteredAt: Instant;
}
