import { day, instant, maybe, oneOf, type RowOf, ref, row, sum, whole, words } from "./field.ts";

const LEDGER_KINDS = [
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
export type LedgerEntry = RowOf<typeof LEDGER_ENTRY>;

export const LEDGER_ENTRY = row({
  one: "ledger entry",
  fields: {
    /** Counts up from 1 over the line, without gaps. */
    number: whole(1_000_000),
    kind: oneOf(LEDGER_KINDS),
    partyId: ref("parties"),
    propertyId: ref("properties"),
    /** Above zero; the kind says which way. */
    amount: sum,
    on: day,
    /** For an invoice. */
    dueOn: maybe(day),
    /** For an invoice or credit: the split version that it follows from. */
    splitId: maybe(ref("splits")),
    /** For a reversal: the entry that it takes back. */
    reversesId: maybe(ref("ledger")),
    /** For what was paid or given back. */
    method: maybe(oneOf(PAYMENT_METHODS)),
    /** Check number, transfer reference. */
    reference: words,
    uploadId: maybe(ref("uploads")),
    note: words,
    enteredBy: words,
    enteredAt: instant,
  },
});
